import { describe, expect, test } from 'vitest';
import { passedVoltage } from '../../lib/audio/passed-voltage.ts';
import { outsideCheck } from '../outside-check.ts';

const byHand = outsideCheck('audio-by-hand');

describe('what a line output passes on of its input', () => {
  // By hand: a quarter of 7.2 V is 1.8 V.
  test('is the share of what arrives', () => {
    const { value } = passedVoltage({ arrivingV: 7.2, share: 0.25, mostV: null });
    expect(byHand.differs(value, 1.8)).toBeCloseTo(1.8, 9);
  });

  // By hand: a quarter of 24 V is 6 V, and the output gives 5 V.
  test('is no more than the output gives, and is not lifted to that', () => {
    expect(passedVoltage({ arrivingV: 24, share: 0.25, mostV: 5 }).value).toBe(5);
    expect(passedVoltage({ arrivingV: 7.2, share: 0.25, mostV: 5 }).value).toBeCloseTo(1.8, 9);
  });
});
