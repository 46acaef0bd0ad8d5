import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import { type Ampacity, ampacity, type RunZone } from '../../../lib/power/conductor/ampacity.ts';
import { outsideCheck } from '../../outside-check.ts';
import { usualRules } from '../usual-rules.ts';

const onChart = outsideCheck('ampacity-chart');

const open: RunZone = { zone: 'bench', ambientC: 30, engineSpace: false, covered: false, bundleCount: 1 };
const cabin: RunZone = { ...open, zone: 'cabin', ambientC: 50 };
const bay: RunZone = { ...open, zone: 'engine-bay', ambientC: 85, engineSpace: true };

function of(
  awg: string,
  insulationC: number | null,
  zones: readonly RunZone[],
  material: 'copper' | 'copper-clad-aluminium' = 'copper',
): Ampacity {
  const result = ampacity({ areaMm2: awgAreaMm2(awg), material, insulationC }, zones, usualRules);
  if (isFault(result)) throw new Error(result.message);
  return result;
}
const stopA = (...given: Parameters<typeof of>) => of(...given).ampacityA.value;

describe('ampacity', () => {
  // A published marine chart of 33 CFR 183.425 Table 5 for 105 C insulation inside engine spaces; its 30 A for
  // 14 AWG is 29.75 A rounded up, which we round down.
  test.each([
    ['18', 17],
    ['16', 21],
    ['14', 29],
    ['12', 38],
    ['10', 51],
    ['8', 68],
    ['6', 102],
    ['4', 136],
    ['3', 153],
    ['2', 178],
    ['1', 208],
    ['1/0', 242],
    ['2/0', 280],
    ['3/0', 327],
    ['4/0', 378],
  ])('of %s AWG at 105 C in an engine space is %s A', (awg, amperes) => {
    expect(onChart.differs(stopA(awg, 105, [bay]), amperes)).toBe(amperes);
  });

  test('at 30 C is the figure of the table, at 50 C less', () => {
    expect(stopA('4', 105, [open])).toBe(160);
    // sqrt(55 / 75) = 0.856 is above the published 0.85: 136 A.
    expect(stopA('4', 105, [cabin])).toBe(136);
    // sqrt(10 / 30) = 0.577 is under the published 0.58: 105 A * 0.577 = 60.6 A.
    expect(stopA('4', 60, [cabin])).toBe(60);
  });

  test('in the engine bay stops at the published figure and cautions at the true ambient', () => {
    const run = of('4', 105, [cabin, bay]);
    expect(run.ampacityA.value).toBe(136);
    // sqrt(20 / 75) = 0.516: 82.6 A.
    expect(run.cautionA.value).toBe(82);
    expect(
      run.limits.map(({ zone, stopGoverned, cautionGoverned }) => [zone, stopGoverned, cautionGoverned]),
    ).toEqual([
      ['cabin', ['engine-space'], ['engine-space']],
      ['engine-bay', ['engine-space'], ['ambient']],
    ]);
  });

  test('loom and bundling lower the caution figure alone', () => {
    const run = of('8', 105, [{ ...open, covered: true, bundleCount: 3 }]);
    expect([run.ampacityA.value, run.cautionA.value]).toEqual([80, 44]); // 80 * 0.8 * 0.7 = 44.8
    expect(run.cautionA.trace.mark).toBe('mem');
  });

  // ABYC E-11's factors for bundles as boat-cable tables print them: 80, 56, 48 and 40 A for 8 AWG at 105 C, and
  // 0.40 from 25 conductors up.
  test.each([
    [2, 80],
    [3, 56],
    [6, 48],
    [7, 40],
    [24, 40],
    [25, 32],
  ])('a bundle of %s loaded conductors cautions at %s A', (bundleCount, amperes) => {
    expect(of('8', 105, [{ ...open, bundleCount }]).cautionA.value).toBe(amperes);
  });

  test('of insulation rated at or below the ambient is nothing', () => {
    expect(stopA('4', 80, [bay])).toBe(0);
    expect(stopA('4', 105, [cabin, { ...bay, zone: 'exhaust', ambientC: 125 }])).toBe(0);
    expect(stopA('4', 50, [open])).toBe(0);
    expect(stopA('24', 60, [{ ...open, ambientC: 70 }])).toBe(0);
  });

  test('of unmarked insulation is that of 60 C', () => {
    expect(stopA('4', null, [open])).toBe(105);
  });

  test('of copper-clad aluminium is sqrt(0.62) of copper, rounded down', () => {
    // The trade quotes 0.79 for sqrt(0.62) = 0.7874 (from memory); 160 * 0.7874 = 125.98.
    expect(stopA('4', 105, [open], 'copper-clad-aluminium')).toBe(125);
  });

  test('of a thin wire is never above that of 18 AWG in the same place', () => {
    for (const insulationC of [60, 75, 90, 105])
      for (const ambientC of [30, 50, 70, 85])
        for (const awg of ['20', '22', '24'])
          expect(stopA(awg, insulationC, [{ ...open, ambientC }])).toBeLessThanOrEqual(
            stopA('18', insulationC, [{ ...open, ambientC }]),
          );
  });

  test('under 18 AWG is the ceiling of the trade, and under 24 AWG unknown', () => {
    expect(stopA('22', 105, [cabin])).toBe(5);
    expect(
      ampacity({ areaMm2: 0.1, material: 'copper', insulationC: 105 }, [open], usualRules),
    ).toHaveProperty('fault');
  });

  test('never counts on a cooler place, and refuses a run without zones', () => {
    expect(stopA('4', 105, [{ ...open, ambientC: 0 }])).toBe(160);
    expect(ampacity({ areaMm2: 10, material: 'copper', insulationC: 105 }, [], usualRules)).toHaveProperty(
      'fault',
    );
    expect(
      ampacity(
        { areaMm2: 10, material: 'copper', insulationC: 105 },
        [{ ...open, ambientC: Number.NaN }],
        usualRules,
      ),
    ).toHaveProperty('fault');
  });
});
