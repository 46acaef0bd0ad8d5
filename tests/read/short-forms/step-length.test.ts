import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseQuantity } from '../../../lib/model/quantity/quantity.ts';
import { steppedLength } from '../../../lib/read/short-forms/step-length.ts';
import { caseCount } from '../../long-run.ts';

test.each([
  ['2 3/4 in', '7/16 in', 2, '3 5/8 in'],
  ['5/8 in', '3/4 in', 1, '1 3/8 in'],
  ['10 in', '3/8 in', -1, '9 5/8 in'],
  ['12 mm', '8.5 mm', 3, '37.5 mm'],
  ['2.5 cm', '5 mm', 1, '3 cm'],
  ['1 ft', '1/2 in', 1, '12 1/2 in'],
  ['1/2"', '3/8"', 1, '7/8 in'],
  // What a tape for inches can't show is written in the decimal unit of the first place.
  ['1 in', '1 mm', 1, '1.03937007874 in'],
])('%s and %s, %i times, is %s', (from, step, times, is) => {
  expect(steppedLength(from, step, times)).toBe(is);
});

test('a text that is no length gives none', () => {
  expect(steppedLength('half an inch', '1 in', 1)).toBeNull();
  expect(steppedLength('1 in', '1', 1)).toBeNull();
});

// 1/64 in is 396.875 um exactly, of 25.4 mm to the inch (NIST SP 811): counted in whole nanometres.
const nanometres = 396_875;
const inches = (parts: number): string => `${Math.floor(parts / 64)} ${parts % 64}/64 in`;

test('each place of a row is where the tape has it, to the last digit', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 4000 }),
      fc.integer({ min: 1, max: 400 }),
      fc.integer({ min: 0, max: 63 }),
      (first, pitch, times) => {
        const text = steppedLength(inches(first), inches(pitch), times) ?? '';
        expect(parseQuantity(text, 'length')).toBe(Number(`${(first + times * pitch) * nanometres}e-9`));
      },
    ),
    { numRuns: caseCount({ all: 2000, some: 200 }) },
  );
});

test('millimetres and their tenths add up to the last digit', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 20_000 }),
      fc.integer({ min: 1, max: 3000 }),
      fc.integer({ min: 0, max: 63 }),
      (first, pitch, times) => {
        const text = steppedLength(`${first / 10} mm`, `${pitch / 10} mm`, times) ?? '';
        expect(parseQuantity(text, 'length')).toBe(Number(`${first + times * pitch}e-4`));
      },
    ),
    { numRuns: caseCount({ all: 2000, some: 200 }) },
  );
});
