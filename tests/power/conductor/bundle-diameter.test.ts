import { describe, expect, test } from 'vitest';
import { bundleDiameterM, outsideDiameterM } from '../../../lib/power/conductor/bundle-diameter.ts';
import { chooseCovering, heatShrink } from '../../../lib/power/conductor/covering-size.ts';
import { outsideCheck } from '../../outside-check.ts';
import { usualFit } from '../usual-rules.ts';

const packed = outsideCheck('packed-circles');
const inStandard = outsideCheck('wire-outside');

function metres(result: ReturnType<typeof outsideDiameterM>): number {
  if ('fault' in result) throw new Error(result.message);
  return result.value;
}

describe('the diameter of a bundle', () => {
  // Densest known packings of n equal circles in a circle, diameter over that of one (Graham, Lubachevsky, Nurmela
  // and Ostergard, Discrete Mathematics 181, 1998).
  test.each([
    [1, 1],
    [2, 2],
    [3, 2.1547],
    [4, 2.4142],
    [5, 2.7013],
    [6, 3],
    [7, 3],
    [8, 3.3048],
    [9, 3.6131],
    [10, 3.813],
    [12, 4.0296],
    [14, 4.3284],
    [19, 4.8637],
  ])('of %s equal wires is at least the densest packing, and at most 15 %% more', (n, densest) => {
    const ratio = metres(bundleDiameterM(Array.from({ length: n }, () => 0.004))) / 0.004;
    packed.differs(ratio, densest);
    expect(ratio).toBeGreaterThan(densest - 1e-4);
    expect(ratio).toBeLessThan(densest * 1.15);
  });

  test('is never less than its two thickest side by side', () => {
    expect(metres(bundleDiameterM([0.012, 0.01, 0.001]))).toBeCloseTo(0.022, 12);
  });

  test('tells bad input', () => {
    expect(bundleDiameterM([])).toHaveProperty('fault');
    expect(bundleDiameterM([0.01, -0.01])).toHaveProperty('fault');
    expect(outsideDiameterM(0)).toHaveProperty('fault');
  });
});

// ISO 6722-1, thick wall, greatest outside diameters (from memory): 1.5 mm2 3.0 mm, 6 mm2 5.0 mm, 16 mm2 8.3 mm,
// 35 mm2 11.0 mm.
test.each([
  [1.5, 0.003],
  [6, 0.005],
  [16, 0.0083],
  [35, 0.011],
])('a conductor of %s mm2 is about %s m across', (areaMm2, standardM) => {
  expect(
    Math.abs(inStandard.differs(metres(outsideDiameterM(areaMm2)), standardM) / standardM - 1),
  ).toBeLessThan(0.15);
});

describe('a covering', () => {
  const sizes = [
    heatShrink('hs-12', 0.012, 3),
    heatShrink('hs-19', 0.019, 3),
    heatShrink('hs-19-2', 0.019, 2),
  ];

  test('goes over the thickest part and closes on the thinnest', () => {
    const given = { thickestM: 0.014, thinnestM: 0.009, lengthM: 0.05 };
    expect(chooseCovering(given, sizes, usualFit)).toMatchObject({ chosen: { part: 'hs-19' } });
  });

  test('is refused with the reason', () => {
    expect(
      chooseCovering({ thickestM: 0.03, thinnestM: 0.02, lengthM: 0.05 }, sizes, usualFit),
    ).toMatchObject({
      chosen: null,
      reason: expect.stringContaining('wide'),
    });
    expect(
      chooseCovering({ thickestM: 0.014, thinnestM: 0.004, lengthM: 0.05 }, sizes, usualFit),
    ).toMatchObject({
      chosen: null,
      reason: expect.stringContaining('ratio'),
    });
    const short = sizes.map((size) => ({ ...size, stockM: 0.01 }));
    expect(
      chooseCovering({ thickestM: 0.01, thinnestM: 0.008, lengthM: 0.05 }, short, usualFit),
    ).toMatchObject({
      chosen: null,
      reason: expect.stringContaining('shelf'),
    });
    expect(
      chooseCovering({ thickestM: -1, thinnestM: 0.004, lengthM: 0.05 }, sizes, usualFit),
    ).toHaveProperty('fault');
  });
});
