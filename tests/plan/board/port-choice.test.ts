import { describe, expect, test } from 'vitest';
import type { Link } from '../../../lib/model/content/resolved-job.ts';
import { computeAnew, type Keep } from '../../../lib/model/keep.ts';
import { hasOpenPorts, withChosenPorts } from '../../../lib/plan/board/open-port-choice.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';
import { laidOut, oneBoard } from './one-board.ts';

const out = (at: number) =>
  `{ role: feed-out, joint: set-screw, panel: right, at: ${at} mm, takes: { from: 8 AWG, to: 4 AWG } }`;
/** A block at the left of the board with three like ways, from which both amplifiers right of it are fed. */
const block = (where: string): readonly Change[] => [
  addParts(
    `split: { kind: distribution, title: Split, size: { width: 60 mm, depth: 80 mm, height: 30 mm }, mass: 200 g, current: 150 A, terminals: { IN: { role: feed-in, joint: set-screw, panel: left, takes: { from: 8 AWG, to: 1/0 AWG } }, OUT1: ${out(15)}, OUT2: ${out(40)}, OUT3: ${out(65)} } }`,
  ),
  inParts(
    'B+: { role: supply-positive, joint: set-screw,',
    'B+: { role: supply-positive, panel: left, joint: set-screw,',
  ),
  inJob(
    '  sub: { part',
    `  block: { part: split, ${where} }\n  low: { part: amp-a, title: Low, on: main, at: { x: 200 mm, y: 15 mm } }\n  sub: { part`,
  ),
  inJob('to: amp.B+ }', 'to: block.IN }'),
];
const links = (amp: string, low: string, more = ''): Change =>
  inJob(
    '  turn-on: {',
    `  amp-feed: { from: block.${amp}, to: amp.B+${more} }\n  low-feed: { from: block.${low}, to: low.B+${more} }\n  turn-on: {`,
  );
const onMain = 'on: main, at: { x: 60 mm, y: 100 mm }';

/** Looks for fewer crossings no further than the first laying: what is asked is which ports are compared, and how it is told. */
function hurried<I>(input: I): I {
  if (typeof input !== 'object' || input === null || !('house' in input)) return input;
  const house = typeof input.house === 'object' ? input.house : {};
  return { ...input, house: { ...house, pointsOfFew: 0, passes: 0 } };
}

/** The job with its ports chosen, and what was asked of the choice. */
function chosen(...changes: readonly Change[]) {
  const found = oneBoard(undefined, ...changes);
  const asked: unknown[] = [];
  const noting: Keep = (step, input) => {
    asked.push(input);
    return step.compute(hurried(input), computeAnew);
  };
  const laid = [laidOut(found)];
  return { ...found, asked, ...withChosenPorts(found.job, { laid, all: new Map() }, found.roles, noting) };
}
const portOf = (found: { readonly job: { readonly links: readonly Link[] } }, link: string) =>
  byId(found.job.links, link).from.terminal;

describe('ports that a job leaves open', () => {
  // As listed the upper amplifier takes the lowest port, and the lower one the next: their wires cross.
  const open = () => chosen(...block(onMain), links('OUT*', 'OUT*'));

  test('go to the wires that cross least there: the upper one to the upper amplifier', () => {
    const { job } = oneBoard(undefined, ...block(onMain), links('OUT*', 'OUT*'));
    expect(hasOpenPorts(job)).toBe(true);
    expect([portOf({ job }, 'amp-feed'), portOf({ job }, 'low-feed')]).toEqual(['OUT1', 'OUT2']);
    const found = open();
    const order = ['OUT1', 'OUT2', 'OUT3'];
    expect(order.indexOf(portOf(found, 'amp-feed'))).toBeGreaterThan(
      order.indexOf(portOf(found, 'low-feed')),
    );
  });

  test('are told with all that would do, and with the crossings before and after', () => {
    const { chosen: traces, job } = open();
    expect([...traces.keys()].sort()).toEqual(['ports.amp-feed.from', 'ports.low-feed.from']);
    for (const [at, { value, trace }] of traces) {
      expect(value).toBe(portOf({ job }, at.split('.')[1] ?? ''));
      expect(trace).toMatchObject({ rule: 'port-choice', mark: 'cp' });
      // Both feeds crossed each other; what else crosses does so with any ports.
      expect(trace.inputs.map(({ name, value: given }) => [name, given])).toEqual([
        ['like ports', 'OUT1, OUT2, OUT3'],
        ['crossings on the board', 1],
        ['crossings with the first ports', 2],
      ]);
    }
  });

  test('are tried each where it is: begun at its place on the block, and ended at the amplifier', () => {
    const found = open();
    const [input] = found.asked;
    if (typeof input !== 'object' || input === null || !('open' in input)) throw new Error('It is asked.');
    // The block stands 100 mm up; its ports are 15, 40 and 65 mm further.
    const at = (yM: number) => expect.objectContaining({ yM: expect.closeTo(yM, 9), faces: 'right' });
    expect(input.open).toEqual(
      ['amp-feed', 'low-feed'].map((id, first) => ({
        ...{ id, first },
        options: [0.115, 0.14, 0.165].map((yM, way) => ({
          ports: [`block.OUT${way + 1}`],
          from: at(yM),
          to: expect.objectContaining({ faces: 'left' }),
        })),
      })),
    );
  });

  test('leave every other link as it is, and a port that is named', () => {
    const before = oneBoard(undefined, ...block(onMain), links('OUT3', 'OUT*')).job;
    const found = chosen(...block(onMain), links('OUT3', 'OUT*'));
    expect(portOf(found, 'amp-feed')).toBe('OUT3');
    expect([...found.chosen.keys()]).toEqual(['ports.low-feed.from']);
    const others = ({ links: all }: typeof before) => all.filter(({ id }) => id !== 'low-feed');
    expect(others(found.job)).toEqual(others(before));
    expect(found.job.links.map(({ id }) => id)).toEqual(before.links.map(({ id }) => id));
  });
});

describe('nothing is chosen', () => {
  test('where every port is named', () => {
    const found = chosen(...block(onMain), links('OUT1', 'OUT2'));
    expect(hasOpenPorts(found.job)).toBe(false);
    expect(found.asked).toEqual([]);
    expect(found.chosen.size).toBe(0);
  });

  test('for a block that stands beside the board', () => {
    const found = chosen(...block('in: boot'), links('OUT*', 'OUT*', ', length: 1 m'));
    expect(hasOpenPorts(found.job)).toBe(true);
    expect(found.asked).toEqual([]);
    expect([portOf(found, 'amp-feed'), portOf(found, 'low-feed')]).toEqual(['OUT1', 'OUT2']);
  });
});
