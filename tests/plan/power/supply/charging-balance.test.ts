import { describe, expect, test } from 'vitest';
import type { PlanPower } from '../../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planCharging } from '../../../../lib/plan/power/charging.ts';
import type { Written } from '../../../rules/content.ts';
import { charged, isolated } from '../two-batteries.ts';
import { supply, value } from './written-supply.ts';

describe('the charging balance', () => {
  type Element = PlanPower['points'][number]['elements'][number];
  const load = (of: string, from: string, currentA: number): Element => ({
    ...{
      id: `${of}:load`,
      of,
      kind: 'load',
      model: 'power',
      from,
      to: 'body',
      powerW: 100,
      dropV: 13,
      heatW: 0,
    },
    currentA,
  });
  const store = (of: string, currentA: number): Element => ({
    ...{
      id: `${of}:emf`,
      of,
      kind: 'source',
      model: 'two-slope',
      from: `${of}.POS`,
      to: `${of}.NEG`,
      emfV: 12.6,
    },
    ...{ ohm: 0.01, dropV: 13, heatW: 0, currentA },
  });
  const balance = (change: (content: Written) => void, more: readonly Element[] = []) => {
    const { job, circuit, paths } = supply((content) => {
      content.vehicle['vehicle-load'] = '45 A';
      change(content);
    });
    const elements = [
      load('vehicle', 'battery.POS', 45),
      load('amp', 'amp.B+', 20),
      store('battery', 5),
      ...more,
    ];
    const at = { title: '', state: 'solved' as const, referenceNode: 'battery.NEG', residualA: 0, nodes: [] };
    // With the engine off the batteries give what they take while it runs.
    const off = elements.map((one) => (one.model === 'two-slope' ? { ...one, currentA: -10 } : one));
    const points = (['music', 'cruise', 'engine-off'] as const).map((name) => {
      return { name, ...at, elements: name === 'engine-off' ? off : elements };
    });
    const book = new PlanBook();
    const charging = planCharging(job, { circuit, islands: paths.islands }, points, book);
    return { charging, told: book.remarks().map(({ remark, path, file }) => ({ ...remark, path, file })) };
  };
  const of = (found: ReturnType<typeof balance>, name: string) =>
    found.charging.find((one) => one.name === name);

  test('counts what the vehicle and what the job draws, against the share that the alternator gives', () => {
    const found = balance(() => {});
    // 150 A: the usual shares of idle and cruise, common practice, no source.
    expect(of(found, 'idle')?.alternatorA).toBeCloseTo(150 * value('alternator-idle-share'), 9);
    expect(of(found, 'cruise')?.alternatorA).toBeCloseTo(150 * value('alternator-cruise-share'), 9);
    for (const { vehicleA, averageA } of found.charging) expect([vehicleA, averageA]).toEqual([45, 20]);
    expect(of(found, 'engine-off')).toMatchObject({ alternatorA: 0 });
    expect(of(found, 'engine-off')).not.toHaveProperty('recharges');
    expect(of(found, 'idle')).not.toHaveProperty('chargers');
    expect(of(found, 'idle')?.recharges?.map(({ battery, through }) => [battery, through])).toEqual([
      ['battery', []],
    ]);
    expect(found.told).toEqual([]);
  });

  test('counts a charger with the engine running, what hangs behind it with the engine off', () => {
    const behind = [load('charger', 'charger.IN+', 12), load('dsp', 'dsp.B+', 3), store('second', 2)];
    const found = balance(charged, behind);
    expect(of(found, 'cruise')?.averageA).toBeCloseTo(12, 9);
    expect(of(found, 'engine-off')?.averageA).toBeCloseTo(20 + 12 + 3, 9);
    const [charger, ...more] = of(found, 'cruise')?.chargers ?? [];
    expect(more).toEqual([]);
    expect(charger).toMatchObject({ item: 'charger', currentA: 12 });
    expect(charger?.flatA).toBeGreaterThan(0);
    const second = of(found, 'cruise')?.recharges?.find(({ battery }) => battery === 'second');
    expect(second?.through).toEqual(['charger']);
  });

  test('tells the relay that a battery is charged through', () => {
    const found = balance(isolated, [store('second', 2)]);
    const through = of(found, 'idle')?.recharges?.map(({ battery, through: by }) => [battery, by]);
    expect(through).toEqual([
      ['second', ['isolator']],
      ['battery', []],
    ]);
  });

  test('can not be made without an alternator, which is told of the vehicle', () => {
    const found = balance(({ vehicle }) => {
      delete vehicle.fitted.alternator;
      const { charge: _charge, block: _block, ...links } = vehicle.links ?? {};
      vehicle.links = links;
    });
    expect(found.charging).toEqual([]);
    expect(found.told).toEqual([
      expect.objectContaining({ rule: 'charging-unknown', of: ['wagon'], path: '/fitted', file: 'vehicle' }),
    ]);
  });
});
