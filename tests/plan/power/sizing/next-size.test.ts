import { expect, test } from 'vitest';
import { nextSizeMm2 } from '../../../../lib/plan/power/sizing/next-size.ts';
import type { CableCandidate } from '../../../../lib/power/conductor/conductor-choice.ts';

const cable = (areaMm2: number, stockM?: number): CableCandidate => ({
  part: `cable-${areaMm2}`,
  size: { label: `${areaMm2} mm2`, areaMm2 },
  material: 'copper',
  insulationC: 105,
  ...(stockM !== undefined && { stockM }),
});
const next = (candidates: readonly CableCandidate[], lengthM = 2) =>
  nextSizeMm2(candidates, cable(10), lengthM);

test('the next size is the smallest of the larger ones, in whatever order they lie', () => {
  expect(next([cable(25), cable(16), cable(10), cable(6)])).toBe(16);
  expect(next([cable(6), cable(10), cable(16), cable(25)])).toBe(16);
});

test('there is none above the largest', () => {
  expect(next([cable(6), cable(10)])).toBeNull();
  expect(next([])).toBeNull();
});

test('sizes within a tenth of a per cent are the same', () => {
  expect(next([cable(10.009)])).toBeNull();
  expect(next([cable(10.011)])).toBe(10.011);
});

test('what lies on the shelf in one piece goes before what must be bought, to the last centimetre', () => {
  expect(next([cable(16), cable(25, 2)])).toBe(25);
  expect(next([cable(16, 1.99), cable(25, 2)])).toBe(25);
  expect(next([cable(16, 2), cable(25, 2)])).toBe(16);
  expect(next([cable(16, 1), cable(25, 1.99)])).toBe(16);
});
