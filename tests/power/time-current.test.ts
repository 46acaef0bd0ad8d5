import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { carriesForS } from '../../lib/power/time-current.ts';

/** As a maker prints the least opening times of a slow bolt-in fuse, in no order (invented figures). */
const points = [
  { multiple: 6, seconds: 0.1 },
  { multiple: 1.35, seconds: 60 },
  { multiple: 2, seconds: 2 },
];

describe('how long a fuse carries a current at least', () => {
  // IEC 60269-1, rated current: what the fuse carries continuously without deterioration.
  test('is without end up to its rating, whatever its data', () => {
    for (const multiple of [0, 0.5, 1]) {
      expect(carriesForS(points, multiple)).toBe(Number.POSITIVE_INFINITY);
      expect(carriesForS([], multiple)).toBe(Number.POSITIVE_INFINITY);
    }
    // 0.1 + 0.2 over 0.3 is 1 but for the rounding.
    expect(carriesForS(points, (0.1 + 0.2) / 0.3)).toBe(Number.POSITIVE_INFINITY);
    expect(carriesForS(points, 1.001)).toBe(60);
  });

  test('at a point is the time of that point, just above it that of the next', () => {
    expect(carriesForS(points, 1.35)).toBe(60);
    expect(carriesForS(points, 1.351)).toBe(2);
    expect(carriesForS(points, 2)).toBe(2);
    expect(carriesForS(points, 2.001)).toBe(0.1);
    expect(carriesForS(points, 6)).toBe(0.1);
    // 1.1 x 3 is 3.3 but for the rounding.
    expect(carriesForS([{ multiple: 3.3, seconds: 5 }], 1.1 * 3)).toBe(5);
  });

  test('is not known past the last point, nor without data', () => {
    expect(carriesForS(points, 6.001)).toBeNull();
    expect(carriesForS([], 1.001)).toBeNull();
  });

  test('is never longer for more current, in whatever order the points stand', () => {
    const anyPoints = fc.array(
      fc.record({ multiple: fc.double({ min: 1.1, max: 10, noNaN: true }), seconds: fc.constant(0) }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(anyPoints, fc.double({ min: 1, max: 9, noNaN: true }), (some, multiple) => {
        // A maker's times fall as the current grows.
        const printed = some.map((point) => ({ ...point, seconds: 100 / point.multiple ** 2 }));
        const less = carriesForS(printed, multiple);
        const more = carriesForS(printed.toReversed(), multiple + 1);
        expect(more ?? 0).toBeLessThanOrEqual(less ?? 0);
      }),
    );
  });
});
