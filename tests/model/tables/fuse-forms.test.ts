import { describe, expect, test } from 'vitest';
import { bladeColour, fuseFormIds, fuseForms } from '../../../lib/model/tables/fuse-forms.ts';
import { publishedRows } from './published.ts';

const formOf: Readonly<Record<string, string>> = {
  'mini blade': 'mini-blade',
  'standard blade': 'standard-blade',
  'maxi blade': 'maxi-blade',
  'bolt-in 30 mm': 'bolt-in-30mm',
  'small bolt-in': 'small-bolt-in',
  'large bolt-in': 'large-bolt-in',
  'bolt-in 51 mm': 'bolt-in-51mm',
  'low-profile mini blade': 'low-profile-mini-blade',
  'micro blade (two-leg)': 'micro-blade',
};

describe('fuse forms', () => {
  // ISO 8820-3 and -5, trade practice: the ratings commonly made.
  test.each(publishedRows('fuse-ratings.csv'))(
    '%s has the ratings that are made',
    (name = '', _standard, ratings = '') => {
      const id = fuseFormIds.find((one) => one === formOf[name]);
      expect(id && fuseForms[id].ratingsA).toEqual(ratings.split(';').map(Number));
    },
  );

  test('are all published, but Class T', () => {
    expect(publishedRows('fuse-ratings.csv')).toHaveLength(fuseFormIds.length - 1);
  });

  // UL 248-15, from memory: up to 1,200 A; what is sold for batteries ends at 400 A. Every rating goes up.
  test('has the ratings of Class T in order', () => {
    const { ratingsA, standardMark } = fuseForms['class-t'];
    expect(standardMark).toBe('mem');
    expect(ratingsA.every((ratingA, k) => ratingA > (ratingsA[k - 1] ?? 0) && ratingA <= 1200)).toBe(true);
  });

  // ISO 8820-3 body colours of mini and standard blades.
  test.each(publishedRows('blade-fuse-colours.csv'))('a standard blade of %s A is %s', (rating, colour) => {
    expect(bladeColour('standard-blade', Number(rating))).toBe(colour);
  });

  test('tells no colour where another series holds', () => {
    expect(bladeColour('maxi-blade', 30)).toBeNull();
    // Published for mini and standard blades alone.
    expect(bladeColour('micro-blade', 10)).toBeNull();
    expect(bladeColour('low-profile-mini-blade', 10)).toBeNull();
    expect(bladeColour('large-bolt-in', 100)).toBeNull();
  });
});
