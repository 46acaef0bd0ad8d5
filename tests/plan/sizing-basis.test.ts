import { describe, expect, test } from 'vitest';
import type { Job } from '../../lib/model/content/resolved-job.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';
import { sizesAtLeast } from '../../lib/plan/settle-sizes.ts';
import { sizingBasis } from '../../lib/plan/sizing-basis.ts';
import { fixedJob, fixedJobs } from '../boards/fixed-jobs.ts';
import { demoJob, demoJobs } from './demo.ts';

/** A job of whose boards nothing but their names can be read. */
function withNamesOfBoards(job: Job): Job {
  const boards = job.boards.map(
    (board) =>
      new Proxy(board, {
        get: (of, name) => {
          if (name === 'id') return of.id;
          throw new Error(`What sizes follow from reads ${String(name)} of a board.`);
        },
      }),
  );
  return { ...job, boards };
}

describe.each([
  ...fixedJobs.map((id) => [`the fixed ${id}`, () => fixedJob(id)] as const),
  ...demoJobs.map((id) => [id, () => demoJob(id)] as const),
])('%s', (_, job) => {
  test('is sized before its boards are placed by nothing of them but their names', () => {
    const book = new PlanBook();
    const basis = sizingBasis(withNamesOfBoards(job()), book);
    const sizes = sizesAtLeast(basis).all;
    const whole = new PlanBook();
    const same = sizingBasis(job(), whole);
    expect(sizes.size).toBeGreaterThan(20);
    expect(sizes).toEqual(sizesAtLeast(same).all);
    expect(basis.channels).toEqual(same.channels);
    expect(basis.loads).toEqual(same.loads);
    expect(book.traces()).toEqual(whole.traces());
  });
});
