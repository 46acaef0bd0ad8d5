import { describe, expect, test } from 'vitest';
import { pointer } from '../../../lib/model/place.ts';
import type { BuildPlan, SourceReading } from '../../../lib/model/plan/index.ts';
import { judge } from '../../../lib/rules/judge.ts';
import { byId, jobOf, partIn } from '../../rules/case.ts';
import { type Written, withoutBoard, written } from '../../rules/content.ts';
import { spiceAt } from '../checks/network.ts';
import { planKept } from '../plan-kept.ts';
import { planned } from '../planned.ts';
import { banked, charged, isolated } from './two-batteries.ts';

// Outside reference: ngspice 45, operating points, as carried by the npm package eecircuit-engine.

const stated = (content: Written) => {
  isolated(content);
  partIn(content, 'isolator', 'isolating-relay').resistance = '0.5 mohm';
};

const isOfSources = ({ id }: { readonly id: string }) => /^(isolator\.|charger\.(in|out)put|bank\.)/.test(id);
const linesOf = (plan: BuildPlan) => plan.measurements.filter(isOfSources);
const readingOf = ({ power }: BuildPlan, what: SourceReading['what']) => {
  const found = power.sourceReadings?.find((one) => one.what === what);
  if (!found) throw new Error(`${what} is not read`);
  return found;
};
const pointOf = ({ power }: BuildPlan, name: string) => {
  const found = power.points.find((point) => point.name === name);
  if (!found) throw new Error(`no point ${name}`);
  return found;
};

/** What ngspice shows between the two terminals of a reading. */
async function spiceVolts(plan: BuildPlan, { at, point }: SourceReading): Promise<number> {
  const voltageV = await spiceAt(pointOf(plan, point));
  return Math.abs(voltageV(at[0] ?? '') - voltageV(at[1] ?? ''));
}

describe('what is read at parts that join batteries', () => {
  test('is asked for where the job has such a part, and nowhere else', () => {
    expect(linesOf(planned().plan)).toEqual([]);
    expect(planned().plan.power.sourceReadings).toBeUndefined();
    expect(linesOf(planned(stated).plan).map(({ id }) => id)).toEqual([
      'isolator.contact-current.music',
      'isolator.contact-drop.music',
      'isolator.contact-open.engine-off',
      'isolator.contact-open-current.engine-off',
    ]);
    expect(linesOf(planned(charged).plan).map(({ id }) => id)).toEqual([
      'charger.output-voltage.idle',
      'charger.output-current.idle',
      'charger.input-current.rest',
    ]);
    expect(linesOf(planned(banked).plan).map(({ id }) => id)).toEqual(['bank.charge', 'bank.across-fuse']);
  });

  test.each([
    ['an isolating relay', stated],
    ['a charger', charged],
    ['a capacitor bank', banked],
  ] as const)('is taken once, with %s', (_, content) => {
    const { plan } = planned(content);
    const acts = plan.steps.flatMap(({ acts }) => acts.filter((act) => act.startsWith('measure:')));
    expect(acts.toSorted()).toEqual(plan.measurements.map(({ id }) => `measure:${id}`).toSorted());
    for (const { id, what, predicted, least, greatest } of linesOf(plan)) {
      expect(least !== null || greatest !== null, id).toBe(true);
      expect(what.length, id).toBeGreaterThan(20);
      if (predicted === null) continue;
      expect(predicted, id).toBeGreaterThanOrEqual(least ?? 0);
      expect(predicted, id).toBeLessThanOrEqual(greatest ?? Number.POSITIVE_INFINITY);
    }
  });
});

describe('the contact of an isolating relay', () => {
  const { plan } = planned(stated);

  test('drops while closed, and parts two sides while open, what ngspice says', async () => {
    for (const what of ['contact-drop', 'contact-open'] as const) {
      const reading = readingOf(plan, what);
      expect(reading.value, what).toBeCloseTo(await spiceVolts(plan, reading), 5);
      expect(reading.value, what).toBeGreaterThan(0.001);
    }
  });

  test('carries the drop over its resistance, and nothing while open', () => {
    const dropV = readingOf(plan, 'contact-drop').value ?? Number.NaN;
    expect(readingOf(plan, 'contact-current').value).toBeCloseTo(dropV / 0.0005, 6);
    expect(readingOf(plan, 'contact-open-current').value).toBe(0);
    expect(byId(plan.measurements, 'isolator.contact-open-current.engine-off').greatest).toBe(0.5);
  });

  test('of which nobody states a resistance is held against what one joint may drop', () => {
    const { plan: silent } = planned(isolated);
    expect(byId(silent.measurements, 'isolator.contact-drop.music')).toMatchObject({
      predicted: null,
      least: null,
      greatest: 0.05,
    });
  });

  test('reads more while open than while closed, or its volts are not asked for', () => {
    const open = byId(plan.measurements, 'isolator.contact-open.engine-off');
    expect(open).toMatchObject({ least: 0.05, greatest: null });
    expect(readingOf(plan, 'contact-open').band?.from).toBeGreaterThan(0.07);
    // A second battery that hardly gives: both sides stand alike, and only the current tells.
    const { plan: alike } = planned((content) => {
      stated(content);
      partIn(content, 'agm', 'battery').resistance = '0.1 mohm';
    });
    expect(readingOf(alike, 'contact-open').band?.from).toBeLessThan(0.07);
    const ids = alike.measurements.map(({ id }) => id);
    expect(ids).not.toContain('isolator.contact-open.engine-off');
    expect(ids).toContain('isolator.contact-open-current.engine-off');
  });

  test('that is stuck, loose or never closed is told with where to look', () => {
    const { plan: read } = planned((content) => {
      stated(content);
      content.job['as-built'] = {
        'isolator.contact-drop.music': '0.4 V',
        'isolator.contact-open.engine-off': '0.002 V',
        'isolator.contact-open-current.engine-off': '12 A',
      };
    });
    const told = (id: string) => byId(read.measurements, id);
    expect(told('isolator.contact-drop.music').explanation).toMatch(/not closed.*lug/);
    expect(told('isolator.contact-open.engine-off').explanation).toMatch(/sticks/);
    expect(told('isolator.contact-open-current.engine-off')).toMatchObject({ state: 'differs', asBuilt: 12 });
  });
});

describe('a charger', () => {
  const { plan } = planned(charged);

  test('holds and gives what ngspice says', async () => {
    const volts = readingOf(plan, 'output-voltage');
    expect(volts.value).toBeCloseTo(await spiceVolts(plan, volts), 5);
    expect(volts.value).toBeGreaterThan(12.6);
    expect(volts.value).toBeLessThanOrEqual(14.4);
    // Its output is the one lead to its fuse: what ngspice has over that lead, by the lead's resistances.
    const point = pointOf(plan, 'idle');
    const voltageV = await spiceAt(point);
    const lead = point.elements.filter(({ of }) => of === 'charger-out');
    const ohm = lead.reduce((sum, one) => sum + (one.ohm ?? Number.NaN), 0);
    const currentA = (voltageV('charger.OUT+') - voltageV('second-fuse.OUT')) / ohm;
    expect(readingOf(plan, 'output-current').value).toBeCloseTo(currentA, 3);
  });

  test('takes nothing with the engine off', () => {
    expect(byId(plan.measurements, 'charger.input-current.rest')).toMatchObject({
      predicted: 0,
      greatest: 0.5,
      when: 'power',
    });
  });

  test('that does not regulate, or stays on, is told', () => {
    const { plan: read } = planned((content) => {
      charged(content);
      content.job['as-built'] = {
        'charger.output-voltage.idle': '15.4 V',
        'charger.input-current.rest': '3 A',
      };
    });
    expect(byId(read.measurements, 'charger.output-voltage.idle').explanation).toMatch(/does not regulate/);
    expect(byId(read.measurements, 'charger.input-current.rest').explanation).toMatch(/flattens/);
  });
});

describe('a capacitor bank', () => {
  const { plan } = planned(banked);

  test('is charged to what its feed has while nothing is turned on', async () => {
    const reading = readingOf(plan, 'bank-charge');
    // Nothing flows: the battery's own voltage at rest, less what the radio in the vehicle draws.
    expect(reading.value).toBeGreaterThan(12.55);
    expect(reading.value).toBeLessThanOrEqual(12.6);
    expect(byId(plan.measurements, 'bank.charge')).toMatchObject({ when: 'banks' });
    // ngspice at the same posts, with the devices idling: below it by the drop of their current alone.
    const idling = await spiceVolts(plan, reading);
    expect(reading.value).toBeGreaterThanOrEqual(idling);
    expect((reading.value ?? 0) - idling).toBeLessThan(0.1);
  });

  test('is read before its fuse goes in, at its posts and across the open holder', () => {
    const step = byId(plan.steps, 'charge-bank');
    expect(step.acts).toEqual(['measure:bank.charge', 'measure:bank.across-fuse', 'fit-fuse:bank-fuse']);
    expect(byId(plan.measurements, 'bank.across-fuse')).toMatchObject({ predicted: 0, greatest: 0.5 });
  });

  test('that is not charged yet is told', () => {
    const content = written();
    banked(content);
    withoutBoard(content);
    content.job['as-built'] = { 'bank.charge': '9 V', 'bank.across-fuse': '3.6 V' };
    const job = jobOf(content);
    const { plan: read, remarks } = planKept(job);
    expect(byId(read.measurements, 'bank.across-fuse').explanation).toMatch(/do not fit the fuse/);
    const told = judge(job, read, remarks).filter(({ rule }) => rule === 'as-built-differs');
    expect(told.map(({ where }) => where.path).toSorted()).toEqual([
      pointer(['as-built', 'bank.across-fuse']),
      pointer(['as-built', 'bank.charge']),
    ]);
  });
});
