import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseQuantity } from '../../../lib/model/quantity/quantity.ts';
import { tapeText } from '../../../lib/model/quantity/tape-text.ts';

test.each([
  [0.0127, 'inch', '1/2 in'],
  [24.9375 * 0.0254, 'inch', '24 15/16 in'],
  [-0.0254, 'inch', '-1 in'],
  [0, 'inch', '0 in'],
  [0, 'millimetre', '0 mm'],
  [0.012, 'inch', '12 mm'],
  [0.1397, 'millimetre', '139.7 mm'],
  [24.9375 * 0.0254, 'millimetre', '24 15/16 in'],
  [0.0123456, 'millimetre', '12.3456 mm'],
] as const)('%d m is written in a shop of %s as %s', (lengthM, units, text) => {
  expect(tapeText(lengthM, units)).toBe(text);
});

test('any length is read back to a thousandth of a hair', () => {
  const lengths = fc.oneof(
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.integer({ min: -3000, max: 3000 }).map((count) => (count / 32) * 0.0254),
  );
  fc.assert(
    fc.property(lengths, fc.constantFrom('inch', 'millimetre'), (lengthM, units) => {
      const read = parseQuantity(tapeText(lengthM, units), 'length');
      expect(Math.abs(Number(read) - lengthM)).toBeLessThanOrEqual(1.01e-9);
    }),
  );
});
