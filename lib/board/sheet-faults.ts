import type { PlanBoard } from '../model/plan/board.ts';
import { type BoardFault, geometry, mmText } from './fault.ts';
import { type NestedJob, nestJobs } from './sheet-pieces.ts';

/** Pieces of a board that its stock sheet is too small for, the edge that is not used taken off. */
export function sheetFaults(board: PlanBoard, rules: NestedJob['rules']): readonly BoardFault[] {
  const { unplaced, pieces, rules: used } = nestJobs([{ job: { id: board.id }, boards: [board], rules }]);
  return [...new Set(unplaced.map(({ id }) => id))].flatMap((id): BoardFault[] => {
    const piece = pieces.find((one) => one.id === id);
    if (!piece) return [];
    const [longM, shortM] = [board.sheetWidthM, board.sheetHeightM].map((sideM) => sideM - 2 * used.trimM);
    const size = (aM = 0, bM = 0): string => `${mmText(aM)} by ${mmText(bM)}`;
    const grain = piece.lies === 'either' ? '' : ' with its grain as asked';
    return [
      {
        rule: 'piece-larger-than-sheet',
        level: 'stop',
        of: [board.id],
        message: `${piece.title}, ${size(piece.widthM, piece.heightM)}, does not come out of a sheet of ${board.sheet}${grain}: ${size(longM, shortM)} of it can be used`,
        remedy: 'make the board smaller or of two pieces, or stock a larger sheet',
        ...geometry,
      },
    ];
  });
}
