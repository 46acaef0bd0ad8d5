import { describe, expect, test } from 'vitest';
import { cleanVoltage } from '../../lib/audio/clean-voltage.ts';
import { outsideCheck } from '../outside-check.ts';

const byHand = outsideCheck('audio-by-hand');

describe('what a speaker output gives clean, by its rated power', () => {
  // By hand: 18 W into 4 ohm are the root of 72, 8.485 V.
  test('is the root of power times load', () => {
    const found = cleanVoltage([{ loadOhm: 4, powerW: 18 }]);
    expect(byHand.differs(found?.voltageV.value ?? 0, 6 * Math.SQRT2)).toBeCloseTo(8.48528, 5);
    expect(found).toMatchObject({ powerW: 18, loadOhm: 4 });
  });

  // 30 W into 2 ohm are 7.75 V, less than 18 W into 4 ohm; 40 W are 8.94 V, and more.
  test('is the highest of several, whatever their order', () => {
    const [four, two] = [
      { loadOhm: 4, powerW: 18 },
      { loadOhm: 2, powerW: 30 },
    ] as const;
    for (const powers of [
      [four, two],
      [two, four],
    ])
      expect(cleanVoltage(powers)?.voltageV.value).toBeCloseTo(8.48528, 5);
    expect(cleanVoltage([four, { loadOhm: 2, powerW: 40 }])?.voltageV.value).toBeCloseTo(8.94427, 5);
  });

  test('is not known without one', () => {
    expect(cleanVoltage([])).toBeNull();
  });
});
