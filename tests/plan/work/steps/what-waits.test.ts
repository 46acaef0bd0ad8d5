import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planWork } from '../../../../lib/plan/work/plan-work.ts';
import { itemPhases } from '../../../../lib/plan/work/steps/item-phases.ts';
import { criticalPath, twoPersonStarts, type Waiting } from '../../../../lib/plan/work/steps/sort-steps.ts';
import { itemsSetLate } from '../../../../lib/plan/work/steps/steps-on-board.ts';
import type { Work } from '../../../../lib/plan/work/work.ts';
import { byId, entry } from '../../../rules/case.ts';
import { at, has, onBoard, ordered, sampleBoard, small, work } from './small-work.ts';

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

  test('and set there only is not tested on the bench, which says what waits', () => {
    const board = { ...sampleBoard, placements, routes: [route('main', 0.55)] };
    const { plan, declared } = work();
    const late = itemsSetLate({ plan: { ...plan, boards: [board] }, declared });
    expect([...late]).toEqual(['amp']);
    expect(itemsSetLate({ plan: { ...plan, boards: [{ ...board, routes: [] }] }, declared }).size).toBe(0);
    const powered = (firstPower: Work['plan']['power']['firstPower']) =>
      at(
        ordered({ placements, routes: [route('main', 0.55)] }, (one) => ({
          ...one,
          plan: { ...one.plan, power: { ...one.plan.power, ...(firstPower && { firstPower }) } },
        })),
        'test-main',
      );
    const own = { board: 'main', idleA: 0.4, limitA: 3, oneByOne: false, late: ['amp'] };
    expect(powered([own]).text).toMatch(
      /a limit of 3 A.*\. amp comes onto main in the vehicle, over wires from there, and gets first power there$/,
    );
    expect(powered([own]).proof).toMatch(/^Every device shows ready/);
    const none = powered([{ ...own, idleA: 0 }]);
    expect(none.text).toMatch(/positive to ground open\. No power yet: amp comes onto main in the vehicle/);
    expect(none.text).not.toMatch(/limit/);
    expect(none.proof).not.toMatch(/shows ready/);
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
