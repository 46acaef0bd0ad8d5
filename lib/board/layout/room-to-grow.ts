import { type Box, boxOf } from '../shape/point.ts';
import type { MountingSpace } from './fit-in-space.ts';

/** How a board lies in its space, metres: its box in the axes of the space, what of it is in the way, and the gap to all. */
export interface GrowingBoard {
  readonly box: Box;
  readonly standoffM: number;
  readonly clearanceM: number;
}

/**
 * The largest upright rectangle that a board may become where it lies: inside the space and clear of all that stands out
 * past its back, metres in the axes of the space. Exact: its edges touch the space or an obstacle. Null in a space that is no
 * rectangle, and where the board itself is not free.
 */
export function roomToGrow(space: MountingSpace, { box, standoffM, clearanceM }: GrowingBoard): Box | null {
  const room = boxOf(space.outline);
  const isRectangle = space.outline.every(
    ({ xM, yM }) => [room.minX, room.maxX].includes(xM) && [room.minY, room.maxY].includes(yM),
  );
  if (!isRectangle || space.outline.length !== 4) return null;
  const kept = space.obstacles
    .filter(({ toM }) => toM > standoffM - clearanceM)
    .map(({ outline }) => grown(boxOf(outline), clearanceM));
  // A board that lies nearer to the edge than the gap stays there.
  const gapped = grown(room, -clearanceM);
  const most = {
    minX: Math.min(gapped.minX, Math.max(room.minX, box.minX)),
    minY: Math.min(gapped.minY, Math.max(room.minY, box.minY)),
    maxX: Math.max(gapped.maxX, Math.min(room.maxX, box.maxX)),
    maxY: Math.max(gapped.maxY, Math.min(room.maxY, box.maxY)),
  };
  const isFree = (one: Box) => !kept.some((other) => overlaps(one, other));
  const lows = (side: 'minX' | 'minY', from: 'maxX' | 'maxY') =>
    [most[side], ...kept.map((one) => one[from])].filter((at) => at <= box[side] + 1e-9 && at >= most[side]);
  const highs = (side: 'maxX' | 'maxY', from: 'minX' | 'minY') =>
    [most[side], ...kept.map((one) => one[from])].filter((at) => at >= box[side] - 1e-9 && at <= most[side]);
  const all = lows('minX', 'maxX').flatMap((minX) =>
    lows('minY', 'maxY').flatMap((minY) =>
      highs('maxX', 'minX').flatMap((maxX) =>
        highs('maxY', 'minY').map((maxY): Box => ({ minX, minY, maxX, maxY })),
      ),
    ),
  );
  return all.filter(isFree).toSorted((a, b) => areaOf(b) - areaOf(a))[0] ?? null;
}

function grown({ minX, minY, maxX, maxY }: Box, byM: number): Box {
  return { minX: minX - byM, minY: minY - byM, maxX: maxX + byM, maxY: maxY + byM };
}

function areaOf({ minX, minY, maxX, maxY }: Box): number {
  return (maxX - minX) * (maxY - minY);
}

function overlaps(a: Box, b: Box): boolean {
  const apart = 1e-9;
  return (
    a.minX < b.maxX - apart && b.minX < a.maxX - apart && a.minY < b.maxY - apart && b.minY < a.maxY - apart
  );
}
