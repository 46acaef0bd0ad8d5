import { describe, expect, test } from 'vitest';
import type { PlanPower } from '../../../../lib/model/plan/index.ts';
import { planCranking } from '../../../../lib/plan/power/cranking.ts';
import { one, partIn } from '../../../rules/case.ts';
import { settledPower } from '../settled-power.ts';
import { banked, charged, isolated } from '../two-batteries.ts';
import { type Change, none, planned, point } from './planned-supply.ts';

describe('the charging balance', () => {
  const regime = (power: PlanPower, name: string) => one(power.charging, (each) => each.name === name);

  // House rules, common practice: hot, an alternator of 150 A gives 40 % at idle and 85 % cruising; 45 A as measured.
  test('sets what the alternator gives against what vehicle and devices draw, in each regime', () => {
    const { power, traces } = planned();
    expect(power.charging.map(({ name }) => name)).toEqual(['idle', 'cruise', 'engine-off']);
    const [idle, cruise, off] = ['idle', 'cruise', 'engine-off'].map((name) => regime(power, name));
    expect(idle?.alternatorA).toBeLessThan(cruise?.alternatorA ?? 0);
    expect(cruise?.alternatorA).toBeLessThanOrEqual(0.9 * 150);
    expect(off?.alternatorA).toBe(0);
    expect(idle?.vehicleA).toBeCloseTo(45, 6);
    expect(off?.vehicleA).toBe(0);
    for (const { name, averageA, marginA, alternatorA, vehicleA, batteryA } of power.charging) {
      const at = { idle: 'music', cruise: 'cruise', 'engine-off': 'engine-off' }[name];
      const drawn = ['amp', 'dsp', 'radio'].map(
        (of) => one(point(power, at).elements, (one) => one.kind === 'load' && one.of === of).currentA ?? 0,
      );
      expect(averageA, name).toBeCloseTo(
        drawn.reduce((sum, currentA) => sum + currentA, 0),
        6,
      );
      if ((batteryA ?? 0) >= 0) expect(marginA, name).toBeCloseTo(alternatorA - vehicleA - averageA, 6);
      expect(traces[`power.charging.${name}.averageA`]?.inputs.map((input) => input.name)).toEqual([
        'amp',
        'dsp',
        'radio',
      ]);
    }
    expect(off?.reserveMinutes).toBeGreaterThan(0);
    expect(off).not.toHaveProperty('recharges');
    expect(idle).not.toHaveProperty('chargers');
  });

  test('tells what each battery is charged through: an isolating relay, a charger, or conductors alone', () => {
    const through = (change: Change, battery: string) =>
      one(regime(planned(change).power, 'cruise').recharges ?? [], (each) => each.battery === battery)
        .through;
    expect(through(none, 'battery')).toEqual([]);
    expect(through(isolated, 'second')).toEqual(['isolator']);
    const { power } = planned(charged);
    expect(one(regime(power, 'cruise').recharges ?? [], (each) => each.battery === 'second').through).toEqual(
      ['charger'],
    );
    const [own] = regime(power, 'cruise').chargers ?? [];
    expect(own?.item).toBe('charger');
    expect(own?.currentA).toBeGreaterThan(0);
    // 30 A at 14.4 V over 85 % are 508 W: at 13.8 V or so 37 A.
    expect(own?.flatA).toBeGreaterThan(30);
    expect(own?.flatA).toBeLessThan(45);
  });

  test('cannot be made without an alternator, which is told at the vehicle', () => {
    const { power, placed } = planned(({ vehicle }) => {
      delete vehicle.fitted.alternator;
      for (const id of ['charge', 'block']) delete vehicle.links?.[id];
    });
    expect(power.charging).toEqual([]);
    const told = placed.filter(({ remark }) => remark.rule === 'charging-unknown');
    expect(told.map(({ path, file, remark }) => [path, file, remark.of])).toEqual([
      ['/fitted', 'vehicle', ['wagon']],
    ]);
  });
});

describe('cranking', () => {
  // Two batteries of 4 mohm and one voltage share the starter's current by their resistances (Kirchhoff): what helps stands
  // behind its leads too, so that it gives less than half.
  test('is shared by a second battery over its fuses and its contact, and by none where the relay opens', () => {
    const shared = planCranking(settledPower(isolated));
    expect(shared).toMatchObject({ currentA: 400, seconds: 4, measured: true });
    const shares = shared?.shares ?? [];
    expect(shares.map(({ id }) => id).toSorted()).toEqual(['isolator.A>B', 'main-fuse', 'second-fuse']);
    const [first] = shares;
    for (const { currentA } of shares) {
      expect(currentA).toBe(first?.currentA);
      expect(currentA).toBeGreaterThan(20);
      expect(currentA).toBeLessThan(200);
    }
    const opens = settledPower((content) => {
      isolated(content);
      partIn(content, 'isolator', 'isolating-relay')['opens-while-cranking'] = true;
    });
    expect(planCranking(opens)).toBeNull();
    expect(planCranking(settledPower(none))).toBeNull();
  });

  test('counts by the house rules where nobody measured', () => {
    const usual = planCranking(
      settledPower((content) => {
        isolated(content);
        delete content.vehicle.cranking;
      }),
    );
    expect(usual?.measured).toBe(false);
    expect(usual?.currentA).toBe(settledPower(none).job.rules['cranking-current'].value);
  });
});

describe('readings at sources', () => {
  test('of a contact are its current and its drop while closed, and its volts while open, each in its band', () => {
    const { power, traces } = planned(isolated);
    const readings = power.sourceReadings ?? [];
    expect(readings.map(({ what, point: at }) => `${what} ${at}`).toSorted()).toEqual([
      'contact-current music',
      'contact-drop music',
      'contact-open engine-off',
      'contact-open-current engine-off',
    ]);
    for (const { item, what, value, band } of readings) {
      expect(item).toBe('isolator');
      if (value === null) continue;
      expect(traces[`power.sourceReadings.isolator.${what}`]?.value).toBe(value);
      expect(band?.from).toBeLessThanOrEqual(value);
      expect(band?.to).toBeGreaterThanOrEqual(value);
    }
    const current = one(readings, ({ what }) => what === 'contact-current');
    expect(current.value).toBeGreaterThan(0);
    expect(one(readings, ({ what }) => what === 'contact-open-current').value).toBe(0);
    expect(planned().power).not.toHaveProperty('sourceReadings');
    expect(planned(banked).power.sourceReadings?.some(({ item }) => item === 'bank')).toBe(true);
  });
});
