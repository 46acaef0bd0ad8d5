import { describe, expect, test } from 'vitest';
import { inJob } from '../../../read/problem-case.ts';
import { smallShop } from '../../../read/small-shop.ts';
import { planKept } from '../../plan-kept.ts';
import { byId, jobOf } from '../../plan-small-shop.ts';
import { addParts, inParts } from '../../shop-changes.ts';

const parts = [
  addParts(
    'fan-a: { kind: fan, title: Fan, size: { width: 82 mm, depth: 32 mm, height: 86 mm }, mass: 120 g, airflow: 60 m3/h, draw: 300 mA, terminals: { "+": { role: turn-on-in, joint: blade-tab }, "-": { role: supply-negative, joint: blade-tab } } }',
  ),
  inParts(
    '      REM: { role: turn-on-in }\n      IN1',
    '      REM: { role: turn-on-in }\n      OUT: { role: turn-on-out, current: 500 mA }\n      IN1',
  ),
];
const fitted = (from: string) => [
  ...parts,
  inJob('  sub: { part: woofer-a', '  blower: { part: fan-a, in: boot }\n  sub: { part: woofer-a'),
  inJob(
    'feed: { from: main-fuse.OUT, to: amp.B+ }',
    `feed: { from: main-fuse.OUT, to: amp.B+ }\n  blower-ground: { from: blower.-, to: body.cargo, length: 1 ft }\n  blower-on: { from: ${from}, to: blower.+, length: 2 ft }`,
  ),
];
const planned = (from: string) => planKept(jobOf(smallShop(...fitted(from)))).plan;
const loadOf = (plan: ReturnType<typeof planned>) => plan.power.loads.find(({ item }) => item === 'amp');

describe('a fan on a turn-on output of an amplifier', () => {
  const [own, other] = [planned('amp.OUT'), planned('radio.REM')];

  // Kirchhoff's current law: 0.3 A more come in at the amplifier, whatever it plays.
  test('is drawn from what feeds the amplifier, at every point', () => {
    for (const key of ['ratedA', 'musicA', 'idleA'] as const)
      expect(loadOf(own)?.[key]).toBeCloseTo((loadOf(other)?.[key] ?? 0) + 0.3, 9);
    const through = (plan: typeof own) => {
      const { elements } = byId(
        plan.power.points.map((one) => ({ ...one, id: one.name })),
        'idle',
      );
      return elements.find(({ of, kind }) => of === 'feed' && kind === 'conductor')?.currentA ?? 0;
    };
    expect(through(own) - through(other)).toBeGreaterThan(0.28);
  });

  test('leaves what its fuse lets through as it is', () => {
    expect(loadOf(own)?.fuseA).toBe(loadOf(other)?.fuseA);
  });

  test('is summed at that output', () => {
    expect(own.power.turnOn.find(({ source }) => source === 'amp.OUT')).toMatchObject({
      sumA: 0.3,
      within: true,
    });
  });
});
