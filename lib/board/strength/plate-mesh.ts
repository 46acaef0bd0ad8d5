import type { Point } from '../shape/point.ts';
import { insideRegion, type Region, regionBox } from '../shape/region.ts';
import { type PlateElement, plateElement } from './plate-element.ts';

/** One element of a mesh: its twelve degrees of freedom in the whole, and the share of it that is material. */
export interface Cell {
  readonly column: number;
  readonly row: number;
  readonly freedoms: readonly number[];
  readonly share: number;
}

/** A place in an element, metres from its lower left corner. */
export interface Spot {
  readonly freedoms: readonly number[];
  readonly x: number;
  readonly y: number;
}

/** A board cut into equal rectangles. */
export interface Mesh {
  readonly origin: Point;
  /** The longer side of the board. */
  readonly spanM: number;
  readonly element: PlateElement;
  readonly cells: readonly Cell[];
  readonly nodes: number;
  /** Half width of the band of the stiffness matrix. */
  readonly band: number;
}

/** Cuts a region into rectangles, `along` of them on its longer side, those with a tenth of material or more. */
export function makeMesh(region: Region, along: number): Mesh {
  const box = regionBox(region);
  const [spanX, spanY] = [box.maxX - box.minX, box.maxY - box.minY];
  const sizeM = Math.max(spanX, spanY) / along;
  const [columns, rows] = [spanX, spanY].map((span) => Math.max(3, Math.round(span / sizeM)));
  const element = plateElement(spanX / (columns ?? 3), spanY / (rows ?? 3));
  const origin = { xM: box.minX, yM: box.minY };
  const found = grid(columns ?? 3, rows ?? 3).flatMap(([column, row]) => {
    const share = materialShare(region, origin, element, column, row);
    return share >= 0.1 ? [{ column, row, share }] : [];
  });
  return {
    spanM: Math.max(spanX, spanY),
    ...numbered(found, origin, element, (columns ?? 3) >= (rows ?? 3)),
  };
}

function grid(columns: number, rows: number): [number, number][] {
  return Array.from({ length: columns }, (_, column) =>
    Array.from({ length: rows }, (__, row): [number, number] => [column, row]),
  ).flat();
}

function materialShare(
  region: Region,
  origin: Point,
  element: PlateElement,
  column: number,
  row: number,
): number {
  const samples = grid(4, 4).filter(([i, j]) =>
    insideRegion(
      {
        xM: origin.xM + element.widthM * (column + (i + 0.5) / 4),
        yM: origin.yM + element.heightM * (row + (j + 0.5) / 4),
      },
      region,
    ),
  );
  return samples.length / 16;
}

/** Numbers only the nodes that an element uses, along the shorter side first, so that the band stays narrow. */
function numbered(
  found: readonly { column: number; row: number; share: number }[],
  origin: Point,
  element: PlateElement,
  wide: boolean,
): Omit<Mesh, 'spanM'> {
  const key = (column: number, row: number) => (wide ? column * 10000 + row : row * 10000 + column);
  const corners = (column: number, row: number) => [
    key(column, row),
    key(column + 1, row),
    key(column + 1, row + 1),
    key(column, row + 1),
  ];
  const keys = [...new Set(found.flatMap(({ column, row }) => corners(column, row)))].toSorted(
    (a, b) => a - b,
  );
  const number = new Map(keys.map((value, at) => [value, at]));
  const cells = found.map((cell) => ({
    ...cell,
    freedoms: corners(cell.column, cell.row).flatMap((value) => {
      const node = number.get(value) ?? 0;
      return [3 * node, 3 * node + 1, 3 * node + 2];
    }),
  }));
  const band = cells.reduce(
    (most, { freedoms }) => Math.max(most, Math.max(...freedoms) - Math.min(...freedoms)),
    0,
  );
  return { origin, element, cells, nodes: keys.length, band };
}

/** The place of a point in the mesh; a point off the material goes to the nearest element. */
export function spotAt({ origin, element, cells }: Mesh, point: Point): Spot {
  const within = (value: number, size: number) => Math.min(size, Math.max(0, value));
  let [best, bestM]: [Spot | null, number] = [null, Infinity];
  for (const { column, row, freedoms } of cells) {
    const [x, y] = [
      point.xM - origin.xM - column * element.widthM,
      point.yM - origin.yM - row * element.heightM,
    ];
    const spot = { freedoms, x: within(x, element.widthM), y: within(y, element.heightM) };
    const offM = Math.hypot(x - spot.x, y - spot.y);
    if (offM < bestM) [best, bestM] = [spot, offM];
    if (offM === 0) break;
  }
  if (!best) throw new Error('A mesh without elements has no places.');
  return best;
}
