import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chargingRegimes, keyOffDraw, type Reserve, reserveMinutes } from '../../lib/power/charging.ts';

const battery: Reserve = { capacityAh: 100, chemistry: 'flooded' };

describe('reserve with the engine off', () => {
  test('follows Peukert to half charge', () => {
    // The textbook example of Peukert's law: 100 Ah over 20 h, k = 1.2, at 10 A lasts 8.7 h; half of it 261 min.
    expect(reserveMinutes(battery, 10)).toMatchObject({ value: 261 });
  });

  test('at the rated current is half the rated hours, and a lower current gains nothing on the capacity', () => {
    expect(reserveMinutes(battery, 5)).toMatchObject({ value: 600 });
    expect(reserveMinutes(battery, 2.5)).toMatchObject({ value: 1200 });
  });

  test('tells bad input', () => {
    expect(reserveMinutes(battery, 0)).toHaveProperty('fault');
    expect(reserveMinutes({ ...battery, capacityAh: -1 }, 5)).toHaveProperty('fault');
  });

  test('never lasts longer at a higher current', () => {
    const ampere = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(ampere, ampere, (a, b) => {
        const [low, high] = [
          reserveMinutes(battery, Math.min(a, b)),
          reserveMinutes(battery, Math.max(a, b)),
        ];
        expect('value' in low && 'value' in high && high.value <= low.value).toBe(true);
      }),
    );
  });
});

describe('the charging balance', () => {
  const regimesOf = (of: Parameters<typeof chargingRegimes>[0]) => {
    const regimes = chargingRegimes(of);
    if ('fault' in regimes) throw new Error(regimes.fault);
    return regimes;
  };
  const input = {
    alternatorsA: { alternator: 150 },
    vehicleA: 50,
    vehicleOffA: 5,
    averageA: 35,
    batteries: [battery],
  };

  test('sets output against demand by regime', () => {
    // 150 A: 52.5 A hot idle, 120 A hot cruise; demand 85 A, with the engine off 40 A.
    const regimes = chargingRegimes(input);
    expect(regimes).toMatchObject([
      { name: 'idle', alternatorA: { value: 52.5 }, marginA: { value: -32.5 }, verdict: 'over' },
      {
        name: 'cruise',
        alternatorA: { value: 120 },
        marginA: { value: 35 },
        reserveMinutes: null,
        verdict: 'enough',
      },
      { name: 'engine-off', marginA: { value: -40 }, verdict: 'enough' },
    ]);
    // 60 * 20 * (100 / 800)^1.2 / 2 = 49.5 min.
    expect(regimes).toMatchObject([{}, {}, { reserveMinutes: { value: 49 } }]);
  });

  test('adds alternators side by side, and tells each in its trace', () => {
    const [idle] = regimesOf({ ...input, alternatorsA: { main: 150, second: 120 } });
    // 0.35 * (150 + 120) = 94.5 A.
    expect(idle?.alternatorA.value).toBeCloseTo(94.5, 9);
    expect(idle?.alternatorA.trace).toMatchObject({
      formula: 'Ia = (main + second) * s',
      inputs: [{ name: 'main', value: 150 }, { name: 'second', value: 120 }, { name: 's' }],
    });
  });

  test.each([
    ['no alternator', {}],
    ['one below nothing', { main: 150, second: -1 }],
    ['one that is no number', { main: Number.NaN }],
  ])('refuses %s', (_, alternatorsA) => {
    expect(chargingRegimes({ ...input, alternatorsA })).toHaveProperty('fault');
  });

  test('asks for an upgrade above 80 % of the output', () => {
    expect(chargingRegimes({ ...input, averageA: 47 })).toMatchObject([{}, { verdict: 'upgrade' }, {}]);
    expect(chargingRegimes({ ...input, averageA: 71 })).toMatchObject([{}, { verdict: 'over' }, {}]);
  });

  test('assumes the high end of a vehicle load that was not measured', () => {
    const { vehicleA: _, ...unmeasured } = input;
    expect(chargingRegimes(unmeasured)).toMatchObject([
      { vehicleA: { value: 60, trace: { origin: 'assumed' } } },
      {},
      {},
    ]);
  });

  test('lets equal batteries side by side last as one of both', () => {
    const twice = chargingRegimes({ ...input, batteries: [battery, battery] });
    const large = chargingRegimes({ ...input, batteries: [{ ...battery, capacityAh: 200 }] });
    expect(twice).toMatchObject([{}, {}, { reserveMinutes: { value: 113 } }]); // 600 * (200 / 800)^1.2 = 113.7
    expect(large).toMatchObject([{}, {}, { reserveMinutes: { value: 113 } }]);
  });

  test('tells bad input', () => {
    expect(chargingRegimes({ ...input, averageA: -1 })).toHaveProperty('fault');
    expect(chargingRegimes({ ...input, batteries: [{ ...battery, capacityAh: 0 }] })).toHaveProperty('fault');
  });
});

test('the draw with everything off is set against 50 mA', () => {
  expect(keyOffDraw({ vehicle: 0.025, processor: 0.004 })).toMatchObject({ over: false, limitA: 0.05 });
  expect(keyOffDraw({ vehicle: 0.025, processor: 0.026 })).toMatchObject({ over: true });
  expect(keyOffDraw({ vehicle: -1 })).toHaveProperty('fault');
});
