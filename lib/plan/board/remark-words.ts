import type { BoardRemark } from '../../board/remark.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { type LengthWriter, type Phrase, worded } from '../../model/phrase.ts';
import { pointer } from '../../model/place.ts';
import type { Whereabouts } from '../../model/remark.ts';
import { lengthsIn } from '../as-written.ts';
import type { PlanBook } from '../plan-book.ts';

/** A remark whose lengths are not written yet. */
interface Unworded {
  readonly message: Phrase;
  readonly remedy: Phrase;
}

/** The same with its lengths written. */
export type InWords<R extends Unworded> = Omit<R, 'message' | 'remedy'> & {
  readonly message: string;
  readonly remedy: string;
};

/** What a computation noticed, its lengths written. */
export function inWords<R extends Unworded>(remark: R, write: LengthWriter): InWords<R> {
  return { ...remark, message: worded(remark.message, write), remedy: worded(remark.remedy, write) };
}

/**
 * Writes the lengths of a message about a board, its items or its ribs, as rules write theirs: as they stand at the
 * place of the message, in the board, in its space, or in the parts of what it names; else in the system of the first
 * of these that has a length.
 */
export function boardLengths(
  job: Job,
  boardId: string,
  where: Whereabouts,
  named: readonly string[] = [],
): LengthWriter {
  const board = job.boards.find(({ id }) => id === boardId);
  const places: readonly Whereabouts[] = board
    ? [{ path: board.path }, { path: pointer(['spaces', board.spaceId]), file: 'vehicle' }]
    : [];
  const parts = job.devices.flatMap(({ id, part }): Whereabouts[] =>
    part !== null && named.includes(id) ? [{ path: pointer(['parts', part]), file: 'part' }] : [],
  );
  return lengthsIn(job, where, ...places, ...parts);
}

/** Writes down what computations noticed about a board, each with the place of its subject. */
export function remarksOnBoard(
  job: Job,
  boardId: string,
  remarks: readonly BoardRemark[],
  spotOf: (remark: BoardRemark) => Whereabouts,
  book: PlanBook,
): void {
  for (const remark of remarks) {
    const where = spotOf(remark);
    book.remark(inWords(remark, boardLengths(job, boardId, where, remark.of)), where);
  }
}
