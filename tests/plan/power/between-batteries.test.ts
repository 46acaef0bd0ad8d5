import { describe, expect, test } from 'vitest';
import { partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { networkChecks } from '../checks/network.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { planned } from '../planned.ts';
import { banked, charged, isolated } from './two-batteries.ts';

const shares = (change: (content: Written) => void = () => {}) =>
  planned((content) => {
    isolated(content);
    change(content);
  }).plan.power.cranking;

describe('the share of a cranking current', () => {
  // By hand: two batteries of one voltage share a current as their branches conduct. In the second one's branch: its
  // 4 mohm; five leads of 1 m and the strap of 0.3 m of 4 AWG, 0.2485 ohm/1,000 ft at 20 C (published copper table),
  // stranded 2 % over; two fuses, cold 0.7 of 0.1 V / rating; the body 0.5 mohm at its lowest; joints count for nothing.
  test('is that of the current divider', () => {
    const perM = (0.2485 / 304.8) * 1.02;
    const fuses = 0.7 * (0.1 / 80 + 0.1 / 100);
    const linkOhm = 5.3 * perM + fuses + 0.0005;
    const byHand = (400 * 0.004) / (0.004 + 0.004 + linkOhm);
    const found = shares();
    expect(found).toMatchObject({ currentA: 400, seconds: 4, measured: true });
    for (const id of ['main-fuse', 'second-fuse', 'isolator.A>B']) {
      const share = found?.shares.find((one) => one.id === id)?.currentA ?? 0;
      expect(share, id).toBeGreaterThanOrEqual(byHand - 0.01);
      expect(share, id).toBeLessThanOrEqual(byHand + 1.01);
    }
  });

  test('is none behind a relay that is open while the starter turns', () => {
    expect(
      shares((content) => {
        partIn(content, 'isolator', 'isolating-relay')['opens-while-cranking'] = true;
      }),
    ).toBeUndefined();
  });

  test('of a battery alone is none', () => {
    expect(planned().plan.power.cranking).toBeUndefined();
  });
});

describe('a charger between two batteries', () => {
  const { power } = planned(charged).plan;
  const load = (id: string) => power.loads.find(({ item }) => item === id);
  const fuse = (id: string) => power.fuses.find((one) => one.id === id);

  test('draws its output over its efficiency at the voltage for sizing', () => {
    // By hand: 14.4 V * 30 A / (0.85 * 13.8 V).
    expect(load('charger')?.ratedA).toBeCloseTo(36.8286, 3);
  });

  test('has the loads behind it on its own battery and not on the feed before it', () => {
    expect(fuse('main-fuse')?.loads).toEqual(['charger']);
    expect(fuse('board-fuse')?.loads).toEqual(expect.arrayContaining(['amp', 'dsp', 'radio']));
    expect(fuse('second-fuse')?.loads).toEqual([]);
  });

  test('has a fuse at each side, at most what its maker allows', () => {
    expect(fuse('main-fuse')).toMatchObject({ ceilingA: 60, ratedA: 36.9, ratingA: 60 });
    expect(fuse('second-fuse')).toMatchObject({ ceilingA: 50, ratedA: 30, ratingA: 50 });
  });

  test('puts no cranking current through its fuses', () => {
    expect(power.cranking).toBeUndefined();
  });
});

describe('a capacitor bank', () => {
  const { power } = planned(banked).plan;

  test('has a fuse that its maker allows, and adds nothing to the feed', () => {
    expect(power.fuses.find(({ id }) => id === 'bank-fuse')).toMatchObject({
      ceilingA: 100,
      ratedA: 80,
      ratingA: 100,
    });
    const main = planned().plan.power.fuses.find(({ id }) => id === 'main-fuse');
    const banked = power.fuses.find(({ id }) => id === 'main-fuse');
    expect(banked?.loads).toEqual(main?.loads);
    // What its devices ask for, at the voltage that they get: nothing for the bank, which is full.
    expect(banked?.ratedA).toBe(
      Math.max(main?.ratedA ?? 0, Math.ceil((banked?.continuousA ?? 0) * 10 - 1e-9) / 10),
    );
  });

  test('holds no reserve', () => {
    const off = (list: typeof power.charging) => list.find(({ name }) => name === 'engine-off');
    const without = planned((content) => {
      banked(content);
      for (const id of ['bank', 'bank-fuse']) delete content.job.devices[id];
      for (const id of ['bank-tail', 'bank-feed', 'bank-ground']) delete content.job.links[id];
    }).plan;
    expect(off(power.charging)?.reserveMinutes).toBeGreaterThan(0);
    expect(off(power.charging)?.reserveMinutes).toBe(off(without.power.charging)?.reserveMinutes);
  });
});

describe('a truck with a charger from 24 V to 12 V', () => {
  const { power } = planned((content) => {
    charged(content);
    content.vehicle['system-voltage'] = '24 V';
    content.parts.truck = { ...partIn(content, 'agm', 'battery'), voltage: '24 V' };
    content.vehicle.fitted.battery = { part: 'truck', zone: 'engine-bay' };
  }).plan;
  const { power: car } = planned(charged).plan;
  const ratedA = (list: typeof power, id: string) => list.loads.find(({ item }) => item === id)?.ratedA;

  test('draws half as much on its side, and what it feeds as much as in a car', () => {
    expect(ratedA(power, 'charger')).toBeCloseTo((ratedA(car, 'charger') ?? 0) / 2, 6);
    expect(ratedA(power, 'amp')).toBeCloseTo(ratedA(car, 'amp') ?? 0, 9);
  });
});

/** What the network of a point gives at a terminal against another (V). */
function voltsAt(
  power: ReturnType<typeof planned>['plan']['power'],
  name: string,
  high: string,
  low: string,
) {
  const point = power.points.find((one) => one.name === name);
  const at = (id: string) => point?.nodes.find((node) => node.id === id)?.voltageV ?? Number.NaN;
  return at(high) - at(low);
}
const currentOf = (power: ReturnType<typeof planned>['plan']['power'], name: string, element: string) =>
  power.points.find((one) => one.name === name)?.elements.find(({ id }) => id === element)?.currentA;

describe('the states of an isolating relay', () => {
  const { power } = planned(isolated).plan;
  const joined = planned((content) => {
    isolated(content);
    content.job.links['isolator-rear'] = { from: 'main-fuse.OUT', to: 'second-fuse.OUT', length: '1 m' };
  }).plan.power;

  test('closed with the engine on: the alternator reaches both batteries', () => {
    expect(Math.abs(currentOf(power, 'music', 'isolator.A>B') ?? 0)).toBeGreaterThan(1);
    expect(voltsAt(power, 'rated-power', 'second.POS', 'second.NEG')).toBeGreaterThan(12.6);
  });

  test('open with the engine off: it is no element of the network, and the second battery feeds all', () => {
    expect(currentOf(power, 'engine-off', 'isolator.A>B')).toBeUndefined();
    expect(currentOf(power, 'engine-off', 'battery:emf') ?? 0).toBeCloseTo(0, 6);
    expect(currentOf(power, 'engine-off', 'second:emf')).toBeLessThan(-1);
  });

  test('with the engine off the reserve is that of the battery that is joined to the loads', () => {
    const off = (list: typeof power) =>
      list.charging.find(({ name }) => name === 'engine-off')?.reserveMinutes ?? 0;
    // Alone it carries what both shared, as their branches conduct.
    expect(off(power)).toBeLessThan(off(joined));
    expect(off(power)).toBeGreaterThan(0);
  });
});

describe('what is told to be charged again', () => {
  const recharged = (content: Parameters<typeof planned>[0]) =>
    planned(content).plan.power.charging.flatMap(({ name, rechargeMinutes, recharges }) =>
      name === 'cruise' ? [{ rechargeMinutes, recharges }] : [],
    )[0];

  test('is the battery that gave, through the relay or the charger behind which it stands', () => {
    for (const [content, through] of [
      [isolated, 'isolator'],
      [charged, 'charger'],
    ] as const) {
      const told = recharged(content);
      expect(told?.recharges?.map(({ battery, through }) => [battery, through])).toEqual([
        ['second', [through]],
      ]);
      expect(told?.rechargeMinutes).toBe(told?.recharges?.[0]?.minutes);
      expect(told?.rechargeMinutes).toBeGreaterThan(0);
    }
  });

  test('is both where conductors alone join them, each through nothing', () => {
    const told = recharged((content) => {
      isolated(content);
      content.job.links['isolator-rear'] = {
        from: 'main-fuse.OUT',
        to: 'second-fuse.OUT',
        wire: 'cable',
        length: '1 m',
      };
    });
    expect(told?.recharges?.map(({ battery, through }) => [battery, through]).toSorted()).toEqual([
      ['battery', []],
      ['second', []],
    ]);
  });

  test('is the only battery of a job that has one', () => {
    const told = smallPlan().plan.power.charging.find(({ name }) => name === 'cruise');
    expect(told?.recharges?.map(({ battery, through }) => [battery, through])).toEqual([['battery', []]]);
  });
});

describe('the states of a charger', () => {
  const { power } = planned(charged).plan;

  test('with the engine on it takes what it gives, over its efficiency', () => {
    const given =
      -(currentOf(power, 'music', 'charger:out') ?? 0) *
      voltsAt(power, 'music', 'charger.OUT+', 'charger.GND');
    const taken =
      (currentOf(power, 'music', 'charger:in') ?? 0) * voltsAt(power, 'music', 'charger.IN+', 'charger.GND');
    expect(given).toBeGreaterThan(10);
    expect(taken).toBeCloseTo(given / 0.85, 6);
  });

  test('it gives at most its limit, and holds at most its voltage', () => {
    for (const { name } of power.points.filter(({ name }) => name !== 'engine-off')) {
      expect(-(currentOf(power, name, 'charger:out') ?? 0), name).toBeLessThanOrEqual(30 + 1e-9);
      expect(voltsAt(power, name, 'charger.OUT+', 'charger.GND'), name).toBeLessThanOrEqual(14.4 + 1e-9);
    }
  });

  test('with the engine off it takes and gives nothing', () => {
    const off = power.points.find(({ name }) => name === 'engine-off');
    expect(off?.state).toBe('solved');
    expect(off?.elements.filter(({ of }) => of === 'charger')).toEqual([]);
    expect(currentOf(power, 'engine-off', 'second:emf')).toBeLessThan(-1);
  });

  test('the alternator carries its input, and the second battery what lies behind it', () => {
    const regime = (name: string) => power.charging.find((one) => one.name === name);
    const drawnA = (point: string, id: string) =>
      power.points
        .find(({ name }) => name === point)
        ?.elements.find(({ kind, of }) => kind === 'load' && of === id)?.currentA ?? Number.NaN;
    expect(regime('idle')?.averageA).toBeCloseTo(drawnA('music', 'charger'), 9);
    // Balance of power by hand: 14.4 V and 30 A out, 85 % of what goes in, at the voltage of its input.
    const [charger] = regime('idle')?.chargers ?? [];
    expect(charger?.item).toBe('charger');
    expect(charger?.currentA).toBeCloseTo(drawnA('music', 'charger'), 9);
    const inputV = voltsAt(power, 'music', 'charger.IN+', 'charger.GND');
    expect((charger?.flatA ?? 0) * inputV * 0.85).toBeCloseTo(432, 6);
    expect(regime('engine-off')?.chargers).toBeUndefined();
    expect(regime('engine-off')?.averageA).toBeCloseTo(
      drawnA('engine-off', 'amp') + drawnA('engine-off', 'dsp') + drawnA('engine-off', 'radio'),
      9,
    );
  });
});

describe('what hangs behind a converter alone', () => {
  const { power } = planned((content) => {
    charged(content);
    for (const id of ['second', 'second-fuse', 'board-fuse']) delete content.job.devices[id];
    for (const id of ['second-tail', 'second-ground', 'board-tail', 'charger-out'])
      delete content.job.links[id];
    content.job.links['board-feed'] = { from: 'charger.OUT+', to: 'block.IN', wire: 'cable', length: '1 m' };
  }).plan;

  test('is fed by it with the engine on, and by nothing with the engine off', () => {
    expect(voltsAt(power, 'music', 'amp.B+', 'amp.GND')).toBeGreaterThan(13);
    const off = power.points.find(({ name }) => name === 'engine-off');
    expect(off?.state).toBe('solved');
    expect(off?.elements.some(({ of }) => of === 'amp')).toBe(false);
  });
});

// ngspice, as the checks say: every operating point, rebuilt from its elements alone.
describe.each([
  ['an isolating relay', isolated],
  ['a charger', charged],
] as const)('the network with %s', (_, content) => {
  const { plan } = planned(content);
  networkChecks(() => plan);
});
