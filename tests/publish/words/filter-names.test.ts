import { describe, expect, test } from 'vitest';
import { calculators } from '../../../lib/calculators/index.ts';
import { filterTypeSchema } from '../../../lib/model/vocabulary.ts';
import { spelled, spelledWithin } from '../../../lib/publish/words/words.ts';

/** Linkwitz and Riley are two people, Butterworth and Bessel one each: names keep their capitals and their hyphen. */
const called = ['Butterworth', 'Linkwitz-Riley', 'Bessel'];

describe('filters', () => {
  test('are called after people at the head of a line and within one', () => {
    expect(filterTypeSchema.options.map(spelled)).toEqual(called);
    expect(filterTypeSchema.options.map(spelledWithin)).toEqual(called);
    expect(spelledWithin('fuse-holder')).toBe('fuse holder');
  });

  test('are offered so by every calculator that asks for one', () => {
    const offers = calculators
      .flatMap(({ fields }) => Object.values(fields))
      .flatMap(({ options = [] }) =>
        options.some(({ value }) => value === 'linkwitz-riley') ? [options] : [],
      );
    expect(offers.length).toBeGreaterThanOrEqual(2);
    for (const options of offers) expect(options.map(({ title }) => title)).toEqual(called);
  });
});
