import type { BuildPlan, PlanWire, WireEnd } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { printed } from '../../model/printed/index.ts';
import { ohmsBelow } from '../../model/printed/told.ts';
import { pullTest, pullTestSources } from '../../model/tables/pull-test.ts';
import { byLeadText } from '../../plan/work/turn-on-state.ts';
import { namesOf } from '../words/plan-names.ts';
import { builderSheet } from './sheet.ts';
import { blank, dense, groupsBy, strong, type Table, tableOf, tick } from './table.ts';

/** What is shown on the bench before a board sees the vehicle. */
export interface BenchTestSheet {
  readonly checks: Table;
  readonly turnOn: Table | null;
  readonly pulls: Table | null;
  readonly signatures: readonly string[];
}

interface Check {
  readonly what: string;
  readonly asked: string;
}

/** What the supply is limited to for each board, and how its devices get power. */
function supplyChecks({ power: { firstPower = [] } }: Pick<BuildPlan, 'power'>): Check[] {
  return firstPower.map(({ board, idleA, limitA, oneByOne, late = [] }) => {
    const waiting = late.length > 0 ? `; not on it yet: ${late.join(', ')}, first power in the vehicle` : '';
    return idleA === 0 && late.length > 0
      ? { what: `${board}: no power on the bench${waiting}`, asked: 'meter alone' }
      : {
          what: `${board}: main fuses out; bench supply limited${oneByOne ? '; one device after the other, its fuse alone fitted' : ''}${waiting}`,
          asked: `${printed('current-allowed', limitA)}; idle ${printed('current-carried', idleA)}`,
        };
  });
}

/** Every check that the job has the parts for, in the order in which it is made. */
function checksOf(plan: BuildPlan): Check[] {
  const has = (kind: string) => plan.items.some((item) => item.kind === kind && item.origin === 'job');
  const wires = plan.wires.filter(({ origin }) => origin === 'job');
  const bars = barsOf(plan);
  const byLead = (plan.power.firstPower ?? []).flatMap((one) => one.byLead ?? []);
  const check = (when: boolean, what: string, asked: string): Check[] => (when ? [{ what, asked }] : []);
  const turnsOn = wires.some(({ role }) => role === 'turn-on');
  const grounds = wires.some(({ role }) => role === 'ground');
  return [
    { what: 'Positive to ground, no power, devices off', asked: 'open' },
    { what: 'Board to vehicle metal or bench', asked: 'open' },
    ...check(
      grounds,
      bars.length > 0
        ? `Every ground port to ${bars.join(', ')}`
        : 'Every ground port to the far end of its wire',
      `under ${ohmsBelow(ruleOf(plan, 'continuity-ground'))}`,
    ),
    ...check(turnsOn, 'Each turn-on input to positive, to ground', 'not shorted'),
    ...check(plan.controls.length > 0, 'Presets ticked', 'all'),
    { what: 'First power: no smoke, smell or heat', asked: 'current steady below the limit' },
    ...byLead.map((one) => ({ what: byLeadText(one), asked: 'comes up, lamps as its maker says' })),
    ...check(turnsOn, 'Turn-on given: each device comes up in its order', 'lamps as their makers say'),
    ...check(
      plan.audio.channels.length > 0,
      'Each channel in turn, its mute off and its gain up a little, then both back: tone at the output, into a load',
      'clean, right channel, right polarity',
    ),
    ...check(
      turnsOn,
      'Turn-on taken: each device goes off, no thump',
      has('processor') && has('amplifier') ? 'amplifiers first' : 'off at once',
    ),
  ];
}

/** What the grounds of the job come together on. */
function barsOf({ items, wires }: Pick<BuildPlan, 'items' | 'wires'>): string[] {
  const ends = wires
    .filter(({ role }) => role === 'ground')
    .flatMap(({ from, to }) => [from, to].map((terminal) => terminal.split('.')[0] ?? ''));
  return items.flatMap(({ id, kind, title }) =>
    kind === 'distribution' && ends.includes(id) ? [title] : [],
  );
}

const poundForceN = 4.4482216152605;

interface Pull {
  readonly size: string;
  readonly awg: string | null;
  readonly labels: string;
}

/** Ends that nothing is crimped on by the shop, and no screw of a port holds. */
const notPulled: readonly WireEnd['form'][] = [
  'made-up',
  'solder',
  'as-fitted',
  'refused',
  'unknown',
  undefined,
];

/** True for a wire with an end to tug at: of those in a cable, none that comes with its plugs on. */
function isPulled({ origin, cable, ends }: PlanWire): boolean {
  return origin === 'job' && (cable === undefined || ends.some(({ form }) => !notPulled.includes(form)));
}

/** Each size that is ended by the shop, in wires of their own and in cables, with what its ends must hold; null where there is none. */
export function pullsTable(plan: BuildPlan): Table | null {
  const ours = plan.wires.filter(isPulled);
  if (ours.length === 0) return null;
  const { wire } = namesOf(plan);
  const bySize = groupsBy<PlanWire>(ours, ({ size }) => size.label);
  const pulls = bySize.map(
    ({ title, things }): Pull => ({
      size: title ?? '',
      awg: things[0]?.size.awg ?? null,
      labels: things.map(({ id }) => wire(id)).join(' '),
    }),
  );
  return tableOf(
    `Pull-test: a sample crimp of each size and die before the rest is crimped (${pullTestSources.sample}); then a tug on every end (${pullTestSources.tug})`,
    pulls,
    [
      { title: 'Size', cell: ({ size }) => strong(size) },
      { title: 'Wires', kind: 'words', cell: ({ labels }) => labels },
      {
        title: 'Sample holds',
        kind: 'figure',
        leads: true,
        cell: ({ awg }) => pullText(pullTest(awg)?.sampleLb),
      },
      blank('Held'),
      { title: 'Every end: tug', kind: 'figure', cell: ({ awg }) => pullText(pullTest(awg)?.tugLb) },
      tick('Right'),
    ],
  );
}

/** A force up to whole pounds and whole newtons: less would prove less. */
function pullText(forceLb: number | undefined): string {
  if (forceLb === undefined) return 'as the terminal\u2019s maker says';
  return `${printed('pull-pounds', forceLb)}, ${printed('pull-newtons', forceLb * poundForceN)}`;
}

function turnOnTable(plan: BuildPlan): Table | null {
  if (plan.power.turnOn.length === 0) return null;
  return tableOf(
    'Turn-on, in its order',
    plan.power.turnOn,
    [
      { title: 'Output', cell: (one) => strong(one.source) },
      { title: 'Brings up', cell: (one) => one.loads.map(({ item }) => item).join(', ') },
      {
        title: 'Current',
        kind: 'figure',
        leads: true,
        cell: (one) => printed('small-current-carried', one.sumA),
      },
      { title: 'Limit', kind: 'figure', cell: (one) => printed('small-current-allowed', one.limitA) },
      blank('Read'),
      tick('Right'),
    ],
    (one) => one.source,
  );
}

function benchModel(plan: BuildPlan): BenchTestSheet | null {
  if (!plan.items.some(({ origin }) => origin === 'job')) return null;
  const turnOn = turnOnTable(plan);
  const pulls = pullsTable(plan);
  return {
    checks: dense(
      tableOf(
        'Checks, in this order',
        [...supplyChecks(plan), ...checksOf(plan)],
        [
          { title: 'Check', kind: 'words', cell: ({ what }) => what },
          { title: 'Asked for', kind: 'words', cell: ({ asked }) => asked },
          blank('Found'),
          tick('Right'),
        ],
      ),
    ),
    turnOn: turnOn && dense(turnOn),
    pulls: pulls && dense(pulls),
    signatures: ['Tested by', 'Date', 'Bench supply', 'Meter'],
  };
}

export const benchTest = builderSheet('bench-test', 'Bench test', benchModel, {
  cautions: ['firstPower', 'hearing'],
});
