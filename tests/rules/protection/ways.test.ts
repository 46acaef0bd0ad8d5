import { describe, expect, test } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import type { PlanPass } from '../../../lib/model/plan/wiring.ts';
import { distantFuses } from '../../../lib/rules/protection/fuse-at-source.ts';
import { about, byId, entry, partIn } from '../case.ts';
import { conductor, fuse, mainFuseAt, secondBattery, wire } from '../changes.ts';
import type { Written } from '../content.ts';
import { found } from '../found.ts';

const inch = 0.0254;
type Change = (content: Written) => void;
type Lengths = Readonly<Record<string, number>>;

/** Wires of the plan so many inches long. */
const long = (lengthsIn: Lengths) => (plan: BuildPlan) => {
  for (const [id, lengthIn] of Object.entries(lengthsIn)) wire(plan, id).lengthM = lengthIn * inch;
};

/** The distances that are told: from where, how many inches, along which wires. */
const told = (lengthsIn: Lengths, content: Change, plan: (plan: BuildPlan) => void = () => {}) =>
  found(
    'fuse-distance',
    about({
      content,
      plan: (made) => {
        long(lengthsIn)(made);
        plan(made);
      },
    }),
  ).map(({ of: [, from, ...wires], value = 0 }) => [from, Math.round(Number(value) / inch), ...wires]);

// 33 CFR 183.455 counts along the conductor from the source of power: 7 in where it lies bare.
describe('the way from a source to its fuse', () => {
  const viaBar: Change = ({ job }) => {
    job.devices.bus = { part: 'bar', in: 'bay' };
    job.links.feed = { from: 'battery.POS', to: 'bus.G1' };
    job.links.onward = { from: 'bus.G2', to: 'main-fuse.IN' };
  };

  test('is the sum of what lies in a row', () => {
    expect(told({ feed: 5, onward: 4 }, viaBar)).toEqual([['battery.POS', 9, 'feed', 'onward']]);
    expect(told({ feed: 4, onward: 3 }, viaBar)).toEqual([]);
  });

  test('of leads side by side is told of each that is too long, with what it shares with the others', () => {
    const twice: Change = (content) => {
      viaBar(content);
      content.job.links.beside = { from: 'battery.POS', to: 'bus.G1' };
    };
    const two = told({ feed: 4, beside: 30, onward: 5 }, twice);
    expect(two).toContainEqual(['battery.POS', 9, 'feed', 'onward']);
    expect(two).toContainEqual(['battery.POS', 35, 'beside', 'onward']);
    expect(two).toHaveLength(2);
    // Of three the shortest way on counts for each.
    const thrice: Change = (content) => {
      twice(content);
      content.job.links['onward-2'] = { from: 'bus.G2', to: 'main-fuse.IN' };
    };
    const all = told({ feed: 4, beside: 30, onward: 20, 'onward-2': 5 }, thrice);
    expect(all).toHaveLength(3);
    for (const way of [
      ['battery.POS', 9, 'feed', 'onward-2'],
      ['battery.POS', 35, 'beside', 'onward-2'],
      ['battery.POS', 24, 'feed', 'onward'],
    ])
      expect(all).toContainEqual(way);
  });

  test('ends at the first fuse, and passes no lead that goes elsewhere', () => {
    const branch: Change = ({ job }) => {
      job.devices.side = { part: 'holder', in: 'bay' };
      job.links['side-feed'] = { from: 'main-fuse.IN', to: 'side.IN' };
      job.links['side-load'] = { from: 'side.OUT', to: 'dsp.B+' };
    };
    const beside = (plan: BuildPlan) => {
      plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), id: 'side', item: 'side', source: null });
    };
    expect(told({ feed: 6, 'side-feed': 6, main: 200 }, branch, beside)).toEqual([
      ['battery.POS', 12, 'feed', 'side-feed'],
    ]);
  });

  test('is no shorter than the plan says, which knows the tails', () => {
    const planned = (distanceIn: number, source: string | null = 'battery') =>
      told(
        { feed: 6 },
        () => {},
        (plan) => {
          Object.assign(fuse(plan, 'main-fuse'), { distanceM: distanceIn * inch, source });
        },
      );
    expect(planned(9)).toEqual([['battery.POS', 9, 'feed']]);
    expect(planned(3)).toEqual([]);
    // What the plan says of another source is not said of this one.
    expect(planned(9, 'second')).toEqual([]);
    expect(planned(9, null)).toEqual([]);
  });

  test('from a source that the plan does not name is its own, though the named one is farther', () => {
    const two = secondBattery(false, (plan) => {
      long({ feed: 8, main: 2, 'second-tail': 10 })(plan);
      fuse(plan, 'main-fuse').distanceM = 11 * inch;
    });
    const lengths = found('fuse-distance', two)
      .filter(({ of: [id] }) => id === 'main-fuse')
      .map(({ of: [, from], value = 0 }) => [from, Math.round(Number(value) / inch)])
      .toSorted();
    expect(lengths).toEqual([
      ['battery.POS', 11],
      ['second.POS', 12],
    ]);
  });
});

describe('where a way begins', () => {
  const charged: Change = ({ job }) => {
    Object.assign(job.devices, {
      charger: { part: 'charger', on: 'main' },
      second: { part: 'agm', in: 'boot' },
      'second-fuse': { part: 'holder', in: 'boot' },
    });
    Object.assign(job.links, {
      'amp-feed': { from: 'block.OUT1', to: 'charger.IN+' },
      'second-tail': { from: 'second.POS', to: 'second-fuse.IN' },
      'charger-out': { from: 'charger.OUT+', to: 'second-fuse.OUT' },
    });
    job['left-open'] = { 'amp.B+': 'not used' };
  };
  const fused = (plan: BuildPlan) => {
    const second = { id: 'second-fuse', item: 'second-fuse', source: 'second', distanceM: null };
    plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...second });
  };

  // Common practice, no source: a charger drives no more than it gives; its fuse stands where the battery is.
  test('is a battery, and not a charger', () => {
    expect(told({ 'charger-out': 100, 'second-tail': 6 }, charged, fused)).toEqual([]);
    expect(told({ 'charger-out': 6, 'second-tail': 9 }, charged, fused)).toEqual([
      ['second.POS', 9, 'second-tail'],
    ]);
  });

  const tapped =
    (from: string): Change =>
    ({ vehicle, job }) => {
      vehicle.fitted.panel = { part: 'fused', zone: 'cabin' };
      vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
      job.devices['tap-fuse'] = { part: 'holder', in: 'dash' };
      job.links.tap = { from, to: 'tap-fuse.IN' };
      job.links['dsp-feed'] = { from: 'tap-fuse.OUT', to: 'dsp.B+' };
      job['left-open'] = { 'block.OUT2': 'not used' };
    };
  const ofTap = (plan: BuildPlan) => {
    const tap = { id: 'tap-fuse', item: 'tap-fuse', source: null, distanceM: null };
    plan.power.fuses.push({ ...fuse(plan, 'main-fuse'), ...tap });
  };

  // Common practice, no source: a tap needs its own fuse, at the tap.
  test.each(['panel.IN', 'head.B+'])('is a tap in the vehicle: %s', (from) => {
    expect(told({ tap: 9 }, tapped(from), ofTap)).toEqual([[from, 9, 'tap']]);
    expect(told({ tap: 7 }, tapped(from), ofTap)).toEqual([]);
  });

  test('is none behind a fused way of the vehicle, nor at a ground or a turn-on output', () => {
    for (const from of ['panel.OUT1', 'head.REM']) expect(told({ tap: 90 }, tapped(from), ofTap)).toEqual([]);
  });

  test('is no terminal of the vehicle that the job leaves alone', () => {
    const apart: Change = (content) => {
      tapped('battery.POS')(content);
      content.job.links.join = { from: 'tap-fuse.IN', to: 'panel.IN' };
    };
    const froms = told({ tap: 9, join: 9 }, apart, ofTap).map(([from]) => from);
    expect([...new Set(froms)].toSorted()).toEqual(['battery.POS', 'panel.IN']);
  });
});

describe('what counts as a sheath', () => {
  const covered = (covering: string, content: Change = () => {}) =>
    found(
      'fuse-distance',
      about({
        content,
        plan: (plan) => {
          Object.assign(wire(plan, 'feed'), { lengthM: 17 * inch, covering: [covering] });
          fuse(plan, 'main-fuse').distanceM = 17 * inch;
        },
      }),
    ).map(({ level }) => level);
  const form =
    (name: 'tape' | 'conduit'): Change =>
    (content) => {
      partIn(content, 'loom', 'covering').form = name;
    };

  test('is any covering but tape, as a word or as a part', () => {
    expect(covered('loom')).toEqual([]);
    expect(covered('loom', form('conduit'))).toEqual([]);
    expect(covered('tape')).toEqual(['caution']);
    expect(covered('loom', form('tape'))).toEqual(['caution']);
  });

  const pass = (lengthIn: number, covering: string | null): PlanPass => ({
    zone: 'sill',
    lengthM: lengthIn * inch,
    covering,
    chosen: 'given',
    reason: 'as written',
    tie: null,
    ties: 0,
  });

  test('leaves bare what passes a run without it', () => {
    const passes = (first: string | null, second: string | null) =>
      found(
        'fuse-distance',
        about({
          content: ({ job }) => {
            entry(job.runs, 'left').links.push('feed');
          },
          plan: (plan) => {
            wire(plan, 'feed').lengthM = 20 * inch;
            fuse(plan, 'main-fuse').distanceM = 20 * inch;
            const run = byId(plan.runs, 'left');
            run.passes = [pass(15, first), pass(5, second)];
          },
        }),
      )[0];
    expect(passes('loom', 'loom')?.level).toBe('caution');
    expect(passes('loom', 'loom')?.message).toContain('sheathed all the way');
    for (const [first, second, bare] of [
      ['loom', null, '5 in'],
      [null, 'loom', '15 in'],
      ['tape', 'loom', '15 in'],
    ] as const) {
      expect(passes(first, second)?.level).toBe('stop');
      expect(passes(first, second)?.message).toContain(`${bare} (`);
    }
  });
});

test('a fuse that is nearer to another source stays there, the nearest moves', () => {
  const remedies = (lengthsIn: Lengths) =>
    found('fuse-distance', secondBattery(false, long(lengthsIn)))
      .filter(({ of: [id] }) => id === 'main-fuse')
      .map(({ of: [, from], remedy }) => [from, remedy.replace(/, or .*/, '')])
      .toSorted();
  expect(remedies({ feed: 10, main: 10, 'second-tail': 10 })).toEqual([
    ['battery.POS', 'move the fuse nearer to battery'],
    ['second.POS', 'put a fuse at second too'],
  ]);
  expect(remedies({ feed: 20, main: 5, 'second-tail': 5 })).toEqual([
    ['battery.POS', 'put a fuse at battery too'],
    ['second.POS', 'move the fuse nearer to second'],
  ]);
});

test('what lies before a fuse is as good as unfused from the distance that stops the job, and no nearer', () => {
  expect(distantFuses(mainFuseAt(18.1)).map(({ of: [id] }) => id)).toEqual(['main-fuse']);
  expect(distantFuses(mainFuseAt(17.9))).toEqual([]);
  expect(found('fuse-distance', mainFuseAt(17.9))).toHaveLength(1);
});

describe('where a conductor without a fuse gets one', () => {
  const remedy = (from: string, content: Change = () => {}, plan: (plan: BuildPlan) => void = () => {}) =>
    found(
      'conductor-without-fuse',
      about({
        content: (written) => {
          written.job.links['amp-feed'] = { from, to: 'amp.B+' };
          written.job['left-open'] = { 'block.OUT1': 'not used' };
          content(written);
        },
        plan,
      }),
    ).find(({ of: [id] }) => id === 'amp-feed')?.remedy;

  test('is the battery end, rated at most at what the conductor carries', () => {
    const carries = (ampacityA: number) => (plan: BuildPlan) => {
      conductor(plan, 'amp-feed').ampacityA = ampacityA;
    };
    expect(remedy('battery.POS', () => {}, carries(68))).toBe(
      'put a fuse at battery.POS, rated at most at the 68 A that amp-feed carries, or branch off after a fuse',
    );
    expect(remedy('battery.POS', () => {}, carries(0))).toBe(
      'put a fuse at battery.POS, rated at most at what amp-feed carries, or branch off after a fuse',
    );
  });

  test('names the battery that feeds an end from elsewhere', () => {
    expect(remedy('main-fuse.IN')).toMatch(/^put a fuse at main-fuse\.IN \(fed by battery\.POS\), rated/);
  });

  test('is the input of a charger too, by the figure of its maker', () => {
    const charger: Change = ({ job }) => {
      job.devices.charger = { part: 'charger', on: 'main' };
      job.links['amp-feed'] = { from: 'battery.POS', to: 'charger.IN+' };
      job['left-open'] = { 'block.OUT1': 'not used', 'amp.B+': 'not used' };
    };
    expect(remedy('battery.POS', charger)).toMatch(
      /^put a fuse at battery\.POS, rated at most at .* and the 60 A of the maker of charger for its input$/,
    );
  });

  test('is both ends of a link between two batteries', () => {
    const link: Change = ({ job }) => {
      job.devices.second = { part: 'agm', in: 'boot' };
      job.links['amp-feed'] = { from: 'battery.POS', to: 'second.POS' };
      job['left-open'] = { 'block.OUT1': 'not used', 'amp.B+': 'not used' };
    };
    expect(remedy('battery.POS', link)).toMatch(
      /^put a fuse at battery\.POS and one at second\.POS, each rated at most at the \d+ A that amp-feed carries$/,
    );
  });

  test('is where the charge comes from where no battery is behind it', () => {
    const apart: Change = ({ vehicle }) => {
      delete vehicle.links?.charge;
    };
    expect(remedy('alternator.B+', apart)).toMatch(/^put a fuse at alternator\.B\+, rated at most at /);
  });

  test('of a turn-on output is the output', () => {
    const strong = about({
      content: (content) => {
        entry(partIn(content, 'radio', 'source-unit').terminals, 'REM').current = '20 A';
      },
    });
    const [told] = found('conductor-without-fuse', strong);
    expect(told?.of[0]).toBe('radio-rem');
    expect(told?.remedy).toMatch(/^put a fuse at the source end, rated at most at /);
  });
});
