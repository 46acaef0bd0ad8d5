import { expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { changed, instead, linksOf } from './links-of.ts';
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

/** The part of the lead to the front inputs, over a way of 115 in to the board whose last stretch lies in a zone. */
function frontLead(zone: string): string | undefined {
  const files = shop.map((file) =>
    file.path.endsWith('hatchback.yaml')
      ? {
          ...file,
          text: instead(file.text, '[cabin 24 in, under-carpet 36 in]', `[cabin 79 in, ${zone} 36 in]`),
        }
      : file,
  );
  return linksOf(changed('under-seat-five'), files).job?.file.cables['lead-in-front']?.part;
}

test('a lead through a door has the slack of its hinge besides, as a wire that is cut has', () => {
  // 115 in, a loop of 12 in and 400 mm on the board are 142.7 in: 12 ft reach, and do not with 2 in more.
  expect(frontLead('under-carpet')).toBe('lead-phono-12ft');
  expect(frontLead('door')).toBe('lead-phono-17ft');
});
