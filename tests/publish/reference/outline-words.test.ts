import { describe, expect, it } from 'vitest';
import { outlineWords, sizeWords, soldThicknessIn } from '../../../lib/publish/reference/outline-words.ts';

const at = (xM: number, yM: number, bulge = 0) => ({ xM, yM, bulge });
const box = { widthM: 0.6, heightM: 0.4 };
const rectangle = [at(0, 0), at(0.6, 0), at(0.6, 0.4), at(0, 0.4)];

describe('outlineWords', () => {
  it.each([
    ['Rectangle', rectangle, []],
    ['Rectangle, with cut-outs', rectangle, [[]]],
    ['Rectangle', rectangle.map(({ xM, yM }) => at(xM - 0.1, yM + 2)), []],
    ['Straight edges, 4 corners', [at(0, 0), at(0.6, 0), at(0.5, 0.4), at(0, 0.4)], []],
    ['Straight edges, 5 corners', [at(0, 0), at(0.6, 0), at(0.6, 0.3), at(0.5, 0.4), at(0, 0.4)], []],
    ['Curved edges', [at(0, 0), at(0.6, 0), at(0.6, 0.4, 0.2), at(0, 0.4)], []],
  ])('%s', (words, outline, cutouts) => {
    expect(outlineWords({ ...box, outline, cutouts })).toBe(words);
  });
});

describe('sizeWords', () => {
  it('never tell a board as smaller than it is', () => {
    expect(sizeWords({ widthM: 34 * 0.0254, heightM: 18 * 0.0254 }, 'inch')).toBe('34 by 18 in');
    expect(sizeWords({ widthM: 34.01 * 0.0254, heightM: 17.99 * 0.0254 }, 'inch')).toBe('35 by 18 in');
    expect(sizeWords({ widthM: 0.87, heightM: 0.4601 }, 'millimetre')).toBe('870 by 470 mm');
  });
});

describe('soldThicknessIn', () => {
  // Common practice, no source: a sheet may measure up to 1/16 in less than the thickness by which it is sold.
  it.each([
    [0.018, 0.75],
    [0.01905, 0.75],
    [0.75 * 0.0254 - 0.0015875 + 1e-6, 0.75],
    [0.75 * 0.0254 - 0.0015875 - 1e-5, null],
    [0.012, 0.5],
    [0.0127, 0.5],
    [0.0135, null],
    [0.003, null],
  ])('of a sheet of %f m is %s', (thicknessM, sold) => {
    expect(soldThicknessIn(thicknessM)).toBe(sold);
  });
});
