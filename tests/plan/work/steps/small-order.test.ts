import { describe, expect, test } from 'vitest';
import type { PlanBoard, PlanItem } from '../../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planJob } from '../../../../lib/plan/plan-job.ts';
import { planWork } from '../../../../lib/plan/work/plan-work.ts';
import { itemPhases } from '../../../../lib/plan/work/steps/item-phases.ts';
import { orderOfWork } from '../../../../lib/plan/work/steps/order-of-work.ts';
import { criticalPath, twoPersonStarts, type Waiting } from '../../../../lib/plan/work/steps/sort-steps.ts';
import type { Work } from '../../../../lib/plan/work/work.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { byId, entry, jobOf } from '../../../rules/case.ts';
import { type Written, withoutBoard, written } from '../../../rules/content.ts';

type Change = (content: Written) => void;
const plans = new Map<string, ReturnType<typeof made>>();
function made(content: Written) {
  const job = jobOf(content);
  return { job, plan: planJob(job).plan };
}
/** The small job of the rules' tests without a board, planned once for all that ask of it. */
function small(change: Change = () => {}) {
  const content = written();
  change(content);
  withoutBoard(content);
  const key = JSON.stringify(content);
  const found = plans.get(key) ?? made(content);
  plans.set(key, found);
  return found;
}

const [sampleBoard] = samplePlan().boards;
if (!sampleBoard) throw new Error('The sample plan has a board.');
const plainBoard: PlanBoard = {
  ...sampleBoard,
  id: 'main',
  ribs: [],
  routes: [],
  placements: [],
  fixings: [],
  holes: [],
};
const onBoard = ['block', 'ground', 'amp', 'dsp'];

/** The work of the small plan with its amplifier, processor and distributions on a board, and what a test changes. */
function work(board: Partial<PlanBoard> = {}, change: (work: Work) => Work = (one) => one): Work {
  const { plan } = small();
  const items = plan.items.map(
    (item): PlanItem => (onBoard.includes(item.id) ? { ...item, board: 'main', seat: null } : item),
  );
  return change({
    plan: { ...plan, items, boards: [{ ...plainBoard, ...board }] },
    times: {},
    declared: [],
    tape: { system: 'inch', fraction: 16 },
    tiesM: { board: 0.1524, vehicle: 0.3048 },
    bankWithinV: 0.5,
    continuityOhm: { ground: 0.1, wire: 1 },
    gainUnder: 0.05,
    systemV: 12,
    activeTweeters: [],
  });
}
const ordered = (...given: Parameters<typeof work>) => orderOfWork(work(...given));
const at = (order: ReturnType<typeof orderOfWork>, id: string) => byId(order.steps, id);
const has = (order: ReturnType<typeof orderOfWork>, id: string) => order.steps.some((step) => step.id === id);

describe('the order of work of a small job', () => {
  const order = () => ordered();

  test('goes from the bench over the vehicle to the hand-over, thin before thick on the board, ground first in the vehicle', () => {
    expect(order().steps.map(({ id }) => id)).toEqual([
      'cut-main',
      'drill-main',
      'place-main',
      'preset-main',
      'signal-main',
      'turn-on-main',
      'speaker-main',
      'power-main',
      'ground-main',
      'dress-main',
      'test-main',
      'check-in',
      'battery-off',
      'run-left',
      'run-right',
      'mount-bay',
      'mount-dash',
      'mount-door',
      'mount-boot',
      'board-in-main',
      'connect-ground',
      'connect-signal',
      'connect-turn-on',
      'connect-speaker',
      'connect-power',
      'test-without-power',
      'battery-on',
      'fuses',
      'first-power',
      'filters',
      'gains',
      'speakers-on',
      'load-readings',
      'hand-over',
    ]);
  });

  test('mounts on the board what the job puts there, and lays there what ends on it and in no run', () => {
    const found = order();
    expect(at(found, 'place-main').installs.toSorted()).toEqual(onBoard.toSorted());
    expect(at(found, 'power-main').installs.toSorted()).toEqual(['amp-feed', 'dsp-feed', 'radio-feed']);
    expect(at(found, 'signal-main').installs.toSorted()).toEqual(['signal-1', 'signal-2']);
    expect(at(found, 'run-left').installs).toEqual(['main']);
    expect(at(found, 'run-right').installs).toEqual(['radio-signal']);
    expect(at(found, 'mount-boot').installs).toEqual(['box', 'sub']);
    // Both of its ends are in the vehicle.
    expect(at(found, 'connect-power').installs).toEqual(['feed']);
    expect(at(found, 'connect-power').acts).toEqual(
      expect.arrayContaining(['label:feed', 'connect:feed', 'connect:main', 'connect:radio-feed']),
    );
    expect(at(found, 'connect-power').acts).not.toContain('connect:amp-feed');
    expect(at(found, 'mount-boot').text).toBe('Mount at boot: box, sub');
  });

  test('installs and acts on what there is, and on nothing else', () => {
    const found = order();
    const { plan } = work();
    const things = [...plan.items, ...plan.wires].map(({ id }) => id);
    for (const { id, installs, acts, tools } of found.steps) {
      for (const one of installs) expect(things, id).toContain(one);
      for (const act of acts) expect(act, id).toMatch(/^[a-z-]+(:[\w.+-]+)?$/);
      for (const tool of tools) expect(tool, id).toMatch(/^[a-zA-Z0-9 ,-]+$/);
    }
  });

  test('begins in the vehicle with the survey and the battery off, before which nothing there is touched', () => {
    const found = order();
    expect(at(found, 'check-in').acts).toEqual([
      'check-in',
      'measure:battery-rest',
      'measure:battery-charging',
      'measure:battery-ripple',
    ]);
    // A vehicle's check-in takes 20 min, a reading 2.
    expect(at(found, 'check-in').minutes).toBe(26);
    expect(at(found, 'battery-off').text).toContain("take the battery's negative lead off");
    for (const id of ['run-left', 'mount-bay', 'mount-boot'])
      expect(at(found, id).after).toEqual(['battery-off']);
    const two = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        items: [
          ...one.plan.items,
          ...one.plan.items.filter(({ id }) => id === 'battery').map((item) => ({ ...item, id: 'second' })),
        ],
      },
    }));
    expect(at(two, 'battery-off').text).toContain('take the negative leads of battery and second off');
    const ours = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        items: one.plan.items.map((item) => (item.id === 'radio' ? { ...item, kind: 'battery' } : item)),
      },
    }));
    expect(at(ours, 'battery-off').text).toContain("take the battery's negative lead off");
  });

  test('waits for board, runs and parts before anything is connected, and for every end before it is tested', () => {
    const found = order();
    expect(at(found, 'board-in-main').after).toEqual(['test-main', 'run-left', 'run-right']);
    expect(at(found, 'connect-ground').waitsFor.map(({ step, why }) => `${step}: ${why}`)).toEqual([
      'board-in-main: a loop is left at the fixed board',
      'mount-bay: both ends must be in place',
      'mount-dash: both ends must be in place',
      'mount-door: both ends must be in place',
      'mount-boot: both ends must be in place',
    ]);
    expect(at(found, 'test-without-power').after).toEqual(['connect-power']);
    // Without a board the runs themselves are waited for.
    const bare = orderOfWork(
      work({}, (one) => ({ ...one, plan: { ...one.plan, boards: [], items: small().plan.items } })),
    );
    expect(at(bare, 'connect-ground').after).toEqual(
      expect.arrayContaining(['run-left', 'run-right', 'mount-boot']),
    );
  });

  test('sets filters, then gains, then speakers, each control once', () => {
    const found = order();
    expect(at(found, 'gains').waitsFor).toEqual([
      {
        step: 'filters',
        why: 'the voltages are those of a tone through the filters, as they stand for good',
      },
    ]);
    expect(at(found, 'gains').acts).toContain('finish:amp.GAIN');
    expect(at(found, 'gains').text).toMatch(/presets sheet: amp GAIN\. Then prove/);
    expect(at(found, 'gains').text).not.toContain('dash');
    expect(at(found, 'hand-over')).toMatchObject({
      layer: 'hand-over',
      after: ['load-readings'],
      text: 'Play one channel at a time from the lowest level up, check the functions of the check-in again, show the customer main fuse and level',
    });
    const knob = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        items: one.plan.items.map((item) =>
          item.id === 'tweeter' ? { ...item, kind: 'level-control' } : item,
        ),
      },
    }));
    expect(at(knob, 'gains').text).toMatch(/^Speakers off, level control of the dash fully up\. /);
  });

  test('fits fuses behind others first and those at the source last; without a fuse there is no such step', () => {
    const { plan } = work();
    const sources = plan.power.fuses.map(({ id, source }) => [id, source]);
    expect(sources).toContainEqual(['main-fuse', 'battery']);
    const [last, ...behind] = at(order(), 'fuses').acts.toReversed();
    expect(last).toBe('fit-fuse:main-fuse');
    expect(behind.length).toBe(plan.power.fuses.length - 1);
    expect(at(order(), 'fuses').text).toMatch(
      /^Fit the fuses, branches first and those at the source last: /,
    );
    const none = ordered({}, (one) => ({
      ...one,
      plan: { ...one.plan, power: { ...one.plan.power, fuses: [] } },
    }));
    expect(has(none, 'fuses')).toBe(false);
    expect(at(none, 'first-power').after).toEqual(['battery-on']);
    expect(at(none, 'battery-on').after).toEqual(['test-without-power']);
  });

  test('tells the torque of fixings and of ground points, and of nothing else there', () => {
    const found = order();
    // Common practice, no source: an M8 in its rivet nut takes 20 N m, an M6 10 N m.
    expect(at(found, 'connect-ground').text).toMatch(
      /^Connect the grounds on bare metal: G[\d, G]+; (dash to 10 N m; cargo to 20 N m|cargo to 20 N m; dash to 10 N m)$/,
    );
    const fixings = sampleBoard.fixings.slice(0, 1).map((one) => ({ ...one, id: 'a', torqueNm: 2.6 }));
    expect(at(ordered({ fixings }), 'board-in-main').text).toMatch(/led to its edges; a to 2\.6 N m$/);
  });

  test('names the ground strip that grounds are measured to, and the ends where there is none', () => {
    expect(at(order(), 'ground-main').proof).toMatch(/under 0\.1 ohm to ground$/);
    const noStrip = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        items: one.plan.items.map((item) => (item.id === 'ground' ? { ...item, kind: 'other' } : item)),
      },
    }));
    expect(at(noStrip, 'ground-main').proof).toMatch(/under 0\.1 ohm end to end$/);
  });

  test('tests the board through the limit of its own first power, its own fuses fitted where it has some', () => {
    const limits =
      (board: string) =>
      (one: Work): Work => ({
        ...one,
        plan: {
          ...one.plan,
          power: { ...one.plan.power, firstPower: [{ board, idleA: 1, limitA: 3, oneByOne: false }] },
        },
      });
    expect(at(ordered({}, limits('main')), 'test-main').text).toMatch(
      /Then fit the fuses of the board, give first power through a limit of 3 A/,
    );
    expect(at(ordered({}, limits('other')), 'test-main').text).toMatch(/first power through a limit, and/);
    const bare = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        power: { ...one.plan.power, fuses: one.plan.power.fuses.filter(({ item }) => item === 'main-fuse') },
      },
    }));
    expect(at(bare, 'test-main').text).toMatch(/Then give first power through a limit$/);
  });
});

describe('spare conductors of a cable', () => {
  const cable = (wires: readonly (string | null)[]) =>
    ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        cables: [
          {
            ...{ id: 'lead', part: 'lead', lengthM: 1 },
            conductors: wires.map((wire, k) => ({
              ...{ name: `c${k}`, colour: 'GY', wire },
              size: { label: '24 AWG', awg: '24', areaMm2: 0.2 },
            })),
          },
        ],
      },
    }));

  test('are capped once the cable lies; a cable with none, or with nothing else, is left as it is', () => {
    const found = at(cable(['signal-1', null, null]), 'cap-lead');
    expect(found).toMatchObject({ acts: ['cap:lead.c1', 'cap:lead.c2'], minutes: 8 });
    // It was laid on the bench; nothing is cut in the vehicle with the battery on.
    expect(found.after).toEqual(['signal-main', 'battery-off']);
    expect(at(cable(['radio-signal', null]), 'cap-lead').after).toEqual(['run-right']);
    expect(has(cable(['signal-1']), 'cap-lead')).toBe(false);
    expect(has(cable([null, null]), 'cap-lead')).toBe(false);
  });
});

describe('a raised part', () => {
  const place = (item: string, xM: number, raisedM: number) => {
    const [placed] = sampleBoard.placements;
    if (!placed) throw new Error('The sample board has a part.');
    return { ...placed, item, xM, yM: 0, widthM: 0.1, depthM: 0.1, heightM: 0.05, raisedM };
  };
  const route = (wire: string, xM: number) => ({
    ...{ wire, along: [wire], layer: 'power' as const, lengthM: 1, bends: 0 },
    points: [
      { xM, yM: -1 },
      { xM, yM: 1 },
    ],
  });
  const placements = [
    place('amp', 0.5, 0.05),
    place('dsp', 0, 0),
    place('block', 1, 0),
    place('ground', 2, 0),
  ];

  test('goes on after the wires beneath it, in a round of its own', () => {
    const found = ordered({ placements, routes: [route('dsp-feed', 0.55)] });
    expect(at(found, 'place-main').installs).not.toContain('amp');
    expect(at(found, 'place-main-2')).toMatchObject({ installs: ['amp'] });
    expect(
      at(found, 'place-main-2')
        .waitsFor.map(({ why }) => why)
        .join(),
    ).toMatch(/^amp stands over P\d+$/);
    expect(at(found, 'power-main').installs.toSorted()).toEqual(['dsp-feed', 'radio-feed']);
    expect(at(found, 'power-main-2').installs).toEqual(['amp-feed']);
    expect(has(ordered({ placements, routes: [route('dsp-feed', 0.65)] }), 'place-main-2')).toBe(false);
  });

  test('over a wire that comes in the vehicle is set there, once the board and that wire are in place', () => {
    const found = ordered({ placements, routes: [route('main', 0.55)] });
    const lead = at(found, 'lead-main');
    expect(lead.text).toMatch(/^Lead to their places on main, ends loose: P\d+\. amp will stand over them$/);
    expect(lead.after).toEqual(['board-in-main']);
    const set = at(found, 'place-main-in-vehicle');
    expect(set).toMatchObject({ place: 'vehicle', installs: ['amp'], after: ['lead-main'] });
    const later = found.steps.slice(found.steps.indexOf(set)).flatMap(({ installs }) => installs);
    expect(later).toEqual(expect.arrayContaining(['amp-feed', 'amp-ground', 'signal-1']));
    const counts = new Map<string, number>();
    for (const one of found.steps.flatMap(({ installs }) => installs))
      counts.set(one, (counts.get(one) ?? 0) + 1);
    for (const [id, count] of counts) expect(count, id).toBe(1);
    // What was laid on the board in the vehicle is tested there.
    expect(at(found, 'test-without-power').acts).toContain('test:amp-feed');
    expect(at(ordered(), 'test-without-power').acts).not.toContain('test:amp-feed');
  });
});

describe('what the job says must be in place first', () => {
  const declared = (...waits: Work['declared']) => ordered({}, (one) => ({ ...one, declared: waits }));

  test('is: a part that waits for its own wire waits for what that wire comes from', () => {
    const { plan } = work();
    const waits = [{ item: 'amp', after: 'amp-feed', why: 'its lug is under it' }];
    const phases = itemPhases(onBoard, plan.wires, waits, []);
    expect(phases.rings).toEqual([]);
    expect(Object.fromEntries(phases.ofItem)).toEqual({ block: 0, ground: 0, dsp: 0, amp: 1 });
  });

  test('in the vehicle stands in the step that waits, with the reason', () => {
    const found = declared({ item: 'sub', after: 'tweeter', why: 'the seat is out' });
    expect(at(found, 'mount-boot').waitsFor).toContainEqual({
      step: 'mount-door',
      why: 'sub after tweeter: the seat is out',
    });
  });

  test('and goes round in a ring is told with each reason, and one of them is left out', () => {
    const found = declared(
      { item: 'sub', after: 'tweeter', why: 'first' },
      { item: 'tweeter', after: 'sub', why: 'second' },
      { item: 'sub', after: 'main-fuse', why: 'third' },
    );
    expect(found.rings).toEqual([
      {
        items: ['sub', 'tweeter'],
        message:
          'sub and tweeter wait for each other: sub is to come after tweeter (first); tweeter is to come after sub (second)',
        remedy: 'take tweeter out of after: of sub',
      },
    ]);
    expect(at(found, 'mount-door').after).toContain('mount-boot');
    expect(at(found, 'mount-boot').after).toContain('mount-bay');
  });

  test('comes from the job, with its board and its times', () => {
    const { job, plan } = small((content) => {
      entry(content.job.devices, 'sub').after = { tweeter: 'the seat is out' };
      content.shop.times = { 'mount-item': '4 min' };
    });
    const { steps } = planWork(job, plan, new PlanBook());
    expect(byId(steps, 'mount-boot').after).toContain('mount-door');
    expect(byId(steps, 'mount-door').minutes).toBe(4);
  });
});

describe('how long the work takes', () => {
  const wait = (id: string, minutes: number, after: readonly string[] = [], by: Waiting['by'] = 'board') => ({
    ...{ id, minutes, after, by },
  });
  // A network of the critical path method as handbooks draw it, by hand: a 3, then b 5 beside c 2, then d 4 after both.
  const network = [
    wait('a', 3),
    wait('b', 5, ['a']),
    wait('c', 2, ['a'], 'vehicle'),
    wait('d', 4, ['b', 'c'], 'both'),
  ];

  test('is the longest chain: 3 + 5 + 4 over b', () => {
    const timing = criticalPath(network);
    expect(timing.minutes).toBe(12);
    expect(timing.path).toEqual(['a', 'b', 'd']);
    expect(Object.fromEntries(timing.earliest)).toEqual({ a: 0, b: 3, c: 3, d: 8 });
    expect(Object.fromEntries(timing.tail)).toEqual({ a: 12, b: 9, c: 6, d: 4 });
  });

  test('of two people: each takes what is ready and has most behind it, both together where both are needed', () => {
    const two = twoPersonStarts(network, criticalPath(network));
    expect(Object.fromEntries(two.starts)).toEqual({ a: 0, b: 3, c: 3, d: 8 });
    expect(two.minutes).toBe(12);
    // One pair of hands: the long chain first, though the short step stands first in the list.
    const one = [wait('short', 2), wait('long', 3), wait('behind', 6, ['long', 'of another job'], 'vehicle')];
    const alone = twoPersonStarts(one, criticalPath(one));
    expect(Object.fromEntries(alone.starts)).toEqual({ long: 0, behind: 3, short: 3 });
    expect(alone.minutes).toBe(9);
    // What can begin first is begun first, however short its chain.
    const early = [
      wait('a', 5),
      wait('b', 9, ['a']),
      wait('c', 1, [], 'vehicle'),
      wait('e', 1, ['c'], 'vehicle'),
    ];
    expect(Object.fromEntries(twoPersonStarts(early, criticalPath(early)).starts)).toEqual({
      a: 0,
      c: 0,
      e: 1,
      b: 5,
    });
  });

  test('of the job is told with its chain, each step beginning once what it waits for is done', () => {
    const { steps, schedule } = ordered();
    const ends = new Map(steps.map(({ id, startMinute, minutes }) => [id, startMinute + minutes]));
    for (const { id, after, startMinute } of steps)
      for (const before of after)
        expect(startMinute, id).toBeGreaterThanOrEqual(ends.get(before) ?? Number.NaN);
    expect(schedule.totalMinutes).toBe(steps.reduce((sum, { minutes }) => sum + minutes, 0));
    expect(schedule.criticalPath.at(-1)).toBe('hand-over');
    expect(steps.filter(({ critical }) => critical).map(({ id }) => id)).toEqual(
      expect.arrayContaining([...schedule.criticalPath]),
    );
  });
});
