import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import type { RunZone } from '../../../lib/power/conductor/ampacity.ts';
import { chooseConductor } from '../../../lib/power/conductor/conductor-choice.ts';
import { conductorTemperatureC } from '../../../lib/power/conductor/conductor-temperature.ts';
import { usualRules } from '../usual-rules.ts';

const zone = (name: string, ambientC: number, lengthM?: number): RunZone => ({
  zone: name,
  ambientC,
  engineSpace: false,
  covered: false,
  bundleCount: 1,
  ...(lengthM === undefined ? {} : { lengthM }),
});
const celsius = (...zones: readonly RunZone[]) => conductorTemperatureC(zones, usualRules).value;

describe('the temperature of a conductor for its resistance', () => {
  test('is the assumed one where no zone is hotter', () => {
    expect(celsius(zone('cabin', 50, 3), zone('cargo', 50, 1))).toBe(60);
  });

  test('is never under the ambient of the zone that it lies in, by the length in each', () => {
    expect(celsius(zone('engine-bay', 85, 1))).toBe(85);
    // 1 m at 85 C and 4 m at 60 C: (85 + 4 * 60) / 5 = 65 C.
    expect(celsius(zone('engine-bay', 85, 1), zone('sill', 50, 4))).toBe(65);
  });

  test('counts zones of no told length alike, and is the assumed one where there is none', () => {
    expect(celsius(zone('engine-bay', 85), zone('sill', 50))).toBe(72.5);
    expect(celsius()).toBe(60);
  });

  // IEC 60028: 0.00393 per K at 20 C. A metre of copper at 85 C has 1 + 0.00393 * 65 = 1.25545 times its resistance at
  // 20 C, one at 60 C 1.1572 times; NBS Handbook 100: 4 AWG 0.2485 ohm per 1,000 ft, 0.8153 mohm per metre.
  test('a way through the engine bay drops what both its stretches drop', () => {
    const zones = [zone('engine-bay', 85, 1), zone('sill', 50, 4)];
    const cable = { part: 'cable', size: awgSize('4'), material: 'copper', insulationC: 105 } as const;
    const duty = { fuseA: 1, currentA: 100, lengthM: 5, otherOhm: 0, mostDropV: 10, zones };
    const choice = chooseConductor(duty, [cable], { ...usualRules, strandedFactor: 1 });
    if (isFault(choice)) throw new Error(choice.message);
    const byHandV = 100 * 0.8153e-3 * (1 * 1.25545 + 4 * 1.1572);
    expect(Math.abs((choice.chosen?.dropV.value ?? 0) / byHandV - 1)).toBeLessThan(0.0005);
  });
});
