import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../../rules/case.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { inParts, inVehicle } from '../shop-changes.ts';

const inRegime = { idle: 'music', cruise: 'cruise', 'engine-off': 'engine-off' } as const;

/** The small shop's plan with another alternator, load of the vehicle and set-point. */
function systemOf(ratingA: number, vehicleA: number, setV: number) {
  return smallPlan(
    inParts('rating: 150 A', `rating: ${ratingA} A\n    set-point: ${setV} V`),
    inVehicle('fitted:', `vehicle-load: ${vehicleA} A\nfitted:`),
  ).plan;
}

const system = fc.tuple(
  fc.integer({ min: 20, max: 300 }),
  fc.integer({ min: 1, max: 90 }),
  // Above 12.6 V, where batteries charge, and below, where a regulator leaves them to give.
  fc.integer({ min: 120, max: 150 }).map((tenths) => tenths / 10),
);

describe('charging table and operating points', () => {
  test('agree on what the batteries do, in any system', () => {
    fc.assert(
      fc.property(system, ([ratingA, vehicleA, setV]) => {
        const { charging, points } = systemOf(ratingA, vehicleA, setV).power;
        for (const { name, marginA, batteryA } of charging) {
          const at = Object.entries(inRegime).find(([regime]) => regime === name)?.[1];
          const { elements } = byPoint(points, at);
          const flows = elements.filter(({ model }) => model === 'two-slope');
          const takenA = flows.reduce((sum, { currentA = Number.NaN }) => sum + currentA, 0);
          expect(batteryA).toBeCloseTo(takenA, 9);
          if (Math.abs(takenA) > 1e-5) expect(Math.sign(marginA), name).toBe(Math.sign(takenA));
          // No battery below its own voltage is told to charge, none above it to give.
          for (const { currentA = 0, dropV = 0, emfV = 0 } of flows)
            if (Math.abs(currentA) > 1e-5) expect(Math.sign(currentA)).toBe(Math.sign(dropV - emfV));
        }
      }),
      { numRuns: 40 },
    );
  });

  test('a margin of a few amperes prints no battery that gives', () => {
    const { charging, points } = systemOf(180, 45, 14.4).power;
    const idle = charging.find(({ name }) => name === 'idle');
    const battery = byPoint(points, 'music').elements.find(({ model }) => model === 'two-slope');
    expect(idle?.marginA).toBeGreaterThan(0);
    expect(battery?.currentA).toBeGreaterThan(0);
    expect(battery?.dropV).toBeGreaterThan(12.6);
  });
});

describe('the set-point', () => {
  const heldV = (...changes: readonly Change[]) =>
    byPoint(smallPlan(...changes).plan.power.points, 'idle').elements.find(
      ({ kind, of }) => kind === 'source' && of === 'alternator',
    )?.emfV;
  const part = (text: string) => inParts('rating: 150 A', `rating: 150 A\n    ${text}`);
  const measured = inVehicle('fitted:', 'charging-voltage: 14.1 V\nfitted:');

  test('is the measured one, else that of the part, else the house rule', () => {
    expect(heldV()).toBe(13.8);
    expect(heldV(part('set-point: 14.4 V'))).toBe(14.4);
    expect(heldV(part('set-point: 14.4 V'), measured)).toBe(14.1);
  });

  test('that varies is the low one, whatever was measured', () => {
    expect(heldV(part('variable-voltage: true'), measured)).toBe(12.5);
  });

  test('that was read as a range is its low end, and ends at its high one', () => {
    const range = inVehicle('fitted:', 'charging-range: 13.2 V to 14.6 V\nfitted:');
    expect(heldV(range)).toBe(13.2);
    const { measurements } = smallPlan(range).plan;
    const charging = byId(measurements, 'battery-charging');
    expect([charging.least, charging.greatest]).toEqual([13.2, 14.6]);
  });

  test('below the voltage for sizing lowers that too', () => {
    const { points } = smallPlan(inVehicle('fitted:', 'charging-voltage: 13.2 V\nfitted:')).plan.power;
    const amp = byPoint(points, 'rated-power').elements.find(({ id }) => id === 'amp:load');
    const usual = byPoint(smallPlan().plan.power.points, 'rated-power').elements.find(
      ({ id }) => id === 'amp:load',
    );
    // Constant power: the same whatever voltage its current was reckoned at.
    expect(amp?.powerW).toBeCloseTo(usual?.powerW ?? 0, 6);
  });
});

describe('the record', () => {
  const { plan } = smallPlan();
  const supply = plan.measurements.filter(({ id }) => /[.](voltage|feed-drop|ground-drop)[.]/.test(id));

  test('asks only for states that can be held beside a meter, and tells how', () => {
    const asked = new Set(supply.map(({ id }) => id.split('.').at(-1)));
    expect([...asked].toSorted()).toEqual(['engine-off', 'idle', 'music', 'rest']);
    for (const { what } of supply) expect(what).toMatch(/engine (off|idling)/);
    for (const { id, what } of supply)
      if (/[.](music|engine-off)$/.test(id)) expect(what).toMatch(/[\d.]+ A in its feed/);
  });

  test('has limits that hold the prediction and the points at both ends', () => {
    for (const { id, predicted, least, greatest } of supply) {
      expect(least ?? 0, id).toBeLessThanOrEqual(predicted ?? Number.NaN);
      expect(greatest ?? 0, id).toBeGreaterThanOrEqual(predicted ?? Number.NaN);
    }
    const idle = byId(plan.measurements, 'amp.voltage.idle');
    // From what a hot regulator holds to what rated power is stated at: 13.8 V to 14.4 V less drops.
    expect((idle.greatest ?? 0) - (idle.least ?? 0)).toBeGreaterThan(0.4);
  });

  test('of a measured set-point is narrower', () => {
    const width = ({ measurements }: typeof plan) => {
      const { least, greatest } = byId(measurements, 'amp.voltage.idle');
      return (greatest ?? 0) - (least ?? 0);
    };
    const measured = smallPlan(inVehicle('fitted:', 'charging-voltage: 14.1 V\nfitted:')).plan;
    expect(width(measured)).toBeLessThan(width(plan));
  });
});

test('a fuse is held against the greatest current through it at the points that last', () => {
  const { points, fuses } = smallPlan().plan.power;
  for (const { id, continuousA, continuousAt } of fuses) {
    const flows = points
      .filter(({ name }) => name !== 'full-rating')
      .map(({ name, elements }) => ({
        name,
        currentA: Math.abs(elements.find(({ of, kind }) => of === id && kind === 'fuse')?.currentA ?? 0),
      }));
    expect(continuousA, id).toBe(Math.max(...flows.map(({ currentA }) => currentA)));
    expect(flows.find(({ name }) => name === continuousAt)?.currentA, id).toBe(continuousA);
  }
});

function byPoint<T extends { readonly name: string }>(points: readonly T[], name: string | undefined): T {
  const point = points.find((one) => one.name === name);
  if (!point) throw new Error(`no point ${name}`);
  return point;
}
