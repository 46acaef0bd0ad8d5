import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile, vehicleFile, withBoard } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

/** The small shop with its amplifier on a board in the boot. */
function planned(...changes: readonly Change[]) {
  const job = jobOf(
    smallShop(
      withBoard(),
      inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
      ...changes,
    ),
  );
  const { plan, remarks } = planKept(job);
  const [heat] = plan.heat;
  if (!heat) throw new Error('the plan has no heat');
  const found = judge(job, plan, remarks).filter(({ rule }) => rule === 'air-too-warm');
  return { plan, heat, found };
}

const inSpace = (text: string): Change => [
  vehicleFile,
  '    depth: 200 mm',
  `    depth: 200 mm\n    ${text}`,
];

describe('the air of the space of a board', () => {
  const { plan, heat, found } = planned();
  const [item] = heat.items;

  test('is warmed by what its amplifier takes at the solved point of music and does not give as sound', () => {
    const load = plan.power.points
      .find(({ name }) => name === 'music')
      ?.elements.find(({ id }) => id === `${item?.item}:load`);
    expect(item?.inputW).toBeCloseTo((load?.currentA ?? 0) * (load?.dropV ?? 0), 6);
    expect(item?.lossW).toBeCloseTo((item?.inputW ?? 0) - (item?.outputW ?? 0), 9);
    const loads = plan.power.loads.find((one) => one.item === item?.item);
    // Music is one-eighth of rated power, one-third with heavy bass (common practice, no source), never more than is taken.
    expect(item?.outputW).toBeLessThanOrEqual((loads?.powerW ?? 0) / 3 + 1e-9);
    expect(item?.outputW).toBeGreaterThan(0);
    expect(heat.lossW).toBeGreaterThan(0);
  });

  test('is warmed by what its maker measured with music, where he did', () => {
    const amp = 'supply: { type: regulated, fuse: 60 A';
    const measured = planned([partsFile, amp, `${amp}, music-current: 5 A`]).heat.items[0];
    const loads = plan.power.loads.find((one) => one.item === item?.item);
    expect(measured?.outputW).toBeCloseTo((loads?.powerW ?? 0) / 8, 9);
    // 5 A at 14.4 V.
    expect(measured?.inputW).toBeCloseTo(72, 9);
  });

  test('keeps the balance: what its walls pass, 3.5 W by square metre and kelvin, is what is lost', () => {
    expect(heat.riseK * 3.5 * heat.surfaceM2).toBeCloseTo(heat.lossW, 4);
    expect(heat.airC).toBeCloseTo(50 + heat.riseK, 9);
    expect(plan.traces[`heat.${heat.space}.airC`]).toMatchObject({ rule: 'cavity-air', mark: 'mem' });
    expect(plan.traces[`heat.${heat.space}.surfaceM2`]?.rule).toBe('cavity-surface');
  });

  test('is cooler with a fan, with an opening, with more air, or as the walls are told', () => {
    for (const text of [
      'fan: 20 m3/h',
      'openings: [{ width: 200 mm, height: 50 mm }]',
      'air: 4 m3',
      'surface: 6 m2',
    ])
      expect(planned(inSpace(text)).heat.airC, text).toBeLessThan(heat.airC - 0.1);
  });

  test('stops past what the maker allows, and not at a hair below', () => {
    const limit = (atC: number): Change => [
      partsFile,
      '    title: Amplifier\n',
      `    title: Amplifier\n    most-ambient: ${atC} C\n`,
    ];
    const at = Math.ceil(heat.airC * 10) / 10;
    const about = (change: Change) => planned(change).found.map(({ level }) => level);
    expect(about(limit(at - 0.2))).toEqual(['stop']);
    expect(about(limit(at))).toEqual([]);
  });

  test('is a caution past 60 C where the maker is silent', () => {
    expect(found.map(({ level }) => level)).toEqual(heat.airC > 60 ? ['caution'] : []);
    expect(planned(inSpace('surface: 0.05 m2')).found.map(({ level }) => level)).toEqual(['caution']);
    expect(planned(inSpace('surface: 50 m2')).found).toEqual([]);
  });
});
