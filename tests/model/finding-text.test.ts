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
