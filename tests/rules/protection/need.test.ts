import { describe, expect, test } from 'vitest';
import type { BuildPlan, PlanConductor, PlanFuse } from '../../../lib/model/plan/index.ts';
import { about } from '../case.ts';
import { conductor, fuse, run, secondBattery } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';

/** A main fuse that was written, before the amplifier (60 A by its maker), the processor (5 A) and the radio (10 A). */
const given = (ratingA: number | null, more: Partial<PlanFuse> = {}): Partial<PlanFuse> => {
  return { ratingA, chosen: 'given', ceilingA: null, loads: ['amp', 'dsp', 'radio'], ...more };
};

const overNeed = (
  more: Partial<PlanFuse>,
  plan: (plan: BuildPlan) => void = () => {},
  content: (content: Written) => void = () => {},
) =>
  found(
    'fuse-over-need',
    about({
      content,
      plan: (made) => {
        Object.assign(fuse(made, 'main-fuse'), more);
        plan(made);
      },
    }),
  );

describe('a fuse larger than what it feeds asks for', () => {
  // Ratings made in the large bolt-in form: trade practice; 1.25 of what flows: common practice, no source.
  test('is none at the next made rating for what flows with its margin', () => {
    // 60 A are made, so 48 A ask for just that one, and a hair more for 80 A.
    const limit = (ratedA: number) => overNeed(given(500, { ratedA, loads: ['dsp'] }))[0]?.limit;
    expect(limit(48)).toBe(60);
    expect(limit(48.001)).toBe(80);
    const thin = (ratingA: number) =>
      overNeed(given(ratingA, { ratedA: 48 }), (plan) => {
        Object.assign(conductor(plan, 'main'), { ampacityA: 50, neededA: ratingA });
      });
    expect(thin(60)).toEqual([]);
    expect(thin(80)).toMatchObject([{ level: 'stop', of: ['main-fuse', 'main'], value: 80, limit: 60 }]);
  });

  test('is told with what is asked by its devices, and by one alone', () => {
    const [several] = overNeed(given(150));
    expect(several).toMatchObject({ level: 'caution', of: ['main-fuse'], value: 150, limit: 120, unit: 'A' });
    expect(several?.message).toContain('amp, dsp and radio together have fuses of 75 A by their makers');
    expect(several?.message).toMatch(/; every conductor behind it, and its ground, grows with it$/);
    const [one] = overNeed(given(150, { loads: ['radio'] }));
    expect(one?.message).toContain('radio has fuses of 10 A by their makers');
    // What the catalogue has no supply for asks for nothing.
    expect(overNeed(given(150, { loads: ['radio', 'sub', 'nobody'] }))[0]?.message).toContain(
      'together have fuses of 10 A by their makers',
    );
  });

  test('is not judged without a rating, without devices, in the vehicle, or where a source stands behind it', () => {
    expect(overNeed(given(null))).toEqual([]);
    expect(overNeed(given(200, { loads: [] }))).toEqual([]);
    expect(overNeed(given(200, { id: 'elsewhere' }))).toEqual([]);
    const fitted = (plan: BuildPlan) => {
      plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...given(200), id: 'own', item: 'own' });
      Object.assign(fuse(plan, 'main-fuse'), { chosen: 'computed' });
    };
    const inVehicle = ({ vehicle, job }: Written) => {
      vehicle.fitted.own = { part: 'holder', zone: 'engine-bay' };
      job.links['own-feed'] = { from: 'main-fuse.OUT', to: 'own.IN' };
    };
    expect(overNeed({}, fitted, inVehicle)).toEqual([]);
    // Between two batteries no device says what flows; behind a way of the block none stands.
    const ways = (id: string) =>
      found(
        'fuse-over-need',
        secondBattery(true, (plan) => Object.assign(fuse(plan, id), given(200, { loads: ['radio'] }))),
      ).map(({ of }) => of);
    expect(ways('main-fuse')).toEqual([]);
    expect(ways('block.OUT3')).toEqual([['block.OUT3']]);
  });

  describe('stops the job where something behind it carries less', () => {
    const thin = (id: string, more: Partial<PlanConductor>, loads = ['amp', 'dsp', 'radio']) =>
      overNeed(given(80, { loads }), (plan) => {
        Object.assign(conductor(plan, id), more);
      }).map(({ level, of }) => [level, ...of]);
    const stop = (...ids: string[]) => [['stop', 'main-fuse', ...ids]];

    test('a conductor that it protects, by a tenth of an ampere', () => {
      expect(thin('main', { ampacityA: 79.9, neededA: 80 })).toEqual(stop('main'));
      expect(thin('main', { ampacityA: 80, neededA: 80 })).toEqual([]);
      // What carries nothing at all has a finding of its own; what needs less is held by another fuse.
      expect(thin('main', { ampacityA: 0, neededA: 80 })).toEqual([]);
      expect(thin('main', { ampacityA: 60, neededA: 60 })).toEqual([]);
      expect(thin('main', { ampacityA: 59, neededA: 60 })).toEqual(stop('main'));
    });

    test('the ground of all of its devices, which takes back all that it lets through', () => {
      expect(thin('board-ground', { ampacityA: 79, neededA: 80 })).toEqual(stop('board-ground'));
      expect(thin('board-ground', { ampacityA: 59, neededA: 60 })).toEqual([]);
      expect(thin('amp-feed', { ampacityA: 79, neededA: 80 })).toEqual([]);
    });

    test('of a single device its own ground alone', () => {
      const ground = (id: string) => thin(id, { ampacityA: 79, neededA: 80 }, ['dsp']);
      const other = overNeed(given(80, { loads: ['dsp'] }));
      expect(ground('amp-ground')).toEqual(other.map(({ level, of }) => [level, ...of]));
      expect(ground('dsp-ground')).toEqual(stop('dsp-ground'));
    });

    test('names all of them, but no conductor of the vehicle', () => {
      const [told] = overNeed(given(80), (plan) => {
        Object.assign(conductor(plan, 'main'), { ampacityA: 79, neededA: 80 });
        Object.assign(conductor(plan, 'board-ground'), { ampacityA: 79, neededA: 80 });
        plan.power.conductors.push({ ...conductor(plan, 'main'), id: 'vehicle.charge' });
        fuse(plan, 'main-fuse').protects.push('vehicle.charge');
      });
      expect(told?.of.toSorted()).toEqual(['board-ground', 'main', 'main-fuse']);
      expect(told?.message).toMatch(/; (main and board-ground|board-ground and main) carry less$/);
    });
  });

  test('names the runs that no grommet fits, and only those of what it protects', () => {
    const bare = (protects: string[]) =>
      overNeed(given(150), (plan) => {
        run(plan).grommets = [{ zone: 'bulkhead', holeM: 0.02, part: null }];
        run(plan).wires = ['main', 'other'];
        fuse(plan, 'main-fuse').protects = protects;
      });
    expect(bare(['main'])).toMatchObject([{ level: 'stop', limit: 120 }]);
    expect(bare(['main'])[0]?.message).toMatch(/no grommet of the catalogue fits that in left$/);
    expect(bare(['elsewhere'])).toMatchObject([{ level: 'caution' }]);
  });
});

describe('the rating of a fuse of the vehicle', () => {
  const fitted = (more: Partial<PlanFuse>) =>
    about({
      content: ({ vehicle }) => {
        vehicle.fitted.own = { part: 'holder', zone: 'engine-bay' };
      },
      plan: (plan) => {
        plan.power.fuses.push({
          ...fuse(plan, 'main-fuse'),
          ...more,
          id: 'own',
          item: 'own',
          loads: ['amp'],
        });
      },
    });

  test('is its maker`s affair in every way', () => {
    const cases = [
      ['fuse-without-rating', { ratingA: null }],
      ['fuse-over-ceiling', { ratingA: 80, ceilingA: 10 }],
      ['fuse-under-maker', { ratingA: 1, ceilingA: 60 }],
      ['fuse-not-made', { ratingA: 81 }],
      ['fuse-over-holder', { ratingA: 500 }],
      ['fuse-not-in-stock', { ratingA: 80, part: 'own-fuse', stockQuantity: 0 }],
      ['fuse-under-load', { ratingA: 80, continuousA: 500 }],
    ] as const;
    for (const [rule, more] of cases) {
      expect(found(rule, fitted(more)), rule).toEqual([]);
      const added = about({
        plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), more, { loads: ['amp'] }),
      });
      expect(found(rule, added), rule).toHaveLength(1);
    }
  });
});

describe('the rating of a fuse of the job', () => {
  const rated = (more: Partial<PlanFuse>, content: (content: Written) => void = () => {}) =>
    about({ content, plan: (plan) => Object.assign(fuse(plan, 'block.OUT1'), more) });

  test('is one that is made in its form, or that its own part has', () => {
    const own = { part: 'own' };
    const part =
      (rating: string) =>
      ({ parts }: Written) => {
        parts.own = { kind: 'fuse', title: 'Fuse', form: 'maxi-blade', rating };
      };
    expect(found('fuse-not-made', rated({ ratingA: 60 }))).toEqual([]);
    expect(found('fuse-not-made', rated({ ratingA: 61, ...own }, part('61 A')))).toEqual([]);
    expect(found('fuse-not-made', rated({ ratingA: 61, ...own }, part('62 A')))).toHaveLength(1);
    expect(found('fuse-not-made', rated({ ratingA: null }))).toEqual([]);
  });

  // ISO 8820-3 is the standard of maxi blades; that of two-leg micro blades is from memory.
  test('that is not made is told with the standard of its form, and its mark where that is from memory', () => {
    const [maxi] = found('fuse-not-made', rated({ ratingA: 61 }));
    expect(maxi).toMatchObject({ source: 'ISO 8820-3', value: 61, unit: 'A' });
    expect(maxi).not.toHaveProperty('mark');
    const [micro] = found('fuse-not-made', rated({ ratingA: 61, form: 'micro-blade' }));
    expect(micro).toMatchObject({ source: 'ISO 8820-3', mark: 'mem' });
  });

  test('without a rating it is neither over its holder nor under its load, nor wanting on the shelf', () => {
    for (const rule of [
      'fuse-over-holder',
      'fuse-not-in-stock',
      'fuse-over-ceiling',
      'fuse-under-load',
    ] as const)
      expect(
        found(rule, rated({ ratingA: null, holderA: 0, ceilingA: 0, continuousA: 9, part: null })),
        rule,
      ).toEqual([]);
  });

  test('at its holder`s own limit, which the part states and not the plan', () => {
    const held = (ratingA: number) =>
      found(
        'fuse-over-holder',
        about({ plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), { ratingA, holderA: 1 }) }),
      );
    expect(held(250)).toEqual([]);
    expect(held(251)).toMatchObject([{ of: ['main-fuse', 'main-fuse'], value: 251, limit: 250 }]);
  });

  test('under its load names the point at which that flows, and how much of the fuse it is', () => {
    const at = (continuousAt?: 'engine-off') =>
      found(
        'fuse-under-load',
        rated({ ratingA: 50, continuousA: 60, ceilingA: null, ...(continuousAt && { continuousAt }) }),
      )[0]?.message;
    expect(at('engine-off')).toMatch(/^Engine off: 60 A flow through the 50 A fuse block\.OUT1, 120 % of it/);
    expect(at()).toMatch(/^Rated power: /);
  });

  test('shared by those side by side before the same device alone', () => {
    const pair = (more: Partial<PlanFuse>) =>
      found(
        'fuse-under-maker',
        about({
          plan: (plan) => {
            const half = { ratingA: 20, ceilingA: 60, loads: ['amp'] };
            Object.assign(fuse(plan, 'block.OUT1'), half);
            Object.assign(fuse(plan, 'block.OUT2'), half, more);
          },
        }),
      ).map(({ of: [id] }) => id);
    // Half of 60 A by the two: 15 A each; by one alone 30 A.
    expect(pair({})).toEqual([]);
    expect(pair({ loads: ['dsp'] })).toEqual(['block.OUT1', 'block.OUT2']);
    expect(pair({ ceilingA: 35, loads: ['amp'] })).toEqual(['block.OUT1']);
  });
});

describe('what else may stand there', () => {
  const remedy = (more: Partial<PlanFuse>) =>
    found(
      'fuse-without-rating',
      about({ plan: (plan) => Object.assign(fuse(plan, 'main-fuse'), { ratingA: null, ...more }) }),
    )[0]?.remedy;
  const other = (form: 'large-bolt-in' | 'class-t', ratingA: number, stockQuantity: number) => {
    return { form, ratingA, stockQuantity, part: null, parts: [] as string[], areaM2: 0, note: '' };
  };

  test('is told with its pieces on the shelf where the catalogue has it in that form and rating, and first', () => {
    const text = remedy({
      alternatives: [
        other('class-t', 80, 3),
        other('large-bolt-in', 100, 2),
        { ...other('large-bolt-in', 80, 1), parts: ['holder-b', 'lug'] },
      ],
    });
    expect(text).toBe(
      'lawful instead: large bolt-in 80 A (1 piece in stock, with holder-b and lug), Class T 80 A (not in the catalogue) or large bolt-in 100 A (not in the catalogue)',
    );
  });

  test('is nothing where no form does, and then what is in the way has to give', () => {
    const none = { alternatives: [], ceilingA: null, leastAmpacityA: null, holderA: null, ratedA: 100 };
    expect(remedy(none)).toMatch(/^take a holder of another form/);
    expect(remedy({ ...none, holderA: 99 })).toMatch(/^take a holder made for at least 100 A/);
    expect(remedy({ ...none, leastAmpacityA: 99, holderA: 99 })).toMatch(/^run conductors behind it/);
    expect(remedy({ ...none, ceilingA: 99, leastAmpacityA: 99 })).toMatch(
      /^feed fewer devices through it; if/,
    );
    for (const at of [{ ceilingA: 100 }, { leastAmpacityA: 100 }, { holderA: 100 }])
      expect(remedy({ ...none, ...at })).toMatch(/^take a holder of another form/);
  });
});
