import { describe, expect, test } from 'vitest';
import type { BuildPlan, ConductorLimit } from '../../../lib/model/plan/index.ts';
import { rules } from '../../../lib/rules/index.ts';
import { aboutPlan } from '../case.ts';
import { conductor, fuse } from '../changes.ts';

function found(rule: string, change: (plan: BuildPlan) => void) {
  const verdicts = rules.find(({ id }) => id === rule)?.judge(aboutPlan(change));
  if (!verdicts) throw new Error(`There is no rule ${rule}.`);
  return verdicts;
}

const limit = (
  zone: string | undefined,
  limitA: number,
  more: Partial<ConductorLimit> = {},
): ConductorLimit => ({
  what: 'its ampacity',
  value: 60,
  limit: limitA,
  unit: 'A',
  level: 'stop',
  citation: 'the table',
  ...(zone !== undefined && { zone }),
  ...more,
});

/** 60 A of fuse over 50 A of conductor, with its limits along the way. */
const over =
  (...limits: ConductorLimit[]) =>
  (plan: BuildPlan) => {
    fuse(plan, 'block.OUT1').ratingA = 60;
    Object.assign(conductor(plan, 'amp-feed'), { ampacityA: 50, cautionA: 50, limits });
  };

describe('where a conductor carries least', () => {
  test('is the zone of its least limit, in whatever order they stand', () => {
    const [sill, bay] = [limit('sill', 70), limit('bay', 50)];
    for (const limits of [
      [sill, bay],
      [bay, sill],
    ])
      expect(found('fuse-over-conductor', over(...limits))[0]?.message).toContain(' in its zone bay;');
  });

  test('is told by limits of current alone, of the level at hand, that have a zone', () => {
    const others = [
      limit('cold', 1, { unit: 'C' }),
      limit('warm', 2, { level: 'caution' }),
      limit(undefined, 3),
    ];
    expect(found('fuse-over-conductor', over(...others, limit('bay', 50)))[0]?.message).toContain(
      'zone bay;',
    );
    expect(found('fuse-over-conductor', over(...others))[0]?.message).not.toContain('in its zone');
  });

  test('gives its mark to the finding, and none where the figure is a published one', () => {
    expect(found('fuse-over-conductor', over(limit('bay', 50, { mark: 'mem' })))[0]?.mark).toBe('mem');
    expect(found('fuse-over-conductor', over(limit('bay', 50, { mark: 'cp' })))[0]?.mark).toBe('cp');
    expect(found('fuse-over-conductor', over(limit('bay', 50)))[0]).not.toHaveProperty('mark');
    const need = (plan: BuildPlan) => {
      over(limit('bay', 60, { mark: 'mem' }))(plan);
      Object.assign(conductor(plan, 'amp-feed'), { ampacityA: 60, neededA: 80 });
    };
    expect(found('conductor-under-need', need)[0]?.mark).toBe('mem');
    const warm = (mark?: 'mem') => (plan: BuildPlan) => {
      over(limit('bay', 50, { level: 'caution', ...(mark && { mark }) }))(plan);
      conductor(plan, 'amp-feed').ampacityA = 60;
    };
    expect(found('fuse-over-warm-conductor', warm('mem'))[0]?.mark).toBe('mem');
    expect(found('fuse-over-warm-conductor', warm())[0]?.mark).toBe('cp');
  });

  test('of conductors that are not listed comes from those that the fuse protects alone', () => {
    const unlisted =
      (...protects: string[]) =>
      (plan: BuildPlan) => {
        over(limit('bay', 60, { mark: 'mem' }))(plan);
        Object.assign(conductor(plan, 'amp-feed'), { ampacityA: 60, fuses: [] });
        Object.assign(fuse(plan, 'block.OUT1'), { protects, leastAmpacityA: 59 });
      };
    expect(found('fuse-over-conductor', unlisted('amp-feed'))[0]?.mark).toBe('mem');
    expect(found('fuse-over-conductor', unlisted('elsewhere'))[0]).not.toHaveProperty('mark');
  });

  test('another limit that is passed names its zone and its mark', () => {
    const past = (zone?: string, more: Partial<ConductorLimit> = {}) =>
      found('conductor-past-limit', over(limit(zone, 50, { unit: 'C', ...more })))[0];
    expect(past('bay', { mark: 'mem' })).toMatchObject({ of: ['amp-feed', 'bay'], mark: 'mem' });
    expect(past()?.of).toEqual(['amp-feed']);
    expect(past()).not.toHaveProperty('mark');
  });
});

describe('which fuse a conductor is held against', () => {
  test('is the one that claims it, whatever else it names', () => {
    const claimed = (plan: BuildPlan) => {
      over()(plan);
      fuse(plan, 'block.OUT2').ratingA = 55;
      conductor(plan, 'amp-feed').fuses = ['block.OUT2'];
    };
    const own = found('fuse-over-conductor', claimed).filter(({ of }) => of.includes('amp-feed'));
    expect(own.map(({ of }) => of)).toEqual([['block.OUT1', 'amp-feed']]);
  });

  test('is never one without a rating, while another that it names has one', () => {
    const named = (plan: BuildPlan) => {
      over()(plan);
      for (const one of plan.power.fuses) one.protects = one.protects.filter((id) => id !== 'amp-feed');
      fuse(plan, 'block.OUT2').ratingA = null;
      conductor(plan, 'amp-feed').fuses = ['block.OUT2', 'block.OUT1'];
    };
    expect(found('fuse-over-conductor', named).map(({ of }) => of)).toEqual([['block.OUT1', 'amp-feed']]);
  });
});

test('a fuse that was written is corrected where it is written, a chosen one at its conductor', () => {
  const path = (chosen: 'given' | 'computed') =>
    found('fuse-over-conductor', (plan) => {
      over()(plan);
      fuse(plan, 'block.OUT1').chosen = chosen;
    })[0]?.path;
  expect(path('given')).not.toBe(path('computed'));
  expect(path('given')).toContain('block');
  expect(path('computed')).toContain('amp-feed');
});
