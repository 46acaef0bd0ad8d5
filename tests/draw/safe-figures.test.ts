import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figuresDown, figuresUp } from '../../lib/draw/safe-figures.ts';

test.each([
  [104.4, 3, 105, 104],
  [28.98, 3, 29, 28.9],
  [99.96, 3, 100, 99.9],
  [0.7, 3, 0.7, 0.7],
  [0.1 + 0.2, 3, 0.3, 0.3],
  [1234, 2, 1300, 1200],
  [0, 3, 0, 0],
])('%d to %d figures is %d at most and %d at least', (value, figures, up, down) => {
  expect([figuresUp(value, figures), figuresDown(value, figures)]).toEqual([up, down]);
});

test('rounding never leaves the safe side, and never by more than one of the last figure', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), (value) => {
      const [up, down] = [figuresUp(value, 3), figuresDown(value, 3)];
      expect(up).toBeGreaterThanOrEqual(value * (1 - 1e-8));
      expect(down).toBeLessThanOrEqual(value * (1 + 1e-8));
      expect((up - down) / value).toBeLessThan(0.0101);
      expect(`${up}`.replace(/^0\.0*|\./g, '').replace(/0+$/, '').length).toBeLessThanOrEqual(3);
    }),
  );
});
