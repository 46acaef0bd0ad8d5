import { describe, expect, test } from 'vitest';
import type { Proposal } from '../../lib/model/content/proposal.ts';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import { computedFrom } from '../../lib/plan/planned.ts';
import { planProposals } from '../../lib/plan/proposals.ts';
import { withLongestLeads } from '../../lib/plan/proposed-lengths.ts';
import { inJob } from '../read/problem-case.ts';
import { smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { inParts } from './shop-changes.ts';

describe('what a plan is computed from', () => {
  const job = () => jobOf(smallShop());

  test('has no measure of the head of its job, and every other', () => {
    const read = job();
    const [measure] = Object.values(read.measures.job);
    if (!measure) throw new Error('The small job has a measure.');
    const heads = ['title', 'revisions/0/what', 'status', 'customer/name', 'as-built/feed', 'notes/0'];
    const kept = ['/links/feed/length', '/devices/title/at'];
    const measures = Object.fromEntries(
      [...heads.map((head) => `/${head}`), ...kept].map((at) => [at, measure]),
    );
    const computed = computedFrom({ ...read, measures: { ...read.measures, job: measures } });
    expect(Object.keys(computed.measures.job)).toEqual(kept);
    expect(computed.measures.shop).toEqual(read.measures.shop);
  });

  test('has what stands in the vehicle already, where something does', () => {
    const inPlace: NonNullable<ReadJob['inPlace']> = {
      ...{ revision: 'A', takes: { pieces: {}, known: [], cuts: [], lengths: [], sheets: [] } },
    };
    expect(computedFrom({ ...job(), inPlace }).inPlace).toBe(inPlace);
    expect(computedFrom(job())).not.toHaveProperty('inPlace');
  });

  test('has devices, links and rules as they are read, and neither title nor customer', () => {
    const read = job();
    const computed = computedFrom(read);
    for (const name of ['devices', 'links', 'boards', 'runs', 'rules', 'parts', 'vehicle'] as const)
      expect(computed[name]).toBe(read[name]);
    expect(Object.keys(computed.file).toSorted()).toEqual(['as-built', 'cables', 'left-open']);
  });
});

test('a proposal is told by where it would stand and what it would say', () => {
  const proposal: Proposal = {
    ...{ path: ['links', 'feed-amp'], rule: 'supply', reason: 'amp is fed', mark: 'cp' },
    value: { from: 'block.OUT1', to: 'amp.B+' },
  };
  expect(planProposals({ proposals: [proposal] })).toEqual([
    {
      ...{ id: 'links.feed-amp', path: ['links', 'feed-amp'], rule: 'supply' },
      ...{ reason: 'amp is fed', mark: 'cp', says: '{"from":"block.OUT1","to":"amp.B+"}' },
    },
  ]);
  expect(planProposals({ proposals: [] })).toEqual([]);
});

test('a proposed cable that is cut to length, or that nothing is linked by, is no lead to choose', () => {
  const own = { rule: 'cables', reason: 'it reaches', value: { part: 'lead-a' } } as const;
  const proposals: readonly Proposal[] = [
    { ...own, path: ['cables', 'lead'] },
    { ...own, path: ['cables', 'spare'] },
  ];
  const cut = [
    inParts('    made-length: 10 ft\n', ''),
    inJob('conductors: [left] }', 'conductors: [left], length: 3 ft }'),
  ];
  const job = { ...jobOf(smallShop(...cut)), proposals };
  expect(withLongestLeads(job)).toBe(job);
});
