import { expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { changed, linksOf } from './links-of.ts';
import { shop } from './short-shop.ts';

/** Phono leads, each with a twin of the same length that comes before it by name; and so many pieces of each. */
const twins = (pieces: number, ofTwins: number): readonly SourceFile[] =>
  shop.map((file) => {
    const leads = file.text.match(/^ {2}lead-phono-\d+(in|ft):\n( {4}.*\n)+/gm) ?? [];
    return {
      ...file,
      text: `${file.text}${leads.map((lead) => lead.replace('  lead', '  a-lead')).join('')}`.replaceAll(
        /^ {2}(lead-phono-\d+(in|ft)): \{ pieces: \d+ \}$/gm,
        `  $1: { pieces: ${pieces} }\n  a-$1: { pieces: ${ofTwins} }`,
      ),
    };
  });

/** The leads of the line inputs in the plan, once their ways are laid. */
function leadsIn(files: readonly SourceFile[]): readonly (string | null)[] {
  const { job } = linksOf(changed('open-boat'), files);
  if (!job) throw new Error('The job is not understood.');
  return planJob(job).plan.cables.map(({ part }) => part);
}

test.each([
  ['the one that lies there', 3, 0, ['lead-phono-6ft', 'lead-phono-6ft']],
  ['the twin, where that alone does', 0, 3, ['a-lead-phono-6ft', 'a-lead-phono-6ft']],
  ['one of each, where one of each does', 1, 1, ['a-lead-phono-6ft', 'lead-phono-6ft']],
] as const)('of leads as long, the plan takes from the shelf %s', (_, pieces, ofTwins, taken) => {
  expect(leadsIn(twins(pieces, ofTwins)).toSorted()).toEqual(taken);
});
