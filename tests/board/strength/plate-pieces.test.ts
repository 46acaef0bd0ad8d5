import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addTo, banded, factor, solve } from '../../../lib/board/strength/banded.ts';
import { elementStiffness, plateElement, shapeAt } from '../../../lib/board/strength/plate-element.ts';
import { makeMesh, spotAt } from '../../../lib/board/strength/plate-mesh.ts';
import { shapeOf } from '../shapes.ts';

const share = fc.double({ min: -1, max: 1, noNaN: true });

describe('a banded system', () => {
  it('solved, gives back its load: K x = f, whatever the matrix', () => {
    const rows = fc.integer({ min: 1, max: 9 }).chain((size) =>
      fc.record({
        band: fc.integer({ min: 0, max: size - 1 }),
        full: fc.array(fc.array(share, { minLength: size, maxLength: size }), {
          minLength: size,
          maxLength: size,
        }),
        load: fc.array(share, { minLength: size, maxLength: size }),
      }),
    );
    fc.assert(
      fc.property(rows, ({ band, full, load }) => {
        const size = load.length;
        const matrix = banded(size, band);
        const entries = Array.from({ length: size }, () => new Array<number>(size).fill(0));
        for (let i = 0; i < size; i += 1)
          for (let j = Math.max(0, i - band); j <= i; j += 1) {
            // More on the diagonal than beside it: positive definite (Gershgorin).
            const value = i === j ? 2 * size : (full[i]?.[j] ?? 0);
            addTo(matrix, i % 2 ? i : j, i % 2 ? j : i, value);
            for (const [row, column] of [
              [i, j],
              [j, i],
            ] as const)
              entries[row]?.splice(column, 1, value);
          }
        const factored = factor(matrix);
        if (!factored) throw new Error('It is positive definite.');
        const x = solve(factored, Float64Array.from(load));
        for (const [i, row] of entries.entries()) {
          const product = row.reduce((sum, value, j) => sum + value * (x[j] ?? 0), 0);
          expect(product).toBeCloseTo(load[i] ?? 0, 9);
        }
      }),
    );
  });

  it('of a body that can move has no factor: two masses on one spring between them', () => {
    const free = banded(2, 1);
    for (const [i, j, value] of [
      [0, 0, 1],
      [0, 1, -1],
      [1, 1, 1],
    ] as const)
      addTo(free, i, j, value);
    expect(factor(free)).toBeNull();
  });
});

describe('an element of the plate', () => {
  const element = plateElement(0.3, 0.2);
  /** Deflections and slopes of a shape at the four corners. */
  const cornersOf = (w: (x: number, y: number) => readonly [number, number, number]) =>
    [w(0, 0), w(0.3, 0), w(0.3, 0.2), w(0, 0.2)].flat();
  const stiffness = elementStiffness(element, { dxNm: 50, dyNm: 20, d1Nm: 5, dxyNm: 8 });
  const energy = (state: readonly number[]) =>
    state.reduce(
      (sum, a, i) => sum + 0.5 * a * state.reduce((row, b, j) => row + (stiffness[i]?.[j] ?? 0) * b, 0),
      0,
    );

  it('bends into any shape of the second degree exactly, inside too', () => {
    fc.assert(
      fc.property(fc.tuple(share, share, share), ([a, b, c]) => {
        const at = (x: number, y: number) =>
          [a * x * x + b * x * y + c * y * y, 2 * a * x + b * y, b * x + 2 * c * y] as const;
        const shapes = shapeAt(element, 0.1, 0.15);
        const inside = cornersOf(at).reduce((sum, value, k) => sum + value * (shapes[k] ?? 0), 0);
        expect(inside).toBeCloseTo(at(0.1, 0.15)[0], 9);
      }),
    );
  });

  it('keeps no energy where it moves or tips as a whole', () => {
    expect(energy(cornersOf((x, y) => [1 + 2 * x + 3 * y, 2, 3]))).toBeCloseTo(0, 9);
  });

  it('keeps half of D times curvature squared over its area, bent one way, the other, and twisted', () => {
    // By hand, with an area of 0.06 m2: D / 2 x 1 x 0.06; twisted, w = x y, 2 w_xy = 2: Dxy / 2 x 4 x 0.06.
    expect(energy(cornersOf((x) => [(x * x) / 2, x, 0]))).toBeCloseTo(1.5, 9);
    expect(energy(cornersOf((_, y) => [(y * y) / 2, 0, y]))).toBeCloseTo(0.6, 9);
    expect(energy(cornersOf((x, y) => [x * y, y, x]))).toBeCloseTo(0.96, 9);
    // Both at once: Dx / 2 + Dy / 2 + D1.
    expect(energy(cornersOf((x, y) => [(x * x + y * y) / 2, x, y]))).toBeCloseTo(2.4, 9);
  });

  it('has to have a size', () => {
    expect(() => plateElement(0, 0.2)).toThrow('without size');
  });
});

describe('a board cut into elements', () => {
  const whole = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } }).region;

  it('is all material, in equal rectangles, so many on its longer side', () => {
    const mesh = makeMesh(whole, 12);
    expect(mesh.element.widthM).toBeCloseTo(0.05, 9);
    expect(mesh.element.heightM).toBeCloseTo(0.05, 9);
    expect(mesh.cells).toHaveLength(96);
    for (const { share: part } of mesh.cells) expect(part).toBe(1);
    expect(mesh.nodes).toBe(13 * 9);
    expect(new Set(mesh.cells.flatMap(({ freedoms }) => freedoms)).size).toBe(3 * mesh.nodes);
    // Along the shorter side first: a node and the next one across lie nine apart, and one more up.
    expect(mesh.band).toBe(3 * 10 + 2);
  });

  it('counts an element by the share of it that is material', () => {
    // A window over the right half of the element whose corner is at 200 mm, and over all of the next one.
    const cut = shapeOf({
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [{ cut: 'window', x: '225 mm', y: '200 mm', width: '75 mm', height: '50 mm' }],
    }).region;
    const { cells } = makeMesh(cut, 12);
    const shareAt = (column: number, row: number) =>
      cells.find((cell) => cell.column === column && cell.row === row)?.share;
    expect(shareAt(4, 4)).toBe(0.5);
    expect(shareAt(5, 4)).toBeUndefined();
    expect(cells).toHaveLength(95);
  });

  it('finds the element that a point lies in, and the place in it', () => {
    const mesh = makeMesh(whole, 12);
    const spot = spotAt(mesh, { xM: 0.26, yM: 0.13 });
    const cell = mesh.cells.find(({ column, row }) => column === 5 && row === 2);
    expect(spot.freedoms).toEqual(cell?.freedoms);
    expect(spot.x).toBeCloseTo(0.01, 9);
    expect(spot.y).toBeCloseTo(0.03, 9);
  });

  it('takes a point off the board to the nearest edge', () => {
    const mesh = makeMesh(whole, 12);
    const spot = spotAt(mesh, { xM: 0.7, yM: 0.13 });
    expect(spot.freedoms).toEqual(spotAt(mesh, { xM: 0.59, yM: 0.13 }).freedoms);
    expect(spot.x).toBeCloseTo(0.05, 9);
  });
});
