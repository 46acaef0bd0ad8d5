import { describe, expect, test } from 'vitest';
import type { Job } from '../../lib/model/content/resolved-job.ts';
import { computeAnew } from '../../lib/model/keep.ts';
import { worded } from '../../lib/model/phrase.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';
import { planItems } from '../../lib/plan/plan-items.ts';
import { planBody, planJob } from '../../lib/plan/plan-job.ts';
import { settleJob } from '../../lib/plan/settle-job.ts';
import { routedWays, settleByWiring, sizesAtLeast } from '../../lib/plan/settle-sizes.ts';
import { accountTerminals } from '../../lib/plan/terminal-accounting.ts';
import { inJob } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { laidOut, oneBoard } from './board/one-board.ts';
import { jobOf } from './plan-small-shop.ts';
import { addParts, inParts } from './shop-changes.ts';

const openPlace = inJob('\n    at: { x: 200 mm, y: 110 mm }', '');
function settled(job: Job) {
  const book = new PlanBook();
  return { ...settleJob(job, book, computeAnew), book };
}
describe('a settled job', () => {
  test('has every conductor sized for the length that it comes to', () => {
    const { settled: found, job } = settled(jobOf(smallShop()));
    expect([...found.all.keys()].toSorted()).toEqual(job.links.map(({ id }) => id).toSorted());
    const feed = found.all.get('feed');
    expect(feed?.lengthM).toBeCloseTo(3.5 + 2 * 12 * 0.0254, 9);
    expect(found.sizing.lengths('feed').lengthM).toBe(feed?.lengthM);
    expect(found).toMatchObject({ laid: [], routed: [] });
    // One pass sizes, and one finds that nothing grew.
    expect(found.passes).toBe(2);
  });

  test('has its board laid out and routed, and its wires as long as their ways', () => {
    const { settled: found, job } = settled(oneBoard().job);
    expect(found.laid).toHaveLength(1);
    const ways = routedWays(job, found.laid, found.routed);
    expect([...ways.keys()]).toEqual(expect.arrayContaining(['feed', 'ground', 'speaker.+', 'speaker.-']));
    const parts = Object.fromEntries(found.sizing.lengths('feed').parts);
    expect(parts.board).toBe(ways.get('feed')?.boardM);
    expect(parts['board to rim']).toBe(ways.get('feed')?.rimM);
    expect(found.passes).toBeGreaterThanOrEqual(2);
  });

  test('has each size at no less than before anything was placed', () => {
    const made = settled(oneBoard().job);
    const least = sizesAtLeast(made).all;
    for (const [id, { cable }] of made.settled.all)
      expect(cable.size.areaMm2, id).toBeGreaterThanOrEqual(least.get(id)?.cable.size.areaMm2 ?? Number.NaN);
    expect(least.size).toBe(made.settled.all.size);
  });

  test('is told once what was noticed of it, though its sizes are settled in several passes', () => {
    const lowLoad = inParts(
      'minimum: 2 ohm, powers: [{ load: 4 ohm, power: 300 W }]',
      'minimum: 8 ohm, powers: [{ load: 8 ohm, power: 300 W }]',
    );
    const { remarks } = planBody(oneBoard(undefined, lowLoad).job, computeAnew);
    const told = remarks.map(({ remark }) => `${remark.rule} ${remark.of.join(' ')}`);
    expect(told.filter((one) => one.startsWith('load-below-minimum'))).toHaveLength(1);
    expect(new Set(told).size).toBe(told.length);
  });
});

describe('a board whose places are open', () => {
  const made = () => settled(oneBoard(undefined, openPlace).job);

  test('is laid out by what can be wired best, and every wire finds its way', () => {
    const { settled: found } = made();
    const [board] = found.laid;
    expect(board?.trials).toBeGreaterThan(0);
    expect(board?.placements).toHaveLength(1);
    expect(found.routed.flatMap(({ faults }) => faults.filter(({ level }) => level === 'stop'))).toEqual([]);
    // It is sized ahead once, and then settled.
    expect(found.passes).toBeGreaterThanOrEqual(3);
  });

  test('is tried on its own, beside one whose places are all given', () => {
    const one = made();
    const laid = laidOut(oneBoard(undefined, openPlace));
    const given = { ...laid, proposals: [], search: null };
    const both = settleByWiring(one, [laid, given], computeAnew, 'draft');
    expect(both.laid.map(({ trials }) => trials > 0)).toEqual([true, false]);
    const none = settleByWiring(one, [given], computeAnew, 'draft');
    expect(none.laid[0]).toBe(given);
  });
});

describe('a conductor that its place on the board leaves no room to bend', () => {
  // 8 AWG carries 68 A at 50 C, but 41 A in the engine bay; 1/0 AWG goes into the port of 4 AWG by a reducer.
  const thick = [
    inParts('"4 AWG red", size: 4 AWG', '"1/0 red", size: 1/0 AWG'),
    inParts('"4 AWG black", size: 4 AWG', '"1/0 black", size: 1/0 AWG'),
    addParts(
      'reducer-a: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }',
    ),
  ];
  const sides = (panel: string) => [
    inParts(
      'B+: { role: supply-positive, joint: set-screw',
      `B+: { role: supply-positive, panel: ${panel}, at: 30 mm, joint: set-screw`,
    ),
    inParts(
      'GND: { role: supply-negative, joint: set-screw',
      `GND: { role: supply-negative, panel: ${panel}, at: 60 mm, joint: set-screw`,
    ),
  ];
  /** The top of the amplifier so far from the upper edge of the board. */
  const under = (mm: number) =>
    inJob('at: { x: 200 mm, y: 110 mm }', `at: { x: 200 mm, y: ${300 - 80 - mm} mm }`);
  const made = (...changes: readonly Change[]) => settled(oneBoard(undefined, ...thick, ...changes).job);
  const size = ({ settled: { all } }: ReturnType<typeof made>, id: string) => all.get(id)?.cable.size.label;
  const stops = ({ settled: { routed } }: ReturnType<typeof made>) =>
    routed.flatMap(({ faults }) => faults.filter(({ level }) => level === 'stop'));

  test('is as thick as it is best where there is room', () => {
    const roomy = made(...sides('top'));
    expect(stops(roomy)).toEqual([]);
    expect([size(roomy, 'feed'), size(roomy, 'ground')]).toEqual(['1/0 AWG', '1/0 AWG']);
  });

  test('is thinner where there is none and its fuse allows it, and its ground with it', () => {
    const near = made(...sides('top'), under(35));
    expect(stops(near)).toEqual([]);
    expect([size(near, 'feed'), size(near, 'ground')]).toEqual(['8 AWG', '8 AWG']);
    expect(near.settled.all.get('feed')?.reason).toMatch(/^8 AWG: 1\/0 AWG has no room for its bend/);
    const wider = made(...sides('top'), under(40));
    expect([size(wider, 'feed'), stops(wider)]).toEqual(['1/0 AWG', []]);
  });

  test('that the job gives is named with its size, and the lines that ask for one that bends', () => {
    const near = made(
      ...sides('top'),
      under(35),
      inJob('to: amp.B+ }', 'to: amp.B+, size: 1/0 AWG }'),
      inJob('to: body.cargo, length: 12 in }', 'to: body.cargo, length: 12 in, size: 1/0 AWG }'),
    );
    const [kink] = stops(near);
    expect(kink).toMatchObject({ rule: 'bend-too-tight', of: [expect.stringMatching(/^(feed|ground)$/)] });
    const told = (part: 'message' | 'remedy') => worded(kink?.[part] ?? '', () => '#');
    expect(told('message')).toMatch(/(feed|ground) is 1\/0 AWG$/);
    // 33 CFR 183.425, Table 5: 80 A for 8 AWG of 105 C, 0.85 of it at 50 C.
    expect(told('remedy')).toMatch(
      /^write size: 8 AWG at (feed and ground|ground and feed): it bends there, carries 68 A for a fuse of 60 A/,
    );
    expect(told('remedy')).toMatch(/room for (feed|ground) beside it counted/);
  });

  test('is told by how much nothing thinner carries its fuse', () => {
    const weak = inParts('"8 AWG red", size: 8 AWG', '"10 AWG red", size: 10 AWG');
    const [kink] = stops(
      made(
        ...sides('top'),
        under(35),
        weak,
        inParts('from: 8 AWG, to: 4 AWG } }\n      GND', 'from: 10 AWG, to: 4 AWG } }\n      GND'),
        inParts(
          'IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 8',
          'IN: { role: feed-in, joint: stud, stud: M8, takes: { from: 10',
        ),
        inParts(
          'OUT: { role: feed-out, joint: stud, stud: M8, takes: { from: 8',
          'OUT: { role: feed-out, joint: stud, stud: M8, takes: { from: 10',
        ),
      ),
    );
    // 60 A for 10 AWG in the same table: 51 A at 50 C.
    expect(worded(kink?.remedy ?? '', () => '#')).toMatch(
      /^10 AWG would bend there, but it carries 51 A, 9 A less than its fuse: a smaller fuse/,
    );
  });
});

describe('the plan of a job', () => {
  test('has a board for each that can be drawn, and tells what it is built on where there is something', () => {
    const { job } = oneBoard();
    const file = jobOf(smallShop());
    const { plan } = planJob({ ...file, ...job, file: file.file });
    expect(plan.boards.map(({ id }) => id)).toEqual(['main']);
    expect(plan).not.toHaveProperty('built');
    const built = { revision: 'A', items: {}, places: {}, boards: {}, wires: {}, proposals: [] };
    const { plan: next } = planJob({ ...file, ...job, file: file.file, built });
    expect(next.built).toMatchObject({ revision: 'A', changed: [] });
  });
});

describe('the terminals of a job', () => {
  const accounted = (...changes: readonly Change[]) => {
    const job = jobOf(smallShop(...changes));
    return { job, terminals: accountTerminals(job), items: planItems(job).map(({ id }) => id) };
  };

  test('are all accounted for, those of its own devices and of those of the vehicle that a link touches', () => {
    const { terminals, items } = accounted();
    expect(new Set(terminals.map(({ item }) => item))).toEqual(
      new Set(['main-fuse', 'amp', 'sub', 'battery', 'alternator', 'radio']),
    );
    expect(items).toContain('radio');
    const of = (item: string, terminal: string) =>
      terminals.find((one) => one.item === item && one.terminal === terminal);
    expect(of('amp', 'B+')).toMatchObject({ state: 'connected', wires: ['feed'] });
    expect(of('radio', 'OUT2')).toMatchObject({ state: 'open', reason: 'one channel is used' });
    expect(of('radio', 'B+')).toMatchObject({ state: 'open', reason: 'fed by the vehicle' });
  });

  test('of the vehicle alone, that no link touches, are left out', () => {
    const none = [
      inJob('  turn-on: { from: radio.REM, to: amp.REM }\n', ''),
      inJob('  signal: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: [left] }\n', ''),
      inJob('  control: { route: right-sill, links: [turn-on] }\n', ''),
      inJob('  lead: { part: lead-a }', '  spare: { part: lead-a }'),
      inJob('left-open:\n  radio.OUT2: one channel is used\n', ''),
    ];
    const { terminals, items } = accounted(...none);
    expect(terminals.filter(({ item }) => item === 'radio')).toEqual([]);
    expect(items).not.toContain('radio');
    expect(terminals.find(({ item, terminal }) => item === 'amp' && terminal === 'REM')?.state).toBe(
      'unaccounted',
    );
  });
});
