import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import type { Traced } from '../../../lib/model/trace.ts';
import { outsideDiameterM } from '../../../lib/power/conductor/bundle-diameter.ts';
import { conductorTemperatureC } from '../../../lib/power/conductor/conductor-temperature.ts';
import { chooseCovering, heatShrink } from '../../../lib/power/conductor/covering-size.ts';
import { ohmPerM } from '../../../lib/power/conductor/resistance.ts';
import { redone } from '../../publish/workings/redo.ts';
import { usualFit, usualHouseRules, usualRules } from '../usual-rules.ts';

function figure<T extends Traced<number>>(found: T | { readonly message: string }): T {
  if ('message' in found) throw new Error(found.message);
  return found;
}

describe('the outside of a conductor', () => {
  // ISO 6722-1, thick wall, nominal, from memory: by area in mm2, the wall in mm. Seven strands fill 7/9 of their circle.
  test.each([
    [0.5, 0.6],
    [1.5, 0.6],
    [1.51, 0.7],
    [2.5, 0.7],
    [2.51, 0.8],
    [6, 0.8],
    [16, 1],
    [35, 1.3],
    [70, 1.5],
    [120, 1.6],
  ])('of %f mm2 has a wall of %f mm', (areaMm2, wallMm) => {
    const found = figure(outsideDiameterM(areaMm2));
    const coreMm = Math.sqrt((4 * areaMm2 * 9) / (7 * Math.PI));
    expect(1e3 * found.value - coreMm).toBeCloseTo(2 * wallMm, 9);
    expect(redone(found.trace)).toBeCloseTo(found.value, 9);
  });
});

describe('the resistance of a conductor', () => {
  // IEC 60028: 1/58 ohm mm2/m at 20 C and 0.00393 per K: 10 m of 10 mm2 have 17.24 mohm, and 1.1572 times that at 60 C.
  test('is that of its metal, area and temperature', () => {
    const copper = { areaMm2: 10, material: 'copper', solid: true } as const;
    expect(10 * figure(ohmPerM(copper, 20, usualRules)).value).toBeCloseTo(10 / 58 / 10, 9);
    const warm = figure(ohmPerM(copper, 60, usualRules));
    expect(10 * warm.value).toBeCloseTo((10 / 58 / 10) * 1.1572, 9);
    expect(redone(warm.trace)).toBeCloseTo(warm.value, 9);
    expect(warm.trace.mark).toBe('cp');
    expect(warm.trace.inputs.find(({ name }) => name === 'A')).toMatchObject({ value: 10, unit: 'mm2' });
  });

  // From memory: copper-clad aluminium conducts 62 % as well as copper, and rises by about 0.0040 per K.
  test('of copper-clad aluminium is 1/0.62 times that of copper, and warms by its own coefficient', () => {
    const at = (celsius: number, material: 'copper' | 'copper-clad-aluminium') =>
      figure(ohmPerM({ areaMm2: 10, material }, celsius, usualRules));
    expect(at(20, 'copper-clad-aluminium').value / at(20, 'copper').value).toBeCloseTo(1 / 0.62, 6);
    expect(at(60, 'copper-clad-aluminium').value / at(20, 'copper-clad-aluminium').value).toBeCloseTo(
      1.16,
      6,
    );
    expect(at(60, 'copper-clad-aluminium').trace.mark).toBe('mem');
    const measured = { areaMm2: 10, material: 'copper', measuredOhmPerM: 0.002 } as const;
    expect(figure(ohmPerM(measured, 60, usualRules)).value).toBeCloseTo(0.002 * 1.1572, 9);
  });
});

describe('the temperature of a conductor', () => {
  const zone = (ambientC: number, lengthM?: number) => ({
    ...{ zone: `at ${ambientC}`, ambientC, engineSpace: false, covered: false, bundleCount: 1 },
    ...(lengthM !== undefined && { lengthM }),
  });

  test('is the mean of its stretches by their lengths, which its working lists', () => {
    const found = conductorTemperatureC([zone(85, 1), zone(50, 3), zone(125, 0)], usualRules);
    // 1 m at 85 C and 3 m at the 60 C of the house: 66.25 C.
    expect(found.value).toBeCloseTo(66.25, 9);
    expect(redone(found.trace)).toBeCloseTo(66.25, 9);
    expect(found.trace.inputs.some(({ value }) => value === 'at 125')).toBe(false);
  });

  test('counts stretches of no told length alike', () => {
    expect(conductorTemperatureC([zone(85), zone(50)], usualRules).value).toBe(72.5);
    expect(conductorTemperatureC([], usualRules).value).toBe(60);
  });
});

describe('a covering', () => {
  const over = { thickestM: 0.01, thinnestM: 0.006, lengthM: 0.05 };

  test('is the smallest of those that fit, and of two alike the first by name, however they are listed', () => {
    const sizes = [
      heatShrink('d', 0.019, 4),
      heatShrink('c', 0.0126, 3),
      heatShrink('b', 0.0126, 3),
      heatShrink('a', 0.024, 6),
    ];
    for (const listed of [sizes, sizes.toReversed()]) {
      const found = chooseCovering(over, listed, usualFit);
      expect(isFault(found) || found.chosen?.part).toBe('b');
    }
  });

  test('closes to what it is supplied with over its ratio', () => {
    expect(heatShrink('a', 0.024, 3).closedM).toBeCloseTo(0.008, 12);
  });
});

test('what a form of fuse interrupts where its maker is silent is the rule of the shop for that form', () => {
  const { formInterruptA } = usualRules;
  for (const form of ['micro-blade', 'maxi-blade', 'large-bolt-in'] as const)
    expect(formInterruptA[form]).toBe(usualHouseRules[`interrupt-${form}`].value);
  expect(formInterruptA['maxi-blade']).toBeGreaterThanOrEqual(1000);
});
