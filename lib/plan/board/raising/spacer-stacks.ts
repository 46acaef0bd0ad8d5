import { type SpacerStack, spacerStack } from '../../../board/layout/raising/spacer-stack.ts';
import { type BoardRemark, length, phrase } from '../../../board/remark.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { PlanRiserPiece } from '../../../model/plan/index.ts';
import { spacerShelf } from '../../../propose/laying/spacer-shelf.ts';
import { boardFixings } from '../board-shape.ts';

/**
 * What stands below each fixing of a board that has a spacer; none for a fixing whose height neither the sheet nor the
 * shelf makes. The boards of a job share the shelf, in the order of the job.
 */
export function spacerStacks(job: Job, board: Board): ReadonlyMap<string, SpacerStack> {
  const taken = new Map<string, number>();
  const stacks = new Map<string, SpacerStack>();
  for (const each of job.boards) {
    for (const { id, part, spacerM } of boardFixings(each, job.parts)) {
      if (spacerM <= 0) continue;
      const shelf = spacerShelf(job, part.thread, taken);
      const stack = spacerStack(spacerM, each.sheet.thickness, shelf, job.rules['spacer-tolerance'].value);
      if (!stack) continue;
      for (const used of stack.parts) taken.set(used.part, (taken.get(used.part) ?? 0) + used.count);
      if (each.id === board.id) stacks.set(id, stack);
    }
    if (each.id === board.id) break;
  }
  return stacks;
}

/** True for a height off its panel at which spacers of the shelf, and its sheet, carry a board at each of its fixings. */
export function standsAt(job: Job, board: Board, heightM: number): boolean {
  const raised = Object.entries(board.given.fixings).map(([id, fixing]) => [
    id,
    { ...fixing, spacer: heightM },
  ]);
  const own: Board = { ...board, given: { ...board.given, fixings: Object.fromEntries(raised) } };
  const boards = job.boards.map((one) => (one.id === board.id ? own : one));
  return raised.length > 0 && spacerStacks({ ...job, boards }, own).size === raised.length;
}

/** Heights of fixings that neither the sheet nor the shelf makes. */
export function unmadeHeights(pieces: readonly PlanRiserPiece[], toleranceM: number): BoardRemark[] {
  return pieces
    .filter(({ packM }) => packM > 0)
    .map(({ carries, makesM, packM }): BoardRemark => {
      return {
        rule: 'height-not-in-stock',
        level: 'caution',
        of: [carries],
        message: phrase`${carries} stands ${length('told', makesM + packM)} off its panel: ${length('told', packM)} of it is made neither by the sheet nor by spacers and packing in stock, to within ${length('at-most', toleranceM)}`,
        value: packM,
        limit: toleranceM,
        unit: 'm',
        remedy: 'stock packing of that thickness with thickness: in its part, or give another spacer:',
      };
    });
}
