import { expect } from 'vitest';
import { placeText } from '../../lib/model/place.ts';
import { readContent } from '../../lib/read/read-content.ts';
import { type Change, smallShop, withoutMark } from './small-shop.ts';

/** A mistake in the files of the small shop, and what the reader must say of it. */
export interface ProblemCase {
  readonly name: string;
  /** The mark stands where the problem must point. */
  readonly changes: readonly Change[];
  readonly says: RegExp;
  readonly remedy?: RegExp;
}

export const jobFile = 'content/jobs/demo.yaml';
export const partsFile = 'content/parts/all.yaml';
export const vehicleFile = 'content/vehicles/wagon.yaml';

/** An exchange in the job of the small shop. */
export const inJob = (found: string, instead: string): Change => [jobFile, found, instead];

const boardText = `boards:
  main:
    sheet: ply-a
    outline: { rectangle: { width: 500 mm, height: 300 mm } }
    fixings: { a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }
runs:
`;

/** Gives the job of the small shop a board, with an exchange in it. */
export const withBoard = (found = '', instead = ''): Change =>
  inJob('runs:\n', boardText.replace(found, instead));

/** The reader must tell the mistake, and it alone, at its place; no plan is made from such a job. */
export function expectProblem({ changes, says, remedy }: ProblemCase): void {
  const { files, place } = withoutMark(smallShop(...changes));
  const { problems, jobs } = readContent(files);
  expect(problems.map(({ message }) => message)).toEqual([expect.stringMatching(says)]);
  expect(problems.map(({ where }) => placeText(where))).toEqual([place]);
  if (remedy) expect(problems[0]?.remedy).toMatch(remedy);
  // What is wrong in the stock leaves the job to be planned; what is wrong in the vehicle does where no link meets it.
  if (place.startsWith(jobFile)) expect(jobs).toEqual([]);
}
