import { expect, test } from 'vitest';
import { hasFields } from '../../lib/model/content/proposal.ts';
import type { Job } from '../../lib/model/content/resolved-job.ts';
import { linkName } from '../../lib/model/ports/pair-name.ts';
import { wireLengths } from '../../lib/plan/wiring/wire-lengths.ts';
import { planKept } from '../plan/plan-kept.ts';
import { shortJob } from './short-shop.ts';

// The job writes no length, so that none is given.
test('a jumper between coils is computed, and told so', () => {
  const { plan } = planKept(shortJob('one-bass-amplifier'));
  const jumper = plan.wires.find(({ from, to }) => from.startsWith('sub.') && to.startsWith('sub.'));
  expect(jumper).toMatchObject({ cutAs: 'computed', measured: 'computed by the rule channels' });
  expect(plan.traces[`wires.${jumper?.id}.lengthM`]).toMatchObject({ origin: 'computed' });
  expect(plan.wires.filter(({ cutAs }) => cutAs === 'given')).toEqual([]);
});

test('a length that nobody measured is assumed, and told so', () => {
  const job = shortJob('under-seat-five');
  const [id = ''] = job.proposals.flatMap(({ path: [section, name = ''], value }) =>
    section === 'links' && hasFields(value) && value.length === undefined ? [name] : [],
  );
  const doubted: Job = {
    ...job,
    links: job.links.map((link) =>
      linkName(link.id) === id && link.given ? { ...link, given: { ...link.given, length: 0.178 } } : link,
    ),
    proposals: job.proposals.map((one) =>
      one.path[0] === 'links' && one.path[1] === id && hasFields(one.value)
        ? { ...one, rule: 'supply', value: { ...one.value, length: '178 mm' }, doubt: 'not-measured' }
        : one,
    ),
  };
  const lengths = wireLengths(doubted, new Map(job.devices.map((one) => [one.id, one])), [], new Map());
  const link = job.links.find((one) => linkName(one.id) === id);
  expect(lengths(link?.id ?? '')).toMatchObject({
    lengthM: 0.178,
    cutAs: 'assumed',
    measured: 'assumed by the rule supply',
  });
});
