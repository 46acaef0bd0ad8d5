import { expect, test } from 'vitest';
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
  const job = shortJob('one-bass-amplifier');
  const jumper = job.links.find(({ from, to }) => from.device === 'sub' && to.device === 'sub');
  const id = jumper?.id ?? '';
  const doubted: Job = {
    ...job,
    proposals: job.proposals.map((one) =>
      one.path[1] === linkName(id) ? { ...one, doubt: 'not-measured' } : one,
    ),
  };
  const lengths = wireLengths(doubted, new Map(job.devices.map((one) => [one.id, one])), [], new Map());
  expect(lengths(id)).toMatchObject({ cutAs: 'assumed', measured: 'assumed by the rule channels' });
});
