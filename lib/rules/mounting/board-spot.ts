import type { Board, Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { Spot } from '../rule.ts';

/** Where a value of a board stands. */
export const boardSpot = (id: string, ...below: readonly string[]): Spot => ({
  path: pointer(['boards', id, ...below]),
});

/** A board of a job by its id. */
export function boardOf(job: Pick<Job, 'boards'>, id: string): Board | undefined {
  return job.boards.find((board) => board.id === id);
}
