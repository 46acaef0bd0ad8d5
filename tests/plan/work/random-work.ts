import fc from 'fast-check';
import type {
  PlanBoard,
  PlanCable,
  PlanControl,
  PlanItem,
  PlanMeasurement,
  PlanWire,
} from '../../../lib/model/plan/index.ts';
import type { ConductorRole } from '../../../lib/model/vocabulary.ts';
import type { Wait, Work } from '../../../lib/plan/work/work.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { usualWork } from './usual-work.ts';

const sample = samplePlan();
const [sampleItem] = sample.items;
const [sampleWire] = sample.wires;
const [sampleBoard] = sample.boards;
const [sampleRun] = sample.runs;
const [sampleFuse] = sample.power.fuses;
const [sampleControl] = sample.controls;
const [sampleReading] = sample.measurements;
if (
  !sampleItem ||
  !sampleWire ||
  !sampleBoard ||
  !sampleRun ||
  !sampleFuse ||
  !sampleControl ||
  !sampleReading
)
  throw new Error('The sample plan holds something of everything.');

const roles: readonly ConductorRole[] = ['power', 'ground', 'speaker', 'signal', 'turn-on', 'control'];
const whens: readonly PlanMeasurement['when'][] = [
  'survey',
  'bench',
  'before-power',
  'power',
  'gains',
  'delays',
  'load',
];
const durings: readonly PlanControl['final']['during'][] = ['presets', 'filters', 'gains', 'delays'];

/** An item on one of two boards, or in one of three places; the wires between them; parts raised over some of them. */
interface Drawn {
  readonly seats: readonly number[];
  readonly wires: readonly (readonly [number, number, number, number, boolean])[];
  readonly raised: readonly boolean[];
  readonly waits: readonly (readonly [number, number])[];
  readonly readings: readonly number[];
  readonly finals: readonly number[];
  /** For each wire, which of three cables holds it; past them, none. */
  readonly cables: readonly number[];
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  // Half of the items on the first board: parts that stand over wires of others are what is rare otherwise.
  seats: fc.array(fc.constantFrom(0, 0, 0, 1, 2, 3, 4), { minLength: 1, maxLength: 8, size: 'max' }),
  wires: fc.array(fc.tuple(fc.nat(7), fc.nat(7), fc.nat(5), fc.nat(7), fc.boolean()), {
    maxLength: 12,
    size: 'max',
  }),
  raised: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
  waits: fc.array(fc.tuple(fc.nat(7), fc.nat(19)), { maxLength: 3 }),
  readings: fc.array(fc.nat(6), { maxLength: 8 }),
  finals: fc.array(fc.nat(3), { minLength: 8, maxLength: 8 }),
  cables: fc.array(fc.nat(5), { minLength: 12, maxLength: 12 }),
});

const boardIds = ['left', 'right'];
const cableIds = ['full', 'trunk', 'lead'];

/** Plans of every shape that an order of work may have to be found for. */
export const randomWork: fc.Arbitrary<Work> = drawn.map((shape) => {
  const items = shape.seats.map((seat, index): PlanItem => {
    const board = boardIds[seat] ?? null;
    return {
      ...sampleItem,
      id: `item-${index}`,
      kind: index % 3 === 0 ? 'enclosure' : 'amplifier',
      origin: 'job',
      board,
      seat: board === null ? `place-${seat}` : null,
    };
  });
  const wires = shape.wires.map((wire, index) => inCable(wireOf(wire, index, items), shape.cables[index]));
  const used = boardIds.filter((id) => items.some(({ board }) => board === id));
  return {
    ...usualWork,
    declared: shape.waits.flatMap((pair) => waitOf(pair, items, wires)),
    plan: {
      items,
      wires,
      runs: [...new Set(wires.flatMap(({ run }) => run ?? []))].map((id) => ({ ...sampleRun, id })),
      cables: cablesOf(wires),
      boards: used.map((id) => boardOf(id, shape, items, wires)),
      audio: sample.audio,
      power: { ...sample.power, fuses: items.slice(0, 2).map(({ id }) => ({ ...sampleFuse, id })) },
      controls: items.flatMap(({ id }, index) =>
        index % 2 === 0
          ? [{ ...sampleControl, item: id, control: 'GAIN', final: finalOf(shape.finals[index]) }]
          : [],
      ),
      measurements: shape.readings.map((when, index) => {
        const kind = whens[when] ?? 'power';
        // A reading on the bench belongs to a board; where there is none it is taken with power.
        const bench = used[0];
        const isBench = kind === 'bench' && bench !== undefined;
        return {
          ...sampleReading,
          id: isBench ? `${bench}.reading-${index}` : `reading-${index}`,
          when: kind === 'bench' && !isBench ? 'power' : kind,
        };
      }),
    },
  };
});

function finalOf(during = 0): PlanControl['final'] {
  return { state: 'as set', why: 'as drawn', chosen: 'computed', during: durings[during] ?? 'presets' };
}

function wireOf(
  [from, to, role, , inRun]: Drawn['wires'][number],
  index: number,
  items: readonly PlanItem[],
): PlanWire {
  const ends = [from, to].map((end) => items[end % items.length]?.id ?? 'item-0');
  const boards = ends.map((end) => items.find(({ id }) => id === end)?.board ?? null);
  const onOne = boards[0] !== null && boards[0] === boards[1];
  const end = sampleWire?.ends[0] ?? { terminal: '', prep: '', part: null, stripM: null, loopM: 0 };
  return {
    ...(sampleWire ?? never()),
    id: `wire-${index}`,
    link: `wire-${index}`,
    label: `W${index}`,
    origin: 'job',
    role: roles[role] ?? 'power',
    board: boards[0] ?? boards[1] ?? null,
    run: inRun && !onOne ? `run-${index % 3}` : null,
    ends: [
      { ...end, terminal: `${ends[0]}.A` },
      { ...end, terminal: `${ends[1]}.B` },
    ],
  };
}

/** A wire as a conductor of a cable, or by itself. */
function inCable(wire: PlanWire, drawnCable = cableIds.length): PlanWire {
  const cable = cableIds[drawnCable];
  return cable === undefined ? wire : { ...wire, cable, conductor: wire.id };
}

/** Each cable with the wires that it holds and two conductors more that carry nothing; one that holds none is not there. */
function cablesOf(wires: readonly PlanWire[]): PlanCable[] {
  return cableIds.flatMap((id): PlanCable[] => {
    const own = wires.filter(({ cable }) => cable === id);
    const spare = id === 'full' ? [] : ['grey', 'violet'];
    const conductor = (name: string, wire: string | null) => ({
      ...{ name, colour: 'GY', size: (sampleWire ?? never()).size, wire },
    });
    return own.length === 0
      ? []
      : [
          {
            ...{ id, part: 'cable', lengthM: 2 },
            conductors: [
              ...own.map((wire) => conductor(wire.id, wire.id)),
              ...spare.map((name) => conductor(name, null)),
            ],
          },
        ];
  });
}

/** Every item takes a square of its own; each wire lies under the item that was drawn for it. */
function boardOf(
  id: string,
  shape: Drawn,
  items: readonly PlanItem[],
  wires: readonly PlanWire[],
): PlanBoard {
  const base = sampleBoard ?? never();
  const [placement] = base.placements;
  const own = items.filter(({ board }) => board === id);
  return {
    ...base,
    id,
    placements: own.map((item) => {
      const index = items.indexOf(item);
      return {
        ...(placement ?? never()),
        item: item.id,
        xM: index,
        yM: 0,
        widthM: 0.5,
        depthM: 0.5,
        raisedM: shape.raised[index] ? 0.02 : 0,
      };
    }),
    routes: wires
      .filter(({ board }) => board === id)
      .map((wire) => {
        const under = shape.wires[wires.indexOf(wire)]?.[3] ?? 0;
        const xM = (under % items.length) + 0.25;
        return {
          wire: wire.id,
          along: [wire.id],
          points: [
            { xM, yM: -1 },
            { xM, yM: 1 },
          ],
          lengthM: 2,
          layer: wire.role,
          bends: 0,
        };
      }),
  };
}

function waitOf(
  [item, after]: readonly [number, number],
  items: readonly PlanItem[],
  wires: readonly PlanWire[],
): readonly Wait[] {
  const things = [...items, ...wires];
  const own = items[item % items.length];
  const other = things[after % things.length];
  return own && other && own.id !== other.id ? [{ item: own.id, after: other.id, why: 'as drawn' }] : [];
}

function never(): never {
  throw new Error('The sample plan holds something of everything.');
}
