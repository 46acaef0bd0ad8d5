import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestWord, slipsBetween, splitWord } from '../../../lib/publish/search/near-words.ts';
import { normalWord } from '../../../lib/publish/search/search-words.ts';

describe('slipsBetween', () => {
  it.each([
    // Worked examples of textbooks: Wagner and Fischer's distance of kitten and sitting, and of Saturday and Sunday.
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    // Two neighbours that changed places are one slip (Damerau, 1964); none is changed twice, so that this is three.
    ['teh', 'the', 1],
    ['ca', 'abc', 3],
    ['', 'abc', 3],
    ['abc', '', 3],
    ['same', 'same', 0],
  ])('of %s and %s are %i', (one, other, slips) => {
    expect(slipsBetween(one, other, 9)).toBe(slips);
  });

  it('are the same both ways, none for the same word alone, never more than the longer word has letters', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 });
    fc.assert(
      fc.property(word, word, (one, other) => {
        const slips = slipsBetween(one, other, 9);
        expect(slipsBetween(other, one, 9)).toBe(slips);
        expect(slips === 0).toBe(one === other);
        expect(slips).toBeLessThanOrEqual(Math.max(one.length, other.length));
      }),
    );
  });

  it('are told as one more than is asked for where there are more', () => {
    expect(slipsBetween('kitten', 'sitting', 2)).toBe(3);
    expect(slipsBetween('a', 'abcdefgh', 2)).toBe(3);
  });
});

const known = new Map([
  ['amplifier', 40],
  ['subwoofer', 20],
  ['processor', 20],
  ['hatchback', 9],
  ['side', 12],
  ['well', 12],
  ['wall', 30],
  ['under', 8],
  ['seat', 8],
  ['150a', 3],
]);

describe('nearestWord', () => {
  it.each([
    ['amplifer', 'amplifier'],
    ['ampilfier', 'amplifier'],
    ['subwofer', 'subwoofer'],
    ['proccesor', 'processor'],
    ['hatchbak', 'hatchback'],
    ['sied', 'side'],
    // Of two that are as near, the one on more pages.
    ['wel', null],
    ['wexl', 'well'],
    ['woll', 'wall'],
  ])('of %s is %s', (typed, meant) => {
    expect(nearestWord(typed, known)).toBe(meant);
  });

  it.each(['cab', 'grommet', 'sxxe', 'amplxxxer'])('of %s is none', (typed) => {
    expect(nearestWord(typed, known)).toBeNull();
  });
});

describe('splitWord', () => {
  it('finds the two known words that were typed as one', () => {
    expect(splitWord('underseat', known, normalWord)).toEqual(['under', 'seat']);
    expect(splitWord('underseats', known, normalWord)).toEqual(['under', 'seat']);
    expect(splitWord('undersofa', known, normalWord)).toBeNull();
    expect(splitWord('seat', known, normalWord)).toBeNull();
  });
});
