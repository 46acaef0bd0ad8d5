import { expect, test } from 'vitest';
import { planKept } from '../../plan/plan-kept.ts';
import { linksOf } from '../links-of.ts';
import { shortText } from '../short-shop.ts';

const labelsOf = (text: string) => {
  const { job, links, problems } = linksOf(text);
  if (!job) throw new Error(problems.join('\n'));
  const { wires } = planKept(job).plan;
  return { labels: Object.fromEntries(wires.map(({ id, label }) => [id, label])), links };
};

test('a proposed link that comes to be written leaves every wire its label', () => {
  const short = shortText('under-seat-five');
  const { labels, links } = labelsOf(short);
  const [from, to] = (links['to-rear-right'] ?? '').split(' ');
  const written = `${short}\nlinks:\n  to-rear-right: { from: ${from}, to: ${to} }\n`;
  expect(labelsOf(written).labels).toEqual(labels);
});
