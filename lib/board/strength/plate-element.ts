import type { PlateStiffness } from './sheet-stiffness.ts';

/**
 * A rectangular element of a thin plate with twelve degrees of freedom: deflection w and its slopes dw/dx and
 * dw/dy at each of four corners (the element of Adini, Clough and Melosh; Zienkiewicz and Taylor, The Finite
 * Element Method, plates, rectangular element with corner nodes). Corners: lower left, lower right, upper
 * right, upper left. Lengths in metres, from the element's lower left corner.
 */
export interface PlateElement {
  readonly widthM: number;
  readonly heightM: number;
  /** From corner values to the coefficients of the polynomial. */
  readonly inverse: readonly (readonly number[])[];
}

/** Powers of x and y in the twelve terms of the deflection. */
const terms = [
  [0, 0],
  [1, 0],
  [0, 1],
  [2, 0],
  [1, 1],
  [0, 2],
  [3, 0],
  [2, 1],
  [1, 2],
  [0, 3],
  [3, 1],
  [1, 3],
] as const;

/** Derivative of one power: d times with respect to its variable. */
function power(value: number, exponent: number, d: number): number {
  if (d > exponent) return 0;
  let factor = 1;
  for (let k = 0; k < d; k += 1) factor *= exponent - k;
  return factor * value ** (exponent - d);
}

/** The terms at a point, differentiated dx times by x and dy times by y. */
function termsAt(x: number, y: number, dx: number, dy: number): number[] {
  return terms.map(([i, j]) => power(x, i, dx) * power(y, j, dy));
}

/** The element of a size. */
export function plateElement(widthM: number, heightM: number): PlateElement {
  const corners = [
    [0, 0],
    [widthM, 0],
    [widthM, heightM],
    [0, heightM],
  ] as const;
  const rows = corners.flatMap(([x, y]) => [termsAt(x, y, 0, 0), termsAt(x, y, 1, 0), termsAt(x, y, 0, 1)]);
  return { widthM, heightM, inverse: invert(rows) };
}

/** The shape functions of the twelve degrees of freedom at a point, or their derivatives. */
export function shapeAt(element: PlateElement, x: number, y: number, dx = 0, dy = 0): number[] {
  const row = termsAt(x, y, dx, dy);
  return row.map((_, column) =>
    element.inverse.reduce((sum, coefficients, at) => sum + (row[at] ?? 0) * (coefficients[column] ?? 0), 0),
  );
}

/** Points and weights of Gauss's rule of three points on 0 to 1. */
const gauss = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

/** The nine Gauss points of an element and their share of its area. */
export function gaussPoints({
  widthM,
  heightM,
}: PlateElement): readonly (readonly [number, number, number])[] {
  return gauss.flatMap(([x, wx]) => gauss.map(([y, wy]) => [x * widthM, y * heightM, wx * wy] as const));
}

/**
 * Stiffness of the element of an orthotropic plate: the integral of B' D B over its area, B the curvatures w_xx, w_yy,
 * 2 w_xy, D of rows (Dx, D1, 0), (D1, Dy, 0), (0, 0, Dxy) in N m.
 */
export function elementStiffness(
  element: PlateElement,
  { dxNm, dyNm, d1Nm, dxyNm }: PlateStiffness,
): number[][] {
  const areaM2 = element.widthM * element.heightM;
  const sum = Array.from({ length: 12 }, () => new Array<number>(12).fill(0));
  for (const [x, y, share] of gaussPoints(element)) {
    const [xx, yy, xy] = [
      shapeAt(element, x, y, 2, 0),
      shapeAt(element, x, y, 0, 2),
      shapeAt(element, x, y, 1, 1),
    ];
    const weight = areaM2 * share;
    for (const [row, line] of sum.entries())
      for (const column of line.keys()) {
        const [ax, ay, at] = [xx[row] ?? 0, yy[row] ?? 0, 2 * (xy[row] ?? 0)];
        const [bx, by, bt] = [xx[column] ?? 0, yy[column] ?? 0, 2 * (xy[column] ?? 0)];
        const energy = ax * (dxNm * bx + d1Nm * by) + ay * (d1Nm * bx + dyNm * by) + dxyNm * at * bt;
        line[column] = (line[column] ?? 0) + weight * energy;
      }
  }
  return sum;
}

/** Inverse of a small matrix by Gauss and Jordan with row pivots. A singular one is a bug. */
function invert(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const work = matrix.map((row, at) => [...row, ...row.map((_, column) => (column === at ? 1 : 0))]);
  for (let column = 0; column < n; column += 1) {
    const order = work.slice(column).toSorted((a, b) => Math.abs(b[column] ?? 0) - Math.abs(a[column] ?? 0));
    work.splice(column, n - column, ...order);
    const lead = work[column];
    const pivot = lead?.[column];
    if (!lead || !pivot) throw new Error('A plate element without size was asked for.');
    work[column] = lead.map((value) => value / pivot);
    for (const [row, line] of work.entries()) {
      const factor = line[column] ?? 0;
      if (row === column || factor === 0) continue;
      work[row] = line.map((value, at) => value - factor * (work[column]?.[at] ?? 0));
    }
  }
  return work.map((row) => row.slice(n));
}
