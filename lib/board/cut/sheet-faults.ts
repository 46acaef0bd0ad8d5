import type { Phrase } from '../../model/phrase.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import { type CutBoard, cutFrom, type NestedJob, nestJobs } from './sheet-pieces.ts';

/** Pieces of a board that its stock sheet is too small for, the edge that is not used taken off. */
export function sheetFaults(board: CutBoard, rules: NestedJob['rules']): readonly BoardRemark[] {
  const { unplaced, pieces, rules: used } = nestJobs([{ job: { id: board.id }, boards: [board], rules }]);
  return [...new Set(unplaced.map(({ id }) => id))].flatMap((id): BoardRemark[] => {
    const piece = pieces.find((one) => one.id === id);
    if (!piece) return [];
    const from = cutFrom([board]).find(({ sheet }) => sheet === piece.sheet) ?? board;
    const [longM, shortM] = [from.sheetWidthM, from.sheetHeightM].map((sideM) => sideM - 2 * used.trimM);
    const size = (kind: 'size' | 'room-free', aM = 0, bM = 0): Phrase =>
      phrase`${length(kind, aM)} by ${length(kind, bM)}`;
    const grain = piece.lies === 'either' ? '' : ' with its grain as asked';
    return [
      {
        rule: 'piece-larger-than-sheet',
        level: 'stop',
        of: [board.id],
        message: phrase`${piece.title}, ${size('size', piece.widthM, piece.heightM)}, does not come out of a sheet of ${piece.sheet}${grain}: ${size('room-free', longM, shortM)} of it can be used`,
        remedy: 'make it smaller or of two pieces, or stock a larger sheet',
      },
    ];
  });
}
