import { describe, expect, test } from 'vitest';
import { orderOfWork } from '../../../../lib/plan/work/steps/order-of-work.ts';
import type { Work } from '../../../../lib/plan/work/work.ts';
import { at, has, onBoard, ordered, sampleBoard, small, work } from './small-work.ts';

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
      'trim-off-sill',
      'trim-off-cargo',
      'trim-off-cabin',
      'run-left',
      'run-right',
      'mount-boot',
      'mount-bay',
      'mount-dash',
      'mount-door',
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
      'trim-on',
      'hand-over',
    ]);
  });

  test('takes trim off once in each zone before what is done there, and puts it back once all is tested', () => {
    const found = order();
    const zones = found.steps.flatMap(({ id }) => /^trim-off-(.*)$/.exec(id)?.[1] ?? []);
    expect(zones).toContain('sill');
    expect(new Set(zones).size).toBe(zones.length);
    for (const zone of zones) {
      const off = at(found, `trim-off-${zone}`);
      expect(off.after).toEqual(['battery-off']);
      expect(off.text).toMatch(/airbag.* may lie behind: feel before you pull/);
      // 25 min for both ways, common practice; whole minutes up.
      expect(off.minutes).toBe(13);
    }
    const on = at(found, 'trim-on');
    expect(on.acts).toEqual(zones.map((zone) => `trim-on:${zone}`));
    expect(on.minutes).toBe(Math.ceil(12.5 * zones.length));
    expect(on.after).toEqual(['load-readings']);
    expect(at(found, 'hand-over').after).toContain('trim-on');
    expect(at(found, 'trim-off-sill').text).toMatch(/^Take trim off, sill: .* way of left/);
    expect(at(found, 'run-left').after).toContain('trim-off-sill');
    expect(at(found, 'run-left').text).toMatch(/^Lay the run left/);
  });

  test('takes none off where a way lies open to the weather', () => {
    const open = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        wires: one.plan.wires.map((wire) => ({ ...wire, zones: [] })),
        runs: one.plan.runs.map((run) => ({
          ...run,
          passes: (run.passes ?? []).map((pass) => ({ ...pass, zone: 'engine-bay' as const })),
        })),
      },
    }));
    expect(open.steps.filter(({ id }) => id.startsWith('trim-'))).toEqual([]);
    expect(at(open, 'run-left').after).toEqual(['battery-off']);
    expect(at(open, 'hand-over').after).toEqual(['load-readings']);
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
      expect(at(found, id).after).toContain('battery-off');
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
      after: expect.arrayContaining(['load-readings']),
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

  test('brings the amplifiers up one after the other, what stands before them first, others not counted', () => {
    const withItems = (change: (items: Work['plan']['items']) => Work['plan']['items']) =>
      at(
        ordered({}, (one) => ({ ...one, plan: { ...one.plan, items: change(one.plan.items) } })),
        'first-power',
      ).text;
    const as = (id: string, own: Partial<Work['plan']['items'][number]>) => (items: Work['plan']['items']) =>
      items.map((item) => (item.id === id ? { ...item, ...own } : item));
    const told = (text: string) => /level: (.*); take/.exec(text)?.[1];
    expect(told(withItems((items) => items))).toBe('processor first, then the amplifier');
    expect(told(withItems(as('tweeter', { kind: 'amplifier' })))).toBe(
      'processor first, then one amplifier after the other',
    );
    expect(told(withItems(as('battery', { kind: 'amplifier' })))).toBe('processor first, then the amplifier');
    expect(told(withItems(as('dsp', { kind: 'relay' })))).toBe('the amplifier');
    expect(told(withItems(as('amp', { kind: 'relay' })))).toBe(
      'processor first, then one device after the other',
    );
  });

  test('shows at the hand-over what there is: main fuse, level, neither', () => {
    const handOver = (plan: (one: Work['plan']) => Partial<Work['plan']>) =>
      at(
        ordered({}, (one) => ({ ...one, plan: { ...one.plan, ...plan(one.plan) } })),
        'hand-over',
      ).text;
    const noFuses = (plan: Work['plan']) => ({ power: { ...plan.power, fuses: [] } });
    expect(handOver(() => ({}))).toMatch(/, show the customer main fuse and level$/);
    expect(handOver(noFuses)).toMatch(/, show the customer level$/);
    const silent = ({ items }: Work['plan']) => ({
      items: items.map((item) =>
        ['amplifier', 'speaker', 'processor'].includes(item.kind)
          ? { ...item, kind: 'relay' as const }
          : item,
      ),
      audio: { ...work().plan.audio, channels: [], speakers: [] },
      controls: [],
    });
    expect(handOver((plan) => ({ ...silent(plan), ...noFuses(plan) }))).toMatch(/check-in again$/);
    expect(at(order(), 'test-without-power').tools).toEqual(['meter', 'polarity tester']);
  });

  test('tightens the ground points of the wires that it connects, and not what they have at the other end', () => {
    const found = ordered({}, (one) => ({
      ...one,
      plan: {
        ...one.plan,
        wires: one.plan.wires.map((wire) => {
          const [from, to] = wire.ends;
          return wire.role === 'ground'
            ? {
                ...wire,
                ends: [
                  { ...from, torqueNm: 3 },
                  { ...to, torqueNm: 4 },
                ] as const,
              }
            : wire;
        }),
      },
    }));
    expect(at(found, 'connect-ground').text).toMatch(/; (dash, cargo|cargo, dash) to 4 N m$/);
  });

  test('tells of a run the grommets that are fitted, by their holes, and those of the vehicle by their place', () => {
    const grommet = (zone: 'sill' | 'cabin', own?: true) => ({
      ...{ zone, holeM: 0.012, part: null },
      ...(own && { own }),
    });
    const laid = (...grommets: readonly ReturnType<typeof grommet>[]) =>
      at(
        ordered({}, (one) => ({
          ...one,
          plan: {
            ...one.plan,
            runs: one.plan.runs.map((run) => (run.id === 'left' ? { ...run, grommets: [...grommets] } : run)),
          },
        })),
        'run-left',
      );
    const fitted = laid(grommet('sill'), grommet('cabin'));
    expect(fitted.text).toMatch(
      /; a grommet that is still to be found in the hole of 12 mm at the sill \(a blind plug in it comes out first\); .* in the hole of 12 mm at the cabin .*; sealer/,
    );
    expect(fitted.acts).toEqual(expect.arrayContaining(['grommet:left.1', 'grommet:left.2']));
    expect(fitted.proof).toContain('; a grommet in every metal edge;');
    const both = laid(grommet('sill'), grommet('cabin', true));
    expect(both.text).toMatch(
      /at the sill .*; through the vehicle's own grommet at cabin, which stays; sealer/,
    );
    expect(both.acts).not.toContain('grommet:left.2');
    const own = laid(grommet('cabin', true));
    expect(own.text).not.toContain('to be found');
    expect(own.proof).toContain('a grommet in every metal edge');
    expect(laid().text).not.toContain('grommet');
    expect(laid().proof).not.toContain('grommet');
  });

  test('dresses signal away from power where the board has both, and says so nowhere else', () => {
    const dressed = (...roles: readonly string[]) =>
      at(
        ordered({}, (one) => ({
          ...one,
          plan: { ...one.plan, wires: one.plan.wires.filter(({ role }) => !roles.includes(role)) },
        })),
        'dress-main',
      ).text;
    expect(dressed()).toBe('Dress and tie the wires of main, signal away from power');
    expect(dressed('signal')).toBe('Dress and tie the wires of main');
    expect(dressed('power')).toBe('Dress and tie the wires of main');
  });

  test('sets delays where some speaker has one, and says so where none has', () => {
    const set = (delayMs: number | null) =>
      at(
        ordered({}, (one) => {
          const speakers = one.plan.audio.speakers.map((speaker) => ({ ...speaker, delayMs }));
          return { ...one, plan: { ...one.plan, audio: { ...one.plan.audio, speakers } } };
        }),
        'speakers-on',
      );
    expect(set(1.2).text).toContain('Set delays and polarity');
    expect(set(1.2).proof).toContain('delay and polarity');
    for (const none of [0, null]) {
      expect(set(none).text).toContain('Set polarity; no delay is planned');
      expect(set(none).proof).not.toContain('delay');
    }
  });

  test('puts a tweeter without a crossover on through a capacitor, and no other speaker', () => {
    const on = (...activeTweeters: readonly string[]) =>
      at(
        ordered({}, (one) => ({ ...one, activeTweeters })),
        'speakers-on',
      ).text;
    expect(on()).not.toContain('capacitor');
    expect(on('left', 'right')).toContain(
      'speaker plugs on, left and right through a series capacitor at first',
    );
  });

  test('waits for the battery to be off where nothing has to be in place before a connection', () => {
    const bare = orderOfWork(
      work({}, (one) => ({ ...one, plan: { ...one.plan, boards: [], items: [], runs: [] } })),
    );
    expect(at(bare, 'connect-ground').after).toEqual(['battery-off']);
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
