import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findingFigure, isFigure } from '../../lib/model/finding-text.ts';

describe('the figure of a finding', () => {
  test('has four digits that count, and its unit', () => {
    expect(findingFigure(0.458_37, 'V')).toBe('0.4584 V');
    expect(findingFigure(12_345.6, 'A')).toBe('12350 A');
    expect(findingFigure('two poles')).toBe('two poles');
    expect(findingFigure(3)).toBe('3');
  });
});

describe('a value and its limit', () => {
  test('are rounded away from each other', () => {
    // 0.45832 is over 0.458310, and 29.996 under 30.0004: to the nearest both pairs would read as equal.
    expect(findingFigure(0.458_32, 'V', 0.458_31)).toBe('0.4584 V');
    expect(findingFigure(0.458_31, 'V', 0.458_32)).toBe('0.4583 V');
    expect(findingFigure(29.996, 'Hz', 30.0004)).toBe('29.99 Hz');
    expect(findingFigure(30.0004, 'Hz', 29.996)).toBe('30.01 Hz');
    expect(isFigure('0.4584 V', 0.458_32, 'V', 0.458_31)).toBe(true);
  });

  test('are never told as nearer than they are, and never by more than a step off', () => {
    const values = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(values, values, (value, limit) => {
        const told = Number(findingFigure(value, '', limit)) - Number(findingFigure(limit, '', value));
        const noise = 1e-8 * Math.max(value, limit);
        if (value > limit) expect(told).toBeGreaterThanOrEqual(value - limit - noise);
        if (value < limit) expect(told).toBeLessThanOrEqual(value - limit + noise);
        expect(Math.abs(told - (value - limit))).toBeLessThanOrEqual(2.1e-3 * Math.max(value, limit));
      }),
    );
  });
});

describe('a value that was written down', () => {
  test.each([
    ['0.4584 V', 0.458_37, 'V'],
    ['0.458 V', 0.458_37, 'V'],
    ['458 mV', 0.458_37, 'V'],
    ['3.16 kA', 3155, 'A'],
    ['13 5/8 in', 0.3461, 'm'],
    ['346 mm', 0.3461, 'm'],
    ['3.32 %', 0.033_21, '1'],
    ['3.32 %', 0.033_21, ''],
    ['-0.02 V', -0.02, 'V'],
    ['two poles', 'two poles', ''],
  ])('%s is what a finding of %s %s has', (written, value, unit) => {
    expect(isFigure(written, value, unit)).toBe(true);
  });

  test.each([
    // One in the last digit that is written.
    ['0.4585 V', 0.458_37, 'V'],
    ['0.459 V', 0.458_37, 'V'],
    ['0.457 V', 0.458_37, 'V'],
    ['13 11/16 in', 0.3461, 'm'],
    // To its last digit right, but nobody read 0.5 V off a list that prints 0.4584 V.
    ['0.5 V', 0.458_37, 'V'],
    ['3.2 kA', 3155, 'A'],
    // Another dimension, none at all, no number.
    ['0.4584 A', 0.458_37, 'V'],
    ['0.4584', 0.458_37, 'V'],
    ['about half a volt', 0.458_37, 'V'],
    ['three poles', 'two poles', ''],
  ])('%s is not what a finding of %s %s has', (written, value, unit) => {
    expect(isFigure(written, value, unit)).toBe(false);
  });

  test('as the list prints it always holds, and a tenth more never does', () => {
    const values = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(values, fc.constantFrom('A', 'V', 'm', 'ohm', ''), (value, unit) => {
        expect(isFigure(findingFigure(value, unit), value, unit)).toBe(true);
        expect(isFigure(findingFigure(value, unit), value * 1.1, unit)).toBe(false);
      }),
    );
  });
});
