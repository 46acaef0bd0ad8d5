import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Fault, isFault } from '../../lib/model/fault.ts';
import type { Traced } from '../../lib/model/trace.ts';
import { type BatteryFlow, chargingRegime, type RegimeFlows } from '../../lib/power/charging-balance.ts';
import { rechargeMinutes, recharges } from '../../lib/power/recharge.ts';
import { type Reserve, reserveMinutes } from '../../lib/power/reserve.ts';
import { outsideCheck } from '../outside-check.ts';
import { redone } from '../publish/workings/redo.ts';
import { usualRules } from './usual-rules.ts';

const inTable = outsideCheck('peukert-table');
const byHand = outsideCheck('batteries-by-hand');

const battery: Reserve = { capacityAh: 100, exponent: 1.2 };

function expectRedone(made: Traced<number> | Fault): void {
  if (isFault(made)) throw new Error(made.message);
  expect(redone(made.trace), made.trace.rule).toBeCloseTo(made.value, 9);
}

describe('reserve with the engine off', () => {
  test('follows Peukert to half charge', () => {
    // The textbook example of Peukert's law: 100 Ah over 20 h, k = 1.2, at 10 A lasts 8.7 h; half of it 261 min.
    const reserve = reserveMinutes(battery, 10, usualRules);
    expect(byHand.differs('value' in reserve ? reserve.value : Number.NaN, 600 * 0.5 ** 1.2)).toBe(261);
  });

  test('at the rated current is half the rated hours, and a lower current gains nothing on the capacity', () => {
    expect(reserveMinutes(battery, 5, usualRules)).toMatchObject({ value: 600 });
    expect(reserveMinutes(battery, 2.5, usualRules)).toMatchObject({ value: 1200 });
  });

  test('can be redone from its working, on either side of the rated current', () => {
    for (const currentA of [2, 5, 10, 40])
      for (const more of [{}, { ratedHours: 10 }, { reserveEnd: 0.2 }])
        expectRedone(reserveMinutes({ ...battery, ...more }, currentA, usualRules));
  });

  test('tells bad input', () => {
    expect(reserveMinutes(battery, 0, usualRules)).toHaveProperty('fault');
    expect(reserveMinutes({ ...battery, capacityAh: -1 }, 5, usualRules)).toHaveProperty('fault');
  });

  test('never lasts longer at a higher current', () => {
    const ampere = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(ampere, ampere, (a, b) => {
        const [low, high] = [
          reserveMinutes(battery, Math.min(a, b), usualRules),
          reserveMinutes(battery, Math.max(a, b), usualRules),
        ];
        expect('value' in low && 'value' in high && high.value <= low.value).toBe(true);
      }),
    );
  });
});

// Outside reference: the table of available capacity at rates of discharge in the owner's manual of a battery monitor
// (chapter on high discharge rates and Peukert's equation, page 27): per cent of 100 Ah at 20 hours, to whole per cent.
describe('the capacity left at a rate, as a published table has it', () => {
  test.each([
    [1.1, [93, 88, 85, 79, 76, 74, 71, 69]],
    [1.2, [87, 78, 72, 63, 58, 55, 51, 48]],
    [1.25, [84, 74, 67, 56, 51, 47, 42, 40]],
    [1.3, [81, 69, 62, 50, 44, 41, 36, 33]],
  ])('with an exponent of %d', (exponent, shares) => {
    for (const [k, currentA] of [10, 16.7, 25, 50, 75, 100, 150, 200].entries()) {
      const reserve = reserveMinutes({ ...battery, exponent }, currentA, usualRules);
      const minutes = 'value' in reserve ? reserve.value : Number.NaN;
      // The reserve is half of the time, rounded down to a minute: one minute of both halves is within the tolerance.
      const deliveredAh = (currentA * 2 * minutes) / 60;
      const share = shares[k] ?? 0;
      expect(Math.abs(inTable.differs(deliveredAh, share) - share), `${currentA} A`).toBeLessThan(
        0.5 + (currentA * 2) / 60,
      );
    }
  });
});

describe('recharge after the reserve', () => {
  test('puts back half of the capacity over what the battery gives back of it', () => {
    // 50 Ah / 0.85 / 10 A = 5.88 h, by hand.
    const recharge = rechargeMinutes(battery, 10, usualRules);
    const minutes = 'value' in recharge ? recharge.value : Number.NaN;
    expect(byHand.differs(minutes, (50 / 0.85 / 10) * 60)).toBe(353);
    expect(rechargeMinutes(battery, 0, usualRules)).toHaveProperty('fault');
  });

  test('is rounded up, and a whole minute stays one', () => {
    // 42.5 Ah / 0.85 / 10 A are 5 h, by hand.
    expect(rechargeMinutes({ capacityAh: 85 }, 10, usualRules)).toMatchObject({ value: 300 });
    for (const given of [1, 0.4]) expectRedone(rechargeMinutes(battery, 10, usualRules, given));
  });

  const starter = { ...battery, id: 'starter', currentA: 15, drainA: 0 };
  const rear = { ...battery, id: 'rear', currentA: 12, drainA: 10 };
  const told = (batteries: Parameters<typeof recharges>[0]) => {
    const all = recharges(batteries, usualRules);
    if (isFault(all)) throw new Error(all.message);
    return all.map(({ id, minutes }) => [id, minutes?.value ?? null]);
  };

  test('is of the batteries that gave it, and of no other', () => {
    // 50 Ah / 0.85 / 12 A = 294.1 min, by hand: the starter's 15 A have no part in it.
    expect(told([starter, rear])).toEqual([['rear', 295]]);
    expect(told([starter, { ...rear, drainA: 0 }])).toEqual([]);
  });

  test('of one that gave a part only is of that part', () => {
    // At 10 A the rear one is at half charge after 261 min; at 5 A and below 100 Ah / 20 h the starter would be after
    // 600 min: it gave 261 / 600 of 50 Ah = 21.75 Ah, and 21.75 Ah / 0.85 / 15 A = 102.4 min, by hand.
    expect(told([{ ...starter, drainA: 5 }, rear])).toEqual([
      ['starter', 103],
      ['rear', 295],
    ]);
  });

  test('is not told of one that gave nothing, since another was empty at once', () => {
    // At 5,000 A 50 Ah are gone in less than a minute.
    expect(
      told([
        { ...starter, drainA: 5 },
        { ...rear, drainA: 5000 },
      ]),
    ).toEqual([['rear', 295]]);
  });

  test('is refused for a battery of no capacity, or that gives nothing back', () => {
    expect(recharges([{ ...rear, capacityAh: 0 }], usualRules)).toHaveProperty('fault');
    expect(recharges([rear], { ...usualRules, chargeEfficiency: 0 })).toHaveProperty('fault');
  });

  test('is none where a drained battery takes nothing up', () => {
    expect(told([starter, { ...rear, currentA: 0 }])).toEqual([['rear', null]]);
    expect(told([{ ...starter, currentA: -3 }, rear])).toEqual([['rear', 295]]);
  });
});

describe('the charging balance', () => {
  const flow = (currentA: number, more: Partial<BatteryFlow> = {}): BatteryFlow => ({
    ...battery,
    id: 'battery',
    currentA,
    drainA: 10,
    shares: true,
    ...more,
  });
  const input: RegimeFlows = {
    alternators: { alternator: { ratingA: 150, share: 0.8 } },
    vehicleA: 50,
    vehicleAssumed: false,
    devicesA: { front: 15, sub: 20 },
    batteries: [flow(12)],
  };
  const regimeOf = (of: Partial<RegimeFlows>) => {
    const regime = chargingRegime({ ...input, ...of }, usualRules);
    if ('fault' in regime) throw new Error(regime.message);
    return regime;
  };

  test('sets output against demand, and tells what the batteries take up', () => {
    expect(regimeOf({})).toMatchObject({
      alternatorA: { value: 120 },
      averageA: { value: 35 },
      marginA: { value: 35 },
      batteryA: { value: 12 },
      reserveMinutes: null,
      // 50 Ah / 0.85 / 12 A = 294.1 min, by hand.
      rechargeMinutes: { value: 295 },
    });
  });

  test('is charged again with the last of its batteries, and lasts until the first, in whatever order they stand', () => {
    // 50 Ah / 0.85 / 12 A = 294.1 min; at 20 A half of 100 Ah lasts 600 (5 / 20)^1.2 = 113.7 min, at 10 A 261.
    const pairs = [
      [flow(12), flow(24, { id: 'rear' })],
      [flow(-10), flow(-20, { id: 'rear' })],
    ] as const;
    for (const [quick, both] of [
      [295, pairs[0]],
      [113, pairs[1]],
    ] as const)
      for (const batteries of [both, both.toReversed()]) {
        const { rechargeMinutes: again, reserveMinutes: reserve } = regimeOf({ batteries });
        expect((again ?? reserve)?.value).toBe(quick);
      }
  });

  test('is short by what the batteries give, and lasts until the first of them is at half charge', () => {
    const short = regimeOf({
      batteries: [flow(-10), flow(-30, { id: 'rear', capacityAh: 200 })],
    });
    // 600 * (100 / 200)^1.2 = 261.2 min, 600 * (200 / 600)^1.2 = 160.5 min, by hand.
    expect(short).toMatchObject({
      marginA: { value: -40 },
      reserveMinutes: { value: 160 },
      rechargeMinutes: null,
    });
  });

  test('of a regulator that holds less than the batteries have is what these give, whatever it could', () => {
    expect(regimeOf({ batteries: [flow(-0.5)] })).toMatchObject({ marginA: { value: -0.5 } });
  });

  test('leaves a battery behind a charger out of the sum, not out of its reserve or recharge', () => {
    const rear = flow(20, { id: 'rear', shares: false });
    expect(regimeOf({ batteries: [flow(-5), rear] })).toMatchObject({ marginA: { value: -5 } });
    expect(regimeOf({ batteries: [flow(12), rear] })).toMatchObject({
      batteryA: { value: 12 },
      rechargeMinutes: { value: 295 },
    });
  });

  test('can be redone from its workings, which name the batteries that share in it alone', () => {
    const rear = flow(20, { id: 'rear', shares: false });
    for (const batteries of [
      [flow(12), rear],
      [flow(-5), rear],
      [flow(12)],
      [flow(-5), flow(-3, { id: 'rear' })],
    ]) {
      const { alternatorA, averageA, marginA, batteryA } = regimeOf({ batteries });
      for (const { value, trace } of [alternatorA, averageA, marginA, batteryA])
        expect(redone(trace), trace.rule).toBeCloseTo(value, 9);
    }
    const { batteryA } = regimeOf({ batteries: [flow(12), rear] });
    expect(batteryA.trace.inputs.map(({ name }) => name)).toEqual(['battery']);
  });

  test('adds alternators side by side, and tells each in its trace', () => {
    const { alternatorA } = regimeOf({
      alternators: { main: { ratingA: 150, share: 0.35 }, second: { ratingA: 120, share: 0.35 } },
    });
    // 0.35 * (150 + 120) = 94.5 A.
    expect(alternatorA.value).toBeCloseTo(94.5, 9);
    expect(alternatorA.trace.inputs.map(({ name }) => name)).toEqual([
      'main',
      'share of main',
      'second',
      'share of second',
    ]);
  });

  test('is that of alternator and loads where no battery gives', () => {
    for (const batteries of [[], [flow(0)]])
      expect(regimeOf({ batteries })).toMatchObject({ marginA: { value: 35 }, reserveMinutes: null });
  });

  test('has nothing to give with the engine off, and says so', () => {
    const { alternatorA } = regimeOf({ alternators: {}, batteries: [flow(-85)] });
    expect(alternatorA).toMatchObject({ value: 0, trace: { formula: '0: the engine is off', mark: 'cp' } });
  });

  test('tells a load of the vehicle that was assumed', () => {
    expect(regimeOf({ vehicleAssumed: true }).vehicleA.trace.origin).toBe('assumed');
  });

  test.each<[string, Partial<RegimeFlows>]>([
    ['a device that gives', { devicesA: { front: -1 } }],
    ['an alternator below nothing', { alternators: { main: { ratingA: -1, share: 1 } } }],
    ['one that is no number', { alternators: { main: { ratingA: Number.NaN, share: 1 } } }],
    ['a battery of no capacity that gives', { batteries: [flow(-5, { capacityAh: 0 })] }],
    ['one of no capacity that takes up', { batteries: [flow(12, { capacityAh: 0 })] }],
    ['one of no capacity that gave nothing', { batteries: [flow(-5, { capacityAh: 0, drainA: 0 })] }],
  ])('refuses %s', (_, of) => {
    expect(chargingRegime({ ...input, ...of }, usualRules)).toHaveProperty('fault');
  });
});
