import { describe, expect, test } from 'vitest';
import type { PlanHeat } from '../../../lib/model/plan/index.ts';
import { coolerSpace } from '../../../lib/rules/supply/cooler-space.ts';
import { about, aboutContent, aboutPlan, entry, partIn } from '../case.ts';
import { regime, wire } from '../changes.ts';
import { found } from '../found.ts';
import { sized } from '../plan.ts';

describe('a charge that falls short', () => {
  const remedy = (name: 'idle' | 'cruise', averageA: number) =>
    found(
      'charging-short',
      aboutPlan((plan) => Object.assign(regime(plan, name), { averageA })),
    ).map((told) => told.remedy);

  // 70 A at idle, 45 A of them for the vehicle; 120 A at cruise. Four fifths are the house rule.
  test('is met by playing less at idle alone, and only where more is asked than there is', () => {
    expect(remedy('idle', 30)).toEqual(['do not play loud at idle for long, or fit a larger alternator']);
    expect(remedy('idle', 12)).toEqual(['fit a larger alternator, or less average power']);
    expect(remedy('cruise', 80)).toEqual(['fit a larger alternator, or less average power']);
  });
});

describe('a source of the vehicle that is not linked', () => {
  test('lacks one lead, where another is there, or all of them', () => {
    const without = (...links: readonly string[]) =>
      found(
        'fitted-source-not-linked',
        aboutContent(({ vehicle }) => {
          for (const link of links) delete vehicle.links?.[link];
        }),
      ).map(({ message }) => message);
    expect(without('charge')).toEqual([
      expect.stringMatching(
        /^at alternator the charge lead from alternator\.B\+ to the battery is missing\./,
      ),
    ]);
    expect(without('strap')).toEqual([
      expect.stringMatching(/^at battery the battery strap from battery\.NEG/),
    ]);
    expect(without('charge', 'block')).toEqual([
      expect.stringMatching(/^alternator is fitted, but linked to nothing: .* are missing\./),
    ]);
  });
});

describe('a ground that is smaller than its feed', () => {
  const remedy = (takes: string | null) =>
    found(
      'ground-under-feed',
      about({
        content: (content) => {
          const { terminals } = partIn(content, 'bar', 'distribution');
          if (takes !== null) Object.assign(entry(terminals, 'G0'), { takes: { from: '16 AWG', to: takes } });
        },
        plan: (plan) => {
          wire(plan, 'board-ground').size = sized('8');
        },
      }),
    ).map((told) => told.remedy);

  test('is told of a port that takes no larger one, and of none that does', () => {
    expect(remedy('8 AWG')).toEqual([
      expect.stringMatching(
        /of the same material; ground\.G0 takes at most 8 AWG: that asks for a reducer for 4 AWG/,
      ),
    ]);
    expect(remedy('4 AWG')).toEqual([expect.stringMatching(/of the same material$/)]);
  });
});

test('a strip that is grounded twice is told with both leads', () => {
  const told = found(
    'device-grounded-twice',
    aboutContent(({ job }) => {
      job.links.extra = { from: 'ground.G0', to: 'body.dash' };
    }),
  );
  expect(told.map(({ of }) => of)).toEqual([['ground', 'board-ground', 'extra']]);
});

describe('a supply that gives way', () => {
  test('to loads of the vehicle alone is told of the devices as a whole', () => {
    const told = found(
      'supply-collapse',
      aboutPlan((plan) => {
        for (const point of plan.power.points)
          Object.assign(point, {
            state: 'no-solution',
            elements: point.elements.filter(({ kind }) => kind !== 'load'),
          });
      }),
    );
    expect(told.length).toBeGreaterThan(0);
    for (const { path } of told) expect(path).toBe('/devices');
  });
});

describe('a supply on a signal', () => {
  test('is told whichever of its ends the link is written from', () => {
    const told = (from: string, to: string) =>
      found(
        'live-end-on-signal',
        aboutContent(({ job }) => {
          job.links.wrong = { from, to };
        }),
      ).map(({ of }) => of);
    expect(told('block.OUT2', 'amp.IN1')).toEqual([['wrong', 'amp.IN1', 'block.OUT2']]);
    expect(told('amp.IN1', 'block.OUT2')).toEqual([['wrong', 'amp.IN1', 'block.OUT2']]);
    expect(told('dsp.OUT1', 'amp.IN1')).toEqual([]);
  });
});

// The usual system is what a part without a word of its supply is made for, whatever the alternator is set to.
test('a part without a word of its supply is held against the supply of a truck, and not of a car', () => {
  const told = (setPoint: string, system?: '24 V') =>
    found(
      'part-not-for-system',
      aboutContent((content) => {
        if (system) content.vehicle['system-voltage'] = system;
        partIn(content, 'generator', 'alternator')['set-point'] = setPoint;
      }),
    ).flatMap(({ of }) => of.filter((id) => id === 'amp'));
  expect(told('16.5 V')).toEqual([]);
  expect(told('28.8 V', '24 V')).toEqual(['amp']);
});

describe('a space whose air gets too warm', () => {
  const { job } = about();
  const heat: PlanHeat = {
    ...{ space: 'well', spaceTitle: 'Side well', zone: 'cargo', outsideC: 50, items: [], lossW: 60 },
    ...{ surfaceM2: 0.5, passesWM2K: 5, fanM3S: 0, openings: [], wallsW: 60, fanW: 0, openingsW: 0 },
    ...{ riseK: 24, airC: 74 },
  };

  // 60 W over 5 W/(m2 K) and 10 K are 1.2 m2.
  test('is helped by a fan, by openings, or by more surface', () => {
    const { remedy, advice = [] } = coolerSpace(job, heat, 60);
    expect(remedy).toMatch(
      /with a fan: write its part, of the kind fan .*; or give it 2 upright openings, .*; or measure its walls/,
    );
    expect(remedy).toMatch(/from 1\.2 m2 on they do alone/);
    expect(advice.map(([line]) => line?.path)).toEqual(['/spaces/well/openings']);
  });

  test('is not helped where the zone is as warm already', () => {
    const { remedy, advice } = coolerSpace(job, heat, 50);
    expect(remedy).toBe('mount it in a cooler zone, or take what its maker allows there');
    expect(advice).toBeUndefined();
  });
});
