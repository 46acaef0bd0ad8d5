import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { ampacityCitation } from '../../../lib/model/tables/ampacity.ts';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import type { Traced } from '../../../lib/model/trace.ts';
import { ampacity, type RunZone, type ZoneLimit } from '../../../lib/power/conductor/ampacity.ts';
import { usualRules } from '../usual-rules.ts';

const open: RunZone = { zone: 'bench', ambientC: 30, engineSpace: false, covered: false, bundleCount: 1 };
const bay: RunZone = { ...open, zone: 'engine-bay', ambientC: 85, engineSpace: true };

function zoneOf(
  awg: string,
  insulationC: number,
  zone: RunZone,
  material: 'copper' | 'copper-clad-aluminium' = 'copper',
): ZoneLimit {
  const result = ampacity({ areaMm2: awgAreaMm2(awg), material, insulationC }, [zone], usualRules);
  const [first] = isFault(result) ? [] : result.limits;
  if (!first) throw new Error('No ampacity was found.');
  return first;
}

const inputs = ({ trace }: Traced<number>) =>
  trace.inputs.map(({ name, value, unit }) => [
    name,
    typeof value === 'number' ? Number(value.toFixed(4)) : value,
    unit,
  ]);

describe('the working of an ampacity', () => {
  // 33 CFR 183.425, Table 5: 4 AWG at 105 C carries 160 A; in an engine space 0.85 of it.
  test('tells the row, the insulation, the ambient and each factor that counts', () => {
    const { stopA, cautionA } = zoneOf('4', 105, bay);
    const base = [
      ['table', 160, 'A'],
      ['row', '4 AWG', ''],
      ['rated', 105, 'C'],
      ['Tins', 105, 'C'],
      ['Tamb', 85, 'C'],
      ['zone', 'engine-bay', ''],
    ];
    expect(inputs(stopA)).toEqual([...base, ['kEngineSpace', 0.85, '']]);
    expect(stopA.trace).toMatchObject({
      rule: 'ampacity',
      formula: 'table * kEngineSpace, rounded down',
      citation: ampacityCitation,
    });
    expect(stopA.trace.mark).toBeUndefined();
    // sqrt((105 - 85) / (105 - 30)) stands in the place of the published factor.
    expect(inputs(cautionA)).toEqual([...base, ['kAmbient', 0.5164, '']]);
    expect(cautionA.trace).toMatchObject({
      formula: 'table * kAmbient, rounded down; kAmbient = sqrt((Tins - Tamb) / (Tins - 30))',
      mark: 'cp',
    });
  });

  test('tells no factor that lowers nothing', () => {
    for (const figure of [zoneOf('4', 105, open).stopA, zoneOf('4', 105, open).cautionA]) {
      expect(figure.trace.formula).toBe('table, rounded down');
      expect(figure.trace.inputs.map(({ name }) => name)).toEqual([
        'table',
        'row',
        'rated',
        'Tins',
        'Tamb',
        'zone',
      ]);
      expect(figure.trace.mark).toBeUndefined();
    }
    expect(zoneOf('4', 105, open)).toMatchObject({ stopGoverned: [], cautionGoverned: [] });
  });

  test('marks what is from memory before what is common practice', () => {
    const marks = (zone: RunZone, material?: 'copper-clad-aluminium') => {
      const { stopA, cautionA } = zoneOf('4', 105, zone, material);
      return [stopA.trace.mark, cautionA.trace.mark];
    };
    expect(marks({ ...open, covered: true })).toEqual([undefined, 'cp']);
    expect(marks({ ...open, bundleCount: 3 })).toEqual([undefined, 'mem']);
    expect(marks({ ...open, covered: true, bundleCount: 3 })).toEqual([undefined, 'mem']);
    expect(marks({ ...open, ambientC: 40 })).toEqual(['cp', 'cp']);
    expect(marks(open, 'copper-clad-aluminium')).toEqual(['mem', 'mem']);
    expect(zoneOf('4', 105, open, 'copper-clad-aluminium').stopA.trace.formula).toMatch(
      /; kCCA = sqrt\(0\.62\)/,
    );
  });

  // Loom or carpet: 0.8, common practice; three in a bundle: 0.70, from memory.
  test('of loom and bundling names both as what governs', () => {
    const { stopGoverned, cautionGoverned, cautionA } = zoneOf('4', 105, {
      ...bay,
      covered: true,
      bundleCount: 3,
    });
    expect(stopGoverned).toEqual(['engine-space']);
    expect(cautionGoverned).toEqual(['ambient', 'covered', 'bundle']);
    expect(inputs(cautionA).slice(6)).toEqual([
      ['kAmbient', 0.5164, ''],
      ['kCovered', 0.8, ''],
      ['kBundle', 0.7, ''],
    ]);
    // In an engine space at 50 C, where the published factor is the lower one, loom alone does not bring the ambient in.
    expect(zoneOf('4', 105, { ...bay, ambientC: 50, covered: true }).cautionGoverned).toEqual([
      'engine-space',
      'covered',
    ]);
  });

  test('of a thin wire tells the ceiling of its size and what 18 AWG carries there', () => {
    const { stopA, stopGoverned, cautionGoverned } = zoneOf('22', 105, bay);
    // 18 AWG at 105 C: 20 A, of which 0.85 are 17 A in an engine space.
    expect(inputs(stopA)).toEqual([
      ['size', '22 AWG', ''],
      ['ceiling', 5, 'A'],
      ['18 AWG', 17, 'A'],
      ['zone', 'engine-bay', ''],
    ]);
    expect(stopA.trace).toMatchObject({ rule: 'ampacity', mark: 'cp' });
    expect(stopGoverned).toEqual(['thin-wire', 'engine-space']);
    expect(cautionGoverned).toEqual(['thin-wire', 'ambient']);
    expect(zoneOf('22', 105, { ...open, bundleCount: 3 }).cautionA.trace.mark).toBe('mem');
  });

  test('of insulation that is no warmer than its place says why it carries nothing', () => {
    const { stopA, stopGoverned, cautionGoverned } = zoneOf('4', 75, { ...open, ambientC: 75 });
    expect(stopA.value).toBe(0);
    expect(inputs(stopA)).toEqual([
      ['Tins', 75, 'C'],
      ['Tamb', 75, 'C'],
      ['zone', 'bench', ''],
    ]);
    expect(stopA.trace).toMatchObject({ rule: 'ampacity', citation: ampacityCitation });
    expect([stopGoverned, cautionGoverned]).toEqual([['insulation'], ['insulation']]);
    // sqrt(1 / 45) of 125 A is 18.6 A.
    expect(zoneOf('4', 75, { ...open, ambientC: 74 })).toMatchObject({
      stopA: { value: 18 },
      stopGoverned: ['ambient'],
    });
  });
});

describe('the factor of an engine space', () => {
  // The table's 1.00 for 200 C is doubtful: sqrt(150 / 170) = 0.939 of 180 A is 169.1 A.
  test('that is doubtful counts no higher than the ambient of 50 C that it stands for, with its mark', () => {
    const { stopA } = zoneOf('4', 200, bay);
    expect(stopA.value).toBe(169);
    expect(stopA.trace.mark).toBe('mem');
    // 0.58 for 60 C is a printed one, though sqrt(10 / 30) is a hair lower: 174 A of 300 A.
    expect(zoneOf('4/0', 60, { ...bay, ambientC: 50 }).stopA.value).toBe(174);
  });

  test('stands in outside of one from 50 C up, where it is the lower', () => {
    const governed = (insulationC: number, ambientC: number) =>
      zoneOf('4', insulationC, { ...open, ambientC }).stopGoverned;
    expect(governed(105, 49)).toEqual(['ambient']);
    expect(governed(105, 50)).toEqual(['engine-space']);
    // sqrt(35 / 75) = 0.683 is below 0.85.
    expect(governed(105, 70)).toEqual(['ambient']);
  });
});

test('a bundle larger than any of the rules counts as the largest of them', () => {
  const rules = {
    ...usualRules,
    bundleFactors: [
      { upTo: 2, factor: 1 },
      { upTo: 6, factor: 0.6 },
    ],
  };
  const of = (bundleCount: number) => {
    const found = ampacity(
      { areaMm2: awgAreaMm2('4'), material: 'copper', insulationC: 105 },
      [{ ...open, bundleCount }],
      rules,
    );
    return isFault(found) ? null : found.cautionA.value;
  };
  expect([of(2), of(6), of(9)]).toEqual([160, 96, 96]);
});

test('of a run the worst zone counts, wherever it stands; each figure by itself', () => {
  const copper = { areaMm2: awgAreaMm2('4'), material: 'copper', insulationC: 105 } as const;
  const covered = { ...open, zone: 'carpet', covered: true };
  for (const zones of [
    [open, bay, covered],
    [bay, covered, open],
    [covered, open, bay],
  ]) {
    const found = ampacity(copper, zones, usualRules);
    if (isFault(found)) throw new Error(found.message);
    expect([found.ampacityA.value, found.cautionA.value]).toEqual([136, 82]);
    expect(found.limits.map(({ zone }) => zone)).toEqual(zones.map(({ zone }) => zone));
  }
  // Of two alike the first is named.
  const twice = ampacity(copper, [{ ...open, zone: 'first' }, open], usualRules);
  if (isFault(twice)) throw new Error(twice.message);
  expect(twice.ampacityA.trace.inputs).toContainEqual({ name: 'zone', value: 'first', unit: '' });
});

test.each([
  [{ areaMm2: 0 }, [open], ['area']],
  [{ areaMm2: -1 }, [open], ['area']],
  [{ areaMm2: 0.1 }, [open], ['area']],
  [{}, [], ['zones']],
  [{}, [{ ...open, bundleCount: Number.NaN }], ['bench']],
  [{}, [{ ...open, ambientC: Number.POSITIVE_INFINITY, bundleCount: Number.POSITIVE_INFINITY }], ['bench']],
] as const)('%j over %j is refused, naming what is wrong', (conductor, zones, of) => {
  const found = ampacity(
    { areaMm2: 21, material: 'copper', insulationC: 105, ...conductor },
    [...zones],
    usualRules,
  );
  expect(isFault(found) ? found.of : null).toEqual(of);
});
