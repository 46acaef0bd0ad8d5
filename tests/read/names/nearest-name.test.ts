import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDistance, nearestName, nearNames } from '../../../lib/read/names/nearest-name.ts';

describe('edit distance', () => {
  // The textbook pairs: kitten and sitting, saturday and sunday (Levenshtein distance 3); ca and abc, which tell
  // the unrestricted Damerau-Levenshtein distance, 2, from the restricted one, 3.
  test.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['ca', 'abc', 2],
    ['width', 'widht', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('%s to %s is %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  test('is a metric', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 });
    fc.assert(
      fc.property(word, word, word, (a, b, c) => {
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, b) === 0).toBe(a === b);
        expect(editDistance(a, c)).toBeLessThanOrEqual(editDistance(a, b) + editDistance(b, c));
        expect(editDistance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
    );
  });
});

describe('the nearest name', () => {
  const names = ['width', 'height', 'depth', 'weight', 'left-open', 'issued-on', 'B+', 'GND'];

  test.each([
    ['widht', 'width'],
    ['Width', 'width'],
    ['hieght', 'height'],
    ['left_open', 'left-open'],
    ['issuedOn', 'issued-on'],
    ['b+', 'B+'],
    ['gnd', 'GND'],
    ['B-', null],
    ['colour', null],
    ['', null],
    ['x'.repeat(100_000), null],
  ])('of %s is %s', (wanted, near) => {
    expect(nearestName(wanted, names)).toBe(near);
  });

  test('does not depend on the order of the known ones', () => {
    expect(nearestName('eight', ['weight', 'height'])).toBe('height');
    expect(nearestName('eight', ['height', 'weight'])).toBe('height');
  });

  test('a known name is its own nearest, and the answer is always a known one', () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.string()), (wanted, known) => {
        const near = nearestName(wanted, known);
        expect(near === null || known.includes(near)).toBe(true);
        expect(nearestName(wanted, [...known, wanted])).toBe(wanted);
      }),
    );
  });

  test('nothing is near to nothing', () => {
    expect(nearestName('amp', [])).toBeNull();
  });
});

test('of several that may be meant those come first that begin so, then the nearest', () => {
  const known = ['coaxial-65', 'coaxial-525', 'coaxial-56', 'tweeter-25', 'coax'];
  expect(nearNames('coaxial-5', known)).toEqual(['coaxial-56', 'coaxial-525', 'coax', 'coaxial-65']);
  expect(nearNames('woofer', known)).toEqual([]);
});
