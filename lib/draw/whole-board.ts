import { flatten } from '../board/shape/bulge.ts';
import { boxOf, type Point } from '../board/shape/point.ts';
import type { PlanBoard } from '../model/plan/index.ts';
import { at, type PaperPoint } from './paper.ts';

/** A whole board as large as it has room on paper. */
export interface WholeBoard {
  /** Its outline without arcs, metres on the board. */
  readonly ring: readonly Point[];
  readonly widthMm: number;
  readonly heightMm: number;
  /** Where places of the board lie, with the left upper corner of the room that it takes. */
  readonly onPaper: (corner: PaperPoint) => (place: Point) => PaperPoint;
}

/** The whole outline as large as a room lets it be. No chord stands farther from its arc than is given (m). */
export function wholeBoard(
  { outline }: Pick<PlanBoard, 'outline'>,
  room: { readonly widthMm: number; readonly heightMm: number },
  chordM: number,
): WholeBoard {
  const ring = flatten(outline, chordM);
  const { minX, minY, maxX, maxY } = boxOf(ring);
  const perM = Math.min(
    room.widthMm / Math.max(maxX - minX, chordM),
    room.heightMm / Math.max(maxY - minY, chordM),
  );
  return {
    ring,
    widthMm: (maxX - minX) * perM,
    heightMm: (maxY - minY) * perM,
    onPaper:
      ({ xMm, yMm }) =>
      ({ xM, yM }) =>
        at(xMm + (xM - minX) * perM, yMm + (maxY - yM) * perM),
  };
}
