import { describe, expect, test } from 'vitest';
import type { Proposal } from '../../lib/model/content/proposal.ts';
import type { Job } from '../../lib/model/content/resolved-job.ts';
import { computeAnew } from '../../lib/model/keep.ts';
import { onceEach } from '../../lib/plan/once-each.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';
import {
  hasProposedLengths,
  withLongestLeads,
  withProposedLengths,
} from '../../lib/plan/proposed-lengths.ts';
import { settleJob } from '../../lib/plan/settle-job.ts';
import { inJob } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { addParts, inParts } from './shop-changes.ts';

const lead = (length: string, more = '') =>
  `kind: cable, title: Lead, form: coaxial, plugs: phono, made-length: ${length}, for: [signal]${more}`;
const both = 'conductors: { left: { size: 24 AWG, colour: RD }, right: { size: 24 AWG, colour: WH } }';

/** Leads of 3, 10 and 20 ft, and a longer one that begins at one plug. */
const leads: readonly Change[] = [
  inParts('    form: coaxial\n', '    form: coaxial\n    plugs: phono\n'),
  addParts(
    `lead-short: { ${lead('3 ft')}, ${both} }`,
    `lead-long: { ${lead('20 ft')}, ${both} }`,
    `lead-one: { ${lead('12 ft')}, conductors: { only: { size: 24 AWG, colour: RD } } }`,
    `lead-y: { ${lead('30 ft', ', y-lead: true')}, ${both} }`,
  ),
];
const own = { rule: 'cables', reason: 'it reaches' } as const;
const ofLead: Proposal = { path: ['cables', 'lead'], ...own, value: { part: 'lead-a' } };

const settledOnce = onceEach(
  (...changes: readonly Change[]) =>
    settleJob(jobOf(smallShop(...leads, ...changes)), new PlanBook(), computeAnew),
  (...changes) => JSON.stringify(changes),
);

/** The small job with what is said to be proposed in it, before and after the lengths follow from the ways. */
function proposed(proposals: readonly Proposal[], ...changes: readonly Change[]) {
  const { job: written, devices, settled } = settledOnce(...changes);
  const job: Job = { ...written, proposals };
  return { job, longest: withLongestLeads(job), reached: withProposedLengths(job, devices, settled) };
}

const leadOf = (job: Job) => [
  job.file.cables.lead?.part,
  job.links.find(({ id }) => id === 'signal')?.cable?.part,
];

describe('a lead that a rule proposed', () => {
  test('is the longest of its kind while places are searched for, the shortest that reaches once ways are laid', () => {
    const { longest, reached } = proposed([ofLead]);
    expect(leadOf(longest)).toEqual(['lead-long', 'lead-long']);
    expect(longest.proposals).toEqual([{ ...ofLead, value: { part: 'lead-long' } }]);
    // No run and no board: a loop of 12 in at each end, 2 ft.
    expect(leadOf(reached)).toEqual(['lead-short', 'lead-short']);
    expect(reached.proposals).toEqual([{ ...ofLead, value: { part: 'lead-short' } }]);
  });

  test('reaches through its run: 3 m of sill and the loops ask for more than 10 ft', () => {
    const inRun = inJob('links: [turn-on] }', 'links: [turn-on, signal] }');
    expect(leadOf(proposed([ofLead], inRun).reached)).toEqual(['lead-long', 'lead-long']);
  });

  test('is left as it is where the job names it, or a released revision built it', () => {
    for (const proposals of [[], [{ ...ofLead, since: 'A' }]]) {
      const { job, longest, reached } = proposed(proposals);
      expect(longest).toBe(job);
      expect(reached).toBe(job);
    }
  });

  test('of one lead leaves another alone', () => {
    const second = [
      inJob('  lead: { part: lead-a }', '  lead: { part: lead-a }\n  spare: { part: lead-a }'),
      inJob(
        '  speaker: {',
        '  mono: { from: radio.OUT2, to: amp.IN2, cable: spare, conductors: [left] }\n  speaker: {',
      ),
      inJob('left-open:\n  radio.OUT2: one channel is used\n', ''),
      inParts('      IN1: {', '      IN2: { role: signal-in, joint: phono, signal: 4 V }\n      IN1: {'),
    ];
    const { longest } = proposed([ofLead], ...second);
    expect(longest.file.cables).toMatchObject({ lead: { part: 'lead-long' }, spare: { part: 'lead-a' } });
    const parts = longest.links.flatMap(({ id, cable }) => (cable ? [[id, cable.part]] : []));
    expect(Object.fromEntries(parts)).toEqual({ signal: 'lead-long', mono: 'lead-a' });
  });
});

describe('a ground lead of a length that nobody measured', () => {
  const value = { from: 'amp.GND', to: 'body.cargo', length: '12 in' };
  const ofGround: Proposal = {
    ...{ path: ['links', 'ground'], rule: 'ground', reason: 'near', value },
    doubt: 'not-measured',
  };
  const lengthOf = (job: Job) => job.links.find(({ id }) => id === 'ground')?.given?.length;
  const inRun = inJob('links: [turn-on] }', 'links: [turn-on, ground] }');

  test('grows to what its way and its loop ask for, up to a whole inch', () => {
    // 3 m of sill and a loop of 12 in: 130.1 in.
    const { reached } = proposed([ofGround], inRun);
    expect(lengthOf(reached)).toBeCloseTo(131 * 0.0254, 9);
    expect(reached.proposals).toEqual([{ ...ofGround, value: { ...value, length: '131 in' } }]);
  });

  test('stays as it is where it does, by a hair too', () => {
    const { job, reached } = proposed([ofGround]);
    expect(reached).toBe(job);
    const shorter = proposed(
      [ofGround],
      inJob('to: body.cargo, length: 12 in', 'to: body.cargo, length: 11.9 in'),
    );
    expect(lengthOf(shorter.reached)).toBeCloseTo(12 * 0.0254, 9);
  });

  test.each([
    ['it is given', []],
    ['a released revision built it', [{ ...ofGround, since: 'A' }]],
    ['it was measured', [{ ...ofGround, doubt: undefined }]],
    ['another is proposed', [{ ...ofGround, path: ['links', 'tail'] }]],
    ['a device is of its name', [{ ...ofGround, path: ['devices', 'ground'] }]],
  ] as const)('stays as it is where %s', (_, proposals) => {
    const { job, reached } = proposed(
      proposals.map(({ doubt, ...rest }) => (doubt ? { ...rest, doubt } : rest)),
      inRun,
    );
    expect(reached).toBe(job);
  });
});

test('lengths follow from ways only where a lead, or a ground lead that nobody measured, was proposed by a rule', () => {
  const ground: Proposal = { path: ['links', 'g'], rule: 'ground', reason: 'near', value: {} };
  const has = (...proposals: readonly Proposal[]) => hasProposedLengths({ proposals });
  expect(has(ofLead)).toBe(true);
  expect(has({ ...ground, doubt: 'not-measured' })).toBe(true);
  expect(has(ground)).toBe(false);
  expect(has({ ...ofLead, since: 'A' })).toBe(false);
  expect(has()).toBe(false);
});

// Off a board it needs its loop alone, 12 in at the amplifier: common practice, no source.
test('a ground lead that nobody measured stays as it is where it just reaches, and is longer where it does not', () => {
  const ground: Proposal = {
    ...{ path: ['links', 'ground'], rule: 'ground', reason: 'amp is grounded', doubt: 'not-measured' },
    value: { from: 'amp.GND', to: 'body.cargo', length: '12 in' },
  };
  const just = proposed([ground]);
  expect(just.reached).toBe(just.job);
  const short = proposed(
    [ground],
    inJob('to: body.cargo, length: 12 in }', 'to: body.cargo, length: 11 in }'),
  );
  const lengthOf = (job: Job) => job.links.find(({ id }) => id === 'ground')?.given?.length ?? Number.NaN;
  expect(lengthOf(short.job)).toBeCloseTo(11 * 0.0254, 9);
  expect(lengthOf(short.reached)).toBeGreaterThanOrEqual(12 * 0.0254 - 1e-9);
});
