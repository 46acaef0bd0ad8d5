import type { Side } from '../layout/item.ts';
import type { BoardShape } from './outline.ts';
import { type Box, boxOf, ringOfBox } from './point.ts';
import { regionOf } from './region.ts';

/** A side of a board, and how much further out it is to lie, metres. */
export interface Growth {
  readonly side: Side;
  readonly byM: number;
}

/** A rectangle with some sides further out, its cuts where they are; null for any other outline. */
export function grownRectangle(shape: BoardShape, growth: readonly Growth[]): BoardShape | null {
  const { outline } = shape;
  const box = boxOf(outline);
  const isRectangle =
    outline.length === 4 &&
    outline.every(
      ({ xM, yM, bulge }) =>
        bulge === 0 && [box.minX, box.maxX].includes(xM) && [box.minY, box.maxY].includes(yM),
    );
  if (!isRectangle) return null;
  const openings = shape.region[0]?.openings ?? [];
  const ring = ringOfBox(growth.reduce(withSide, box));
  const [piece] = regionOf(ring);
  return piece
    ? { ...shape, outline: ring.map((point) => ({ ...point, bulge: 0 })), region: [{ ...piece, openings }] }
    : null;
}

function withSide({ minX, minY, maxX, maxY }: Box, { side, byM }: Growth): Box {
  return {
    minX: minX - (side === 'left' ? byM : 0),
    minY: minY - (side === 'bottom' ? byM : 0),
    maxX: maxX + (side === 'right' ? byM : 0),
    maxY: maxY + (side === 'top' ? byM : 0),
  };
}
