import { describe, expect, test } from 'vitest';
import type { BuildPlan, PlanFuse } from '../../../lib/model/plan/index.ts';
import { about, entry, partIn } from '../case.ts';
import { fuse, isolated, point, secondBattery, withRelay } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';

type Ratings = Readonly<Record<string, number | null>>;
type Change = (content: Written) => void;

const rate = (plan: BuildPlan, ratings: Ratings) => {
  for (const [id, ratingA] of Object.entries(ratings)) fuse(plan, id).ratingA = ratingA;
};
const rated = (ratings: Ratings, content: Change = () => {}) =>
  about({ content, plan: (plan) => rate(plan, ratings) });

/** A second battery behind a fuse of its own, with these ratings. */
const between = (ratings: Ratings) =>
  secondBattery(true, (plan) => {
    const second = { id: 'second-fuse', item: 'second-fuse', source: 'second' };
    plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...second, protects: ['second-tail', 'link'] });
    rate(plan, ratings);
  });

describe('fuses in a row', () => {
  test('are told where the one behind is above the one before, by a tenth of an ampere', () => {
    expect(found('fuse-order', rated({ 'main-fuse': 59.9 }))).toMatchObject([
      { level: 'caution', of: ['block.OUT1', 'main-fuse'], value: 60, limit: 59.9, unit: 'A' },
    ]);
    expect(found('fuse-order', rated({ 'main-fuse': 60 }))).toEqual([]);
  });

  test('without a rating are told by none', () => {
    expect(found('fuse-order', rated({ 'main-fuse': null }))).toEqual([]);
    expect(found('fuse-order', rated({ 'main-fuse': 59, 'block.OUT1': null }))).toEqual([]);
    expect(found('fuses-over-feeder', rated({ 'main-fuse': null }))).toEqual([]);
  });

  test('are those next behind: what stands past another fuse is that one`s affair', () => {
    const deeper: Change = ({ job }) => {
      job.devices.inner = { part: 'holder', in: 'boot' };
      job.links['radio-feed'] = { from: 'block.OUT3', to: 'inner.IN' };
      job.links['inner-feed'] = { from: 'inner.OUT', to: 'radio.B+' };
    };
    const three = about({
      content: deeper,
      plan: (plan) => {
        const inner = { id: 'inner', item: 'inner', source: null, ratingA: 70, protects: ['inner-feed'] };
        plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...inner });
        rate(plan, { 'main-fuse': 65 });
      },
    });
    expect(found('fuse-order', three).map(({ of }) => of)).toEqual([['inner', 'block.OUT3']]);
  });
});

describe('a fuse that several feed', () => {
  const told = (ratings: Ratings) =>
    found('fuse-order', between(ratings)).map(({ level, of, value, limit }) => [level, ...of, value, limit]);

  test('is doubted above the least of them, and wrong above all together', () => {
    const both = ['main-fuse', 'second-fuse'];
    expect(told({ 'main-fuse': 60, 'second-fuse': 80 })).toEqual([]);
    expect(told({ 'main-fuse': 59, 'second-fuse': 80 })).toEqual([['note', 'block.OUT1', ...both, 60, 59]]);
    expect(told({ 'main-fuse': 80, 'second-fuse': 59 })).toEqual([['note', 'block.OUT1', ...both, 60, 59]]);
    expect(told({ 'main-fuse': 20, 'second-fuse': 40 })).toEqual([['note', 'block.OUT1', ...both, 60, 20]]);
    expect(told({ 'main-fuse': 20, 'second-fuse': 39 })).toEqual([
      ['caution', 'block.OUT1', ...both, 60, 59],
    ]);
  });

  test('is judged by none whose rating is not known, nor without its own', () => {
    expect(told({ 'main-fuse': null, 'second-fuse': 39 })).toEqual([]);
    expect(told({ 'main-fuse': 20, 'second-fuse': 30, 'block.OUT1': null })).toEqual([]);
  });

  test('is none where a source reaches it bare: nothing before it can open first', () => {
    const bare = secondBattery(false, (plan) => rate(plan, { 'main-fuse': 20 }));
    expect(found('fuse-order', bare)).toEqual([]);
  });
});

describe('the fuses behind a feeder', () => {
  test('are told where they add to more than it, and not where they add to just that', () => {
    expect(found('fuses-over-feeder', rated({ 'main-fuse': 74 }))).toMatchObject([
      {
        level: 'note',
        of: ['main-fuse', 'block.OUT1', 'block.OUT2', 'block.OUT3'],
        value: 75,
        limit: 74,
        unit: 'A',
      },
    ]);
    expect(found('fuses-over-feeder', rated({ 'main-fuse': 75 }))).toEqual([]);
  });

  test('are at least two: one alone is no sum', () => {
    const alone: Change = ({ job }) => {
      job.devices.inner = { part: 'holder', in: 'boot' };
      job.links['radio-feed'] = { from: 'block.OUT3', to: 'inner.IN' };
      job.links['inner-feed'] = { from: 'inner.OUT', to: 'radio.B+' };
    };
    const one = about({
      content: alone,
      plan: (plan) => {
        const inner = { id: 'inner', item: 'inner', source: null, ratingA: 15, protects: ['inner-feed'] };
        plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...inner });
        rate(plan, { 'main-fuse': 75 });
      },
    });
    expect(found('fuses-over-feeder', one)).toEqual([]);
    const [told] = found('fuses-over-feeder', rated({ 'main-fuse': 7, 'block.OUT1': null }));
    expect(told?.value).toBe(15);
    expect(told?.message).toContain('block.OUT1, block.OUT2 and block.OUT3 add to 15 A');
  });
});

describe('fuses side by side before a device', () => {
  const twoWays: Change = ({ job }) => {
    job.links['amp-feed-2'] = { from: 'block.OUT2', to: 'amp.B+' };
    delete job.links['dsp-feed'];
    job['left-open'] = { 'dsp.B+': 'not used' };
  };

  test('let their sum through, against the ceiling of its maker', () => {
    const at = (secondA: number) =>
      found('fuses-over-ceiling', rated({ 'block.OUT1': 40, 'block.OUT2': secondA }, twoWays));
    expect(at(20)).toEqual([]);
    expect(at(20.1)).toMatchObject([
      { level: 'stop', of: ['amp', 'block.OUT1', 'block.OUT2'], value: 60.1, limit: 60, unit: 'A' },
    ]);
    expect(at(20.1)[0]?.message).toMatch(
      /^the fuses block\.OUT1 and block\.OUT2 stand side by side before amp/,
    );
  });

  test('are at least two, and none where a source reaches the device bare', () => {
    expect(found('fuses-over-ceiling', rated({ 'block.OUT1': 90 }))).toEqual([]);
    const bare: Change = (content) => {
      twoWays(content);
      content.job.links.past = { from: 'battery.POS', to: 'amp.B+' };
    };
    expect(found('fuses-over-ceiling', rated({ 'block.OUT1': 90 }, bare))).toEqual([]);
  });

  test('of a device of the vehicle are its maker`s affair', () => {
    const fitted: Change = (content) => {
      const { vehicle, job } = content;
      vehicle.fitted.booster = { part: 'two-channel', zone: 'cabin' };
      job.links['booster-1'] = { from: 'block.OUT2', to: 'booster.B+' };
      job.links['booster-2'] = { from: 'block.OUT3', to: 'booster.B+' };
      for (const name of ['dsp-feed', 'radio-feed']) delete job.links[name];
      job['left-open'] = { 'dsp.B+': 'not used', 'radio.B+': 'not used' };
    };
    expect(found('fuses-over-ceiling', rated({ 'block.OUT2': 90 }, fitted))).toEqual([]);
  });
});

describe('a fuse in a ground lead', () => {
  const inGround: Change = ({ job }) => {
    job.devices.bad = { part: 'holder', in: 'boot' };
    job.links['board-ground'] = { from: 'ground.G0', to: 'bad.IN' };
    job.links['bad-ground'] = { from: 'bad.OUT', to: 'body.cargo' };
  };
  const judged = (content: Change, fused: Partial<PlanFuse> = {}) =>
    found(
      'fuse-in-ground',
      about({
        content,
        plan: (plan) => {
          const own = { id: 'bad', item: 'bad', from: 'bad.IN', to: 'bad.OUT', source: null };
          plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...own, ...fused });
        },
      }),
    );

  test('is told with every ground at it, though it stands at one end alone', () => {
    expect(judged(inGround)).toMatchObject([{ level: 'stop', of: ['bad', 'board-ground', 'bad-ground'] }]);
    const oneEnd: Change = (content) => {
      inGround(content);
      delete content.job.links['bad-ground'];
    };
    expect(judged(oneEnd).map(({ of }) => of)).toEqual([['bad', 'board-ground']]);
  });

  test('is none without a ground at it, where it is live, or in the vehicle', () => {
    const apart: Change = ({ job }) => {
      job.devices.bad = { part: 'holder', in: 'boot' };
    };
    expect(judged(apart)).toEqual([]);
    const live: Change = (content) => {
      inGround(content);
      content.job.links.short = { from: 'main-fuse.OUT', to: 'bad.IN' };
    };
    expect(judged(live)).toEqual([]);
    expect(judged(inGround, { item: 'battery' })).toEqual([]);
  });
});

describe('the current of a distribution part', () => {
  const through = (
    flows: readonly (readonly [
      point: 'rated-power' | 'engine-off',
      wire: string,
      to: string,
      currentA: number,
    ])[],
    { barA = '200 A', portA }: { readonly barA?: string; readonly portA?: string } = {},
    content: Change = () => {},
  ) =>
    found(
      'distribution-over-current',
      about({
        content: (written) => {
          const bar = partIn(written, 'bar', 'distribution');
          bar.current = barA;
          if (portA !== undefined) entry(bar.terminals, 'G1').current = portA;
          content(written);
        },
        plan: (plan) => {
          for (const [name, of, to, currentA] of flows)
            point(plan, name).elements.push({
              ...{ id: `${of}:to`, of, kind: 'joint', model: 'resistance', dropV: 0 },
              ...{ from: `${of}:end`, to, currentA },
            });
        },
      }),
    ).map(({ level, of, value }) => [level, ...of, value]);

  test('is what comes in at all of its terminals, not what leaves', () => {
    const flows = [
      ['rated-power', 'amp-ground', 'ground.G1', 60],
      ['rated-power', 'dsp-ground', 'ground.G2', 50],
      ['rated-power', 'board-ground', 'ground.G0', -110],
    ] as const;
    expect(through(flows, { barA: '110 A' })).toEqual([]);
    expect(through(flows, { barA: '109 A' })).toEqual([['stop', 'ground', 110]]);
  });

  test('stops at rated power and cautions at another point, also where that is the greater', () => {
    const both = (ratedA: number, otherA: number) =>
      through([
        ['rated-power', 'amp-ground', 'ground.G1', ratedA],
        ['engine-off', 'amp-ground', 'ground.G1', otherA],
      ]);
    expect(both(200, 200)).toEqual([]);
    expect(both(200, 201)).toEqual([['caution', 'ground', 'engine-off', 201]]);
    expect(both(201, 250)).toEqual([['stop', 'ground', 201]]);
  });

  test('of a port is judged alike, in either direction', () => {
    const port = (ratedA: number, otherA: number) =>
      through(
        [
          ['rated-power', 'amp-ground', 'ground.G1', ratedA],
          ['engine-off', 'amp-ground', 'ground.G1', otherA],
        ],
        { portA: '80 A' },
      );
    expect(port(80, 80)).toEqual([]);
    expect(port(80, 81)).toEqual([['caution', 'ground', 'ground.G1', 'engine-off', 81]]);
    expect(port(81, 90)).toEqual([['stop', 'ground', 'ground.G1', 'rated-power', 81]]);
    expect(port(-81, 10)).toEqual([['stop', 'ground', 'ground.G1', 'rated-power', 81]]);
  });

  test('is not judged in the vehicle, nor at a point that has no solution', () => {
    const fitted: Change = ({ vehicle, job }) => {
      vehicle.fitted.own = { part: 'bar', zone: 'cargo' };
      job.links['own-ground'] = { from: 'own.G1', to: 'body.cargo' };
    };
    expect(through([['rated-power', 'own-ground', 'own.G1', 300]], {}, fitted)).toEqual([]);
    const unsolved = about({
      plan: (plan) => {
        const own = {
          of: 'dsp-ground',
          kind: 'joint',
          model: 'resistance',
          from: 'x',
          to: 'ground.G2',
        } as const;
        point(plan, 'engine-off').elements.push(
          { ...own, id: 'a', of: 'amp-ground', to: 'ground.G1', currentA: 900 },
          { ...own, id: 'b' },
        );
      },
    });
    expect(found('distribution-over-current', unsolved)).toEqual([]);
  });

  test('is what the fuse before it lets through, and of its own ways what flows in each', () => {
    const block = (currentA: string, ratings: Ratings) =>
      found(
        'distribution-over-current',
        rated(ratings, (content) => {
          partIn(content, 'fused', 'distribution').current = currentA;
        }),
      );
    // 40 and 2 and 2 A flow through its ways.
    expect(block('43 A', {})).toMatchObject([{ level: 'stop', of: ['block', 'main-fuse'], value: 44 }]);
    const [let80] = block('79 A', { 'main-fuse': 80 });
    expect(let80).toMatchObject({ level: 'caution', of: ['block', 'main-fuse'], value: 80, limit: 79 });
    expect(let80?.message).toBe('block is made for 79 A, and the fuse main-fuse before it lets 80 A through');
    expect(let80?.remedy).toMatch(/or a smaller fuse before it$/);
    expect(block('80 A', { 'main-fuse': 80 })).toEqual([]);
    expect(block('44 A', { 'main-fuse': null })).toEqual([]);
  });
});

describe('the contact of a relay', () => {
  const contact = (flows: readonly (readonly ['rated-power' | 'engine-off', number])[]) => {
    const made = withRelay('diode');
    const joint = { kind: 'joint', model: 'resistance', dropV: 0, from: 'relay.30', to: 'relay.87' } as const;
    for (const [name, currentA] of flows)
      point(made.plan, name).elements.push(
        { ...joint, id: 'relay.30>87', of: 'relay', currentA },
        // Its coil is no contact.
        { ...joint, kind: 'load', id: 'relay.coil', of: 'relay', currentA: 99 },
      );
    rate(made.plan, { 'block.OUT2': 30 });
    return found('relay-contact-over-current', made).map(({ level, of, value }) => [level, ...of, value]);
  };

  test('stops at rated power, cautions at another point, by the greatest that flows in either direction', () => {
    expect(
      contact([
        ['rated-power', 30],
        ['engine-off', 30],
      ]),
    ).toEqual([]);
    expect(
      contact([
        ['rated-power', 10],
        ['engine-off', -31],
      ]),
    ).toEqual([['caution', 'relay', 31]]);
    expect(
      contact([
        ['rated-power', 31],
        ['engine-off', 40],
      ]),
    ).toEqual([['stop', 'relay', 31]]);
  });

  test('between two batteries counts the fuses of the worse side, whichever that is', () => {
    const sides = (mainA: number, secondA: number) =>
      found(
        'relay-contact-over-current',
        isolated(
          'radio.REM',
          () => {},
          (plan) => {
            const second = { id: 'second-fuse', item: 'second-fuse', ratingA: secondA };
            plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...second });
            rate(plan, { 'main-fuse': mainA });
          },
        ),
      ).map(({ of, value, limit }) => [...of, value, limit]);
    expect(sides(100, 100)).toEqual([]);
    expect(sides(80, 101)).toEqual([['isolator', 'second-fuse', 101, 100]]);
    expect(sides(101, 80)).toEqual([['isolator', 'main-fuse', 101, 100]]);
    expect(sides(125, 110)).toEqual([['isolator', 'main-fuse', 125, 100]]);
  });

  test('of a relay of the vehicle is its maker`s affair', () => {
    const fitted = about({
      content: ({ vehicle }) => {
        vehicle.fitted.own = { part: 'relay', zone: 'cabin' };
      },
      plan: (plan) => {
        point(plan, 'rated-power').elements.push({
          ...{ id: 'own.30>87', of: 'own', kind: 'joint', model: 'resistance', dropV: 0 },
          ...{ from: 'own.30', to: 'own.87', currentA: 99 },
        });
      },
    });
    expect(found('relay-contact-over-current', fitted)).toEqual([]);
  });
});
