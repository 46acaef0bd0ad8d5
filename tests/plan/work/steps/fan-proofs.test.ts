import { describe, expect, test } from 'vitest';
import { judge } from '../../../../lib/rules/judge.ts';
import { inJob, withBoard } from '../../../read/problem-case.ts';
import { smallShop } from '../../../read/small-shop.ts';
import { planKept } from '../../plan-kept.ts';
import { jobOf, smallPlan } from '../../plan-small-shop.ts';
import { onTheBoard } from '../../power/four-points.ts';
import { addParts, inVehicle } from '../../shop-changes.ts';

const there = (written: string) => inVehicle('    air: 60 L', `    air: 60 L\n    fan: ${written}`);
const part = addParts(
  'fan-a: { kind: fan, title: Fan, size: { width: 82 mm, depth: 32 mm, height: 86 mm }, mass: 120 g, airflow: 60 m3/h, draw: 150 mA, terminals: { "+": { role: turn-on-in, joint: blade-tab }, "-": { role: supply-negative, joint: blade-tab } } }',
);
const fitted = inJob(
  '  sub: { part: woofer-a',
  '  blower: { part: fan-a, in: boot }\n  sub: { part: woofer-a',
);
const linked = inJob(
  'feed: { from: main-fuse.OUT, to: amp.B+ }',
  'feed: { from: main-fuse.OUT, to: amp.B+ }\n  blower-ground: { from: blower.-, to: body.cargo, length: 1 ft }\n  blower-on: { from: radio.REM, to: blower.+, length: 12 ft }',
);

describe('a fan that a job fits', () => {
  const job = jobOf(smallShop(withBoard(), ...onTheBoard, part, fitted, linked));
  const { plan } = planKept(job);

  test('is mounted with the battery off, and proved to blow before the hand-over', () => {
    const mount = plan.steps.find(({ installs }) => installs.includes('blower'));
    expect(mount?.after).toEqual(['battery-off', 'trim-off-cargo']);
    const proof = plan.steps.find(({ id }) => id === 'fan-blows-blower');
    expect(proof?.text).toMatch(/prove that blower blows the right way through well/);
    expect(plan.steps.find(({ id }) => id === 'hand-over')?.after).toContain('fan-blows-blower');
    expect(plan.steps.find(({ id }) => id === 'trim-on')?.after).toEqual(['fan-blows-blower']);
  });

  test('is fetched, and its current read with the first power', () => {
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'fan-a', quantity: 1 }));
    // Common practice, no source: one that stands still draws nothing, one that is blocked much more.
    expect(plan.measurements.find(({ id }) => id === 'blower.current')).toMatchObject({
      ...{ predicted: 0.15, when: 'power', unit: 'A' },
      least: 0.075,
      greatest: expect.closeTo(0.225, 12),
    });
  });

  test('counts with half of what its maker states, by the house rule', () => {
    expect((plan.heat[0]?.fanM3S ?? 0) * 3600).toBeCloseTo(30, 9);
    expect(plan.heat[0]?.items.find(({ item }) => item === 'blower')?.lossW).toBeCloseTo(0.15 * 14.4, 9);
  });

  test('is summed with what else its turn-on lead drives', () => {
    const sum = plan.power.turnOn?.find(({ source }) => source === 'radio.REM');
    expect(sum?.loads).toContainEqual({ item: 'blower', currentA: 0.15 });
  });

  test('goes before what the file of the vehicle wishes for, and beside what the vehicle has', () => {
    const air = (written: string) =>
      (smallPlan(withBoard(), ...onTheBoard, part, fitted, linked, there(written)).plan.heat[0]?.fanM3S ??
        0) * 3600;
    expect(air('45 m3/h')).toBeCloseTo(30, 9);
    expect(air('{ air: 45 m3/h, there: true }')).toBeCloseTo(75, 9);
  });
});

describe('a fan of the vehicle', () => {
  test('that is there asks for no work', () => {
    const { plan } = smallPlan(withBoard(), ...onTheBoard, there('{ air: 20 m3/h, there: true }'));
    expect(plan.steps.filter(({ id }) => id.includes('fan'))).toEqual([]);
    expect((plan.heat[0]?.fanM3S ?? 0) * 3600).toBeCloseTo(20, 9);
  });

  test('that nothing says to be there stops the job', () => {
    const job = jobOf(smallShop(withBoard(), ...onTheBoard, there('20 m3/h')));
    const { plan, remarks } = planKept(job);
    const found = judge(job, plan, remarks).filter(({ rule }) => rule === 'fan-not-fitted');
    expect(found.map(({ level }) => level)).toEqual(['stop']);
  });
});
