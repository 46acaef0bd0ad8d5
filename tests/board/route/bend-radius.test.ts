import { expect, test } from 'vitest';
import { bendRadius, bendRadiusM } from '../../../lib/board/route/bend-radius.ts';
import { redone } from '../../publish/workings/redo.ts';

// By hand: 4 outside diameters of 12 mm are 48 mm. The number itself: common practice, no source.
test('a wire bends by a number of its diameters, as its working says', () => {
  const found = bendRadius(0.012, 4);
  if (!('trace' in found)) throw new Error(found.message);
  expect(found.value).toBeCloseTo(0.048, 12);
  expect(redone(found.trace)).toBeCloseTo(0.048, 12);
  expect(bendRadiusM(0.012, 4)).toBeCloseTo(0.048, 12);
  expect(bendRadiusM(0.01, 5)).toBeCloseTo(0.05, 12);
});

test('a wire of no thickness has no bend radius, and is bent freely', () => {
  for (const [diameterM, diameters] of [
    [0, 4],
    [0.012, 0],
    [Number.NaN, 4],
  ] as const) {
    expect(bendRadius(diameterM, diameters)).toHaveProperty('fault');
    expect(bendRadiusM(diameterM, diameters)).toBe(0);
  }
});
