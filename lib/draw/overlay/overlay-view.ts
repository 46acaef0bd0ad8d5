import { flatten } from '../../board/shape/bulge.ts';
import type { BoardOverlay } from '../../compare/overlay.ts';
import { at, type PaperPoint } from '../paper.ts';

/** No chord stands farther from its arc, metres: it only sets how large the boards are shown. */
const chordM = 0.002;
/** No board is shown higher than this. */
const mostHighMm = 170;

/** How two boards are put on paper together. */
export interface BoardView {
  readonly mmPerM: number;
  readonly heightMm: number;
  readonly onPaper: (place: { readonly xM: number; readonly yM: number }) => PaperPoint;
}

/**
 * Two boards and all that stands on them, datum corner on datum corner, as large as a width allows.
 *
 * @param corner The upper left corner of the room for them.
 * @returns Null where there is nothing that has a size.
 */
export function viewOfBoards(
  { edges, items }: Pick<BoardOverlay, 'edges' | 'items'>,
  corner: PaperPoint,
  widthMm: number,
): BoardView | null {
  const points = [
    ...edges.flatMap(({ corners }) => flatten(corners, chordM)),
    ...items.flatMap(({ was, is }) =>
      [was, is].flatMap((box) => (box ? [box, { xM: box.xM + box.widthM, yM: box.yM + box.depthM }] : [])),
    ),
  ];
  const [xs, ys] = [points.map(({ xM }) => xM), points.map(({ yM }) => yM)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  if (points.length === 0 || right <= left || high <= low) return null;
  const mmPerM = Math.min(widthMm / (right - left), mostHighMm / (high - low));
  const asideMm = (widthMm - (right - left) * mmPerM) / 2;
  return {
    mmPerM,
    heightMm: (high - low) * mmPerM,
    onPaper: ({ xM, yM }) =>
      at(corner.xMm + asideMm + (xM - left) * mmPerM, corner.yMm + (high - yM) * mmPerM),
  };
}
