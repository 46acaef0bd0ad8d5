import { describe, expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { rules } from '../../../lib/rules/index.ts';
import { aboutPlan } from '../case.ts';
import { conductor, fuse } from '../changes.ts';

/** What a rule finds where the plan is changed: level, subjects, value and limit. */
function found(rule: string, change: (plan: BuildPlan) => void) {
  const verdicts = rules.find(({ id }) => id === rule)?.judge(aboutPlan(change));
  if (!verdicts) throw new Error(`There is no rule ${rule}.`);
  return verdicts;
}
const levels = (rule: string, change: (plan: BuildPlan) => void) =>
  found(rule, change).map(({ level }) => level);

describe('a fuse over its conductor', () => {
  const over = (ratingA: number, ampacityA: number) => (plan: BuildPlan) => {
    fuse(plan, 'block.OUT1').ratingA = ratingA;
    conductor(plan, 'amp-feed').ampacityA = ampacityA;
  };

  test('is one a tenth of an ampere above what it carries, and none at it', () => {
    expect(found('fuse-over-conductor', over(60, 60))).toEqual([]);
    expect(found('fuse-over-conductor', over(60, 59.9))).toMatchObject([
      { level: 'stop', of: ['block.OUT1', 'amp-feed'], value: 60, limit: 59.9, unit: 'A' },
    ]);
  });

  // 33 CFR 183.455: 150 % of the ampacity.
  test('is within the yardstick at 150 %, and past it just above', () => {
    expect(found('fuse-over-conductor', over(60, 40))[0]?.message).toContain('within the 150 % yardstick');
    expect(found('fuse-over-conductor', over(60, 39.9))[0]?.message).toContain('past the 150 % yardstick');
  });

  test('is held against the least of the fuses that a conductor names where none claims it', () => {
    const named =
      (...names: string[]) =>
      (plan: BuildPlan) => {
        for (const one of plan.power.fuses) one.protects = one.protects.filter((id) => id !== 'amp-feed');
        fuse(plan, 'main-fuse').ratingA = 80;
        fuse(plan, 'block.OUT1').ratingA = 60;
        Object.assign(conductor(plan, 'amp-feed'), { fuses: names, ampacityA: 59 });
      };
    const subjects = (...names: string[]) =>
      found('fuse-over-conductor', named(...names)).map(({ of }) => of);
    for (const names of [
      ['main-fuse', 'block.OUT1'],
      ['block.OUT1', 'main-fuse'],
    ])
      expect(subjects(...names)).toEqual([['block.OUT1', 'amp-feed']]);
    expect(subjects()).toEqual([]);
  });

  test('without a rating is none', () => {
    const unrated = (plan: BuildPlan) => {
      fuse(plan, 'block.OUT1').ratingA = null;
      conductor(plan, 'amp-feed').ampacityA = 1;
    };
    expect(found('fuse-over-conductor', unrated)).toEqual([]);
  });

  test('is one against the weakest that the plan does not list, told once', () => {
    const weakest = (leastAmpacityA: number) => (plan: BuildPlan) => {
      Object.assign(fuse(plan, 'block.OUT1'), { ratingA: 60, protects: ['elsewhere'], leastAmpacityA });
      conductor(plan, 'amp-feed').fuses = [];
    };
    expect(found('fuse-over-conductor', weakest(60))).toEqual([]);
    expect(found('fuse-over-conductor', weakest(59.9))).toMatchObject([
      { level: 'stop', of: ['block.OUT1', 'elsewhere'], value: 60, limit: 59.9 },
    ]);
    const both = (plan: BuildPlan) => {
      over(60, 50)(plan);
      fuse(plan, 'block.OUT1').leastAmpacityA = 50;
    };
    expect(found('fuse-over-conductor', both)).toHaveLength(1);
  });
});

describe('a fuse over its conductor at the true ambient', () => {
  const warm =
    (ratingA: number, cautionA: number, ampacityA = 100) =>
    (plan: BuildPlan) => {
      fuse(plan, 'block.OUT1').ratingA = ratingA;
      Object.assign(conductor(plan, 'amp-feed'), { ampacityA, cautionA });
    };

  test('is one a tenth of an ampere above what it carries there, and none at it', () => {
    expect(found('fuse-over-warm-conductor', warm(60, 60))).toEqual([]);
    expect(found('fuse-over-warm-conductor', warm(60, 59.9))).toMatchObject([
      { level: 'caution', of: ['block.OUT1', 'amp-feed'], value: 60, limit: 59.9, unit: 'A' },
    ]);
  });

  test('is left to the stop where the published figure is passed too', () => {
    expect(levels('fuse-over-warm-conductor', warm(60, 30, 60))).toEqual(['caution']);
    expect(levels('fuse-over-warm-conductor', warm(60, 30, 59))).toEqual([]);
  });
});

describe('a conductor under what its fuses let flow', () => {
  const need = (neededA: number, ampacityA: number) => (plan: BuildPlan) => {
    Object.assign(conductor(plan, 'amp-feed'), { neededA, ampacityA });
    fuse(plan, 'block.OUT1').ratingA = Math.min(60, ampacityA);
  };

  test('is one a tenth of an ampere below, and none at it', () => {
    expect(found('conductor-under-need', need(80, 80))).toEqual([]);
    expect(found('conductor-under-need', need(80.1, 80))).toMatchObject([
      { level: 'stop', of: ['amp-feed'], value: 80.1, limit: 80, unit: 'A' },
    ]);
  });

  test('is told once: not where its own fuse is above it, nor where it carries nothing', () => {
    expect(levels('conductor-under-need', need(80, 0))).toEqual([]);
    const overToo = (plan: BuildPlan) => {
      need(80, 50)(plan);
      fuse(plan, 'block.OUT1').ratingA = 60;
    };
    expect(levels('conductor-under-need', overToo)).toEqual([]);
  });
});

describe('a conductor past another limit', () => {
  const limit = (value: number, unit: string) => (plan: BuildPlan) => {
    conductor(plan, 'amp-feed').limits = [
      { what: 'its drop', value, limit: 0.5, unit, level: 'caution', citation: 'the shop' },
    ];
  };

  test('is one just above it, and none at it', () => {
    expect(found('conductor-past-limit', limit(0.5, 'V'))).toEqual([]);
    expect(found('conductor-past-limit', limit(0.501, 'V'))).toMatchObject([
      { level: 'caution', of: ['amp-feed'], value: 0.501, limit: 0.5, unit: 'V', source: 'the shop' },
    ]);
  });

  test('is not told of its ampacity, which has a rule of its own', () => {
    expect(found('conductor-past-limit', limit(9, 'A'))).toEqual([]);
  });
});

describe('the rating of a fuse', () => {
  const rated = (more: object) => (plan: BuildPlan) => {
    Object.assign(fuse(plan, 'block.OUT1'), more);
  };

  test('may be what its maker allows, and no more', () => {
    expect(found('fuse-over-ceiling', rated({ ratingA: 60, ceilingA: 60 }))).toEqual([]);
    expect(found('fuse-over-ceiling', rated({ ratingA: 60, ceilingA: 59 }))).toMatchObject([
      { level: 'stop', of: ['block.OUT1'], value: 60, limit: 59, unit: 'A' },
    ]);
    expect(found('fuse-over-ceiling', rated({ ratingA: 60, ceilingA: null }))).toEqual([]);
    expect(found('fuse-over-ceiling', rated({ ratingA: null, ceilingA: 60 }))).toEqual([]);
  });

  test('is missing where there is none, or it is nothing', () => {
    expect(levels('fuse-without-rating', rated({ ratingA: null }))).toEqual(['stop']);
    expect(levels('fuse-without-rating', rated({ ratingA: 0 }))).toEqual(['stop']);
    expect(levels('fuse-without-rating', rated({ ratingA: 1 }))).toEqual([]);
  });

  test('that is missing names what has to give way', () => {
    const remedy = (more: object) =>
      found(
        'fuse-without-rating',
        rated({ ratingA: null, ratedA: 40, ceilingA: null, leastAmpacityA: null, alternatives: [], ...more }),
      )[0]?.remedy;
    expect(remedy({ ceilingA: 39 })).toContain('as its maker prints them');
    expect(remedy({ ceilingA: 40, leastAmpacityA: 39 })).toContain(
      'conductors behind it that carry at least 40 A',
    );
    expect(remedy({ leastAmpacityA: 40, holderA: 39 })).toContain('a holder made for at least 40 A');
    expect(remedy({ ceilingA: 40, leastAmpacityA: 40, holderA: 40 })).toContain('a holder of another form');
  });

  test('may be what its holder is made for, and no more', () => {
    const held = (ratingA: number) => rated({ ratingA, holderA: 60 });
    expect(found('fuse-over-holder', held(60))).toEqual([]);
    expect(found('fuse-over-holder', held(61))).toMatchObject([
      { level: 'stop', of: ['block.OUT1', 'block'], value: 61, limit: 60, unit: 'A' },
    ]);
  });

  // House rule fuse-continuous: 80 % of the rating, common practice.
  test('is continuously loaded to its share, and no further', () => {
    const load = (flowA: number, more: object = {}) =>
      rated({ ratingA: 50, ceilingA: 60, ratedA: 10, continuousA: flowA, ...more });
    const [told] = found('fuse-under-load', load(49.9));
    const limit = Number(told?.limit);
    expect(told).toMatchObject({ level: 'caution', of: ['block.OUT1'], value: 49.9, unit: 'A' });
    expect(limit).toBeGreaterThan(25);
    expect(limit).toBeLessThan(50);
    expect(levels('fuse-under-load', load(limit))).toEqual([]);
    expect(levels('fuse-under-load', load(limit + 0.01))).toEqual(['caution']);
    // Where its device allows no larger one it is a note, as long as it does not open.
    expect(levels('fuse-under-load', load(limit + 0.01, { ceilingA: 50 }))).toEqual(['note']);
    expect(levels('fuse-under-load', load(50, { ceilingA: 50 }))).toEqual(['note']);
    expect(levels('fuse-under-load', load(50.1, { ceilingA: 50 }))).toEqual(['caution']);
    // What was not solved is judged by what it carries at rated power.
    expect(levels('fuse-under-load', load(0, { continuousA: undefined, ratedA: limit + 0.01 }))).toEqual([
      'caution',
    ]);
    expect(levels('fuse-under-load', load(500, { ratingA: 0 }))).toEqual([]);
    expect(levels('fuse-under-load', load(500, { ratingA: null }))).toEqual([]);
  });

  test('far below what its maker states is doubted, shared by those side by side, and not at the share itself', () => {
    const small = (ratingA: number | null, more: object = {}) =>
      rated({ ratingA, ceilingA: 60, loads: ['amp'], ...more });
    const [told] = found('fuse-under-maker', small(1));
    const limit = Number(told?.limit);
    expect(told).toMatchObject({ level: 'caution', of: ['block.OUT1', 'amp'], value: 1, unit: 'A' });
    expect(limit).toBeGreaterThan(1);
    expect(limit).toBeLessThan(60);
    expect(levels('fuse-under-maker', small(limit))).toEqual([]);
    expect(levels('fuse-under-maker', small(limit - 0.01))).toEqual(['caution']);
    for (const more of [{ loads: [] }, { loads: ['amp', 'dsp'] }, { ceilingA: null }])
      expect(levels('fuse-under-maker', small(1, more))).toEqual([]);
    for (const ratingA of [0, null]) expect(levels('fuse-under-maker', small(ratingA))).toEqual([]);
    const pair = (plan: BuildPlan) => {
      small(limit / 2)(plan);
      Object.assign(fuse(plan, 'block.OUT2'), { ratingA: limit / 2, ceilingA: 60, loads: ['amp'] });
    };
    expect(levels('fuse-under-maker', pair)).toEqual([]);
  });

  test('on the shelf there must be one for each fuse of its like', () => {
    const alike = (stockQuantity: number) => (plan: BuildPlan) => {
      for (const one of plan.power.fuses) Object.assign(one, { part: one.id, stockQuantity: 5 });
      for (const id of ['block.OUT2', 'block.OUT3'])
        Object.assign(fuse(plan, id), { part: 'alike', stockQuantity });
    };
    expect(found('fuse-not-in-stock', alike(2))).toEqual([]);
    expect(found('fuse-not-in-stock', alike(1))).toMatchObject([
      { level: 'caution', of: ['block.OUT2'], value: 1, limit: 2, unit: 'piece' },
      { level: 'caution', of: ['block.OUT3'], value: 1, limit: 2, unit: 'piece' },
    ]);
    const unknown = (plan: BuildPlan) => {
      alike(2)(plan);
      Object.assign(fuse(plan, 'block.OUT2'), { part: null, stockQuantity: 0 });
    };
    expect(found('fuse-not-in-stock', unknown)).toMatchObject([{ of: ['block.OUT2'], limit: 1 }]);
  });
});
