import type { Board, Job } from '../../../lib/model/content/resolved-job.ts';
import { computeAnew, type Keep } from '../../../lib/model/keep.ts';
import type { ConductorRole } from '../../../lib/model/vocabulary.ts';
import { layOutBoards } from '../../../lib/plan/board/board-layout.ts';
import type { LaidBoard } from '../../../lib/plan/board/laid-board.ts';
import { onceEach } from '../../../lib/plan/once-each.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { onFourPoints, stocked } from '../power/four-points.ts';

/** The small job with its board on four points, what each of its conductors carries, and the board. */
export interface OneBoard {
  readonly job: Job;
  readonly board: Board;
  readonly roles: ReadonlyMap<string, ConductorRole>;
}

/** Read once, for reading takes longer than what is asked of it. */
const readOnce = onceEach(
  (changes: readonly Change[]) => jobOf(smallShop(...changes)),
  (changes) => JSON.stringify(changes),
);

/** The board of the small shop, of plywood of 12 mm unless `lines` say otherwise, on spacers of 25 mm. */
export const oneBoard = (lines?: readonly string[], ...more: readonly Change[]): OneBoard =>
  oneBoardOn('25 mm', lines, ...more);

/** The same on spacers of another height; see `onFourPoints`. */
export function oneBoardOn(
  spacer: string,
  lines: readonly string[] = ['sheet: ply-12'],
  ...more: readonly Change[]
): OneBoard {
  const shelf = stocked({ id: 'ply-12', mm: 12, pieces: 1 });
  const job = readOnce([...shelf, ...onFourPoints(lines, spacer), ...more]);
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const [board] = job.boards;
  if (!board) throw new Error('The job has a board.');
  return { job, board, roles: buildCircuit(job, devices).roles };
}

/** It laid out, before any wire has its way. */
export function laidOut({ job, roles }: OneBoard, book: PlanBook = new PlanBook()): LaidBoard {
  const [laid] = layOutBoards(job, { roles, sized: () => new Map() }, book, computeAnew);
  if (!laid) throw new Error('The board can be drawn.');
  return laid;
}

/** Computes every step anew, boards bent in few elements: what is asked is which of several is taken, not how stiff it is. */
export const bentCoarsely: Keep = (step, input) => step.compute(coarsened(input), bentCoarsely);

function coarsened<I>(input: I): I {
  if (typeof input !== 'object' || input === null || !('aim' in input)) return input;
  const aim = typeof input.aim === 'object' ? input.aim : {};
  return { ...input, aim: { ...aim, elements: 4 } };
}
