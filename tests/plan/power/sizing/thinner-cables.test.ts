import { describe, expect, test } from 'vitest';
import { shortOnShelf, thinnerThan } from '../../../../lib/plan/power/sizing/thinner-cables.ts';
import type { ConductorLimit, JudgedCable } from '../../../../lib/power/conductor/conductor-choice.ts';
import { settledShop } from '../settled-power.ts';

/** A cable as it is judged, with another area and other misses. */
function judged(
  areaMm2: number,
  misses: readonly ConductorLimit[] = [],
  doubt: string | null = null,
): JudgedCable {
  const { power } = settledShop();
  const one = power.conductors.get('feed')?.judged;
  if (!one) throw new Error('The feed of the small shop is not judged.');
  return {
    ...one,
    candidate: { ...one.candidate, part: `red-${areaMm2}`, size: { label: `${areaMm2} mm2`, areaMm2 } },
    misses: misses.map((limit) => ({ limit, text: limit })),
    doubt,
  };
}
const partsOf = (cables: readonly JudgedCable[]) => cables.map(({ candidate }) => candidate.size.areaMm2);

test('what is thinner goes thick to thin; the same size within a tenth of a percent is none', () => {
  const all = [2, 4, 9.995, 10, 16].map((areaMm2) => judged(areaMm2));
  expect(partsOf(thinnerThan(judged(10).candidate, all))).toEqual([4, 2]);
  expect(partsOf(thinnerThan(judged(1).candidate, all))).toEqual([]);
  expect(partsOf(thinnerThan(judged(10).candidate, [judged(10 / 1.001)]))).toEqual([]);
});

describe('the thinnest that would do but for its length on the shelf', () => {
  const open = { why: null, leastMm2: 0 };
  const shortOf = (
    considered: readonly JudgedCable[],
    {
      least = open,
      portMm2 = 0,
      chosen = judged(16),
    }: {
      least?: { readonly why: string | null; readonly leastMm2: number };
      portMm2?: number;
      chosen?: JudgedCable;
    } = {},
  ) => shortOnShelf(least, portMm2, chosen, [...considered, chosen])?.size.areaMm2 ?? null;

  test('is told where the shelf alone rules it out', () => {
    expect(shortOf([judged(4, ['fuse', 'stock']), judged(6, ['stock']), judged(10, ['stock'])])).toBe(6);
    expect(shortOf([judged(6, ['stock', 'drop'])])).toBeNull();
    expect(shortOf([judged(6)])).toBeNull();
    expect(shortOf([])).toBeNull();
  });

  test('though an earlier round took a thicker one, unless something asked for that', () => {
    const all = [judged(6, ['stock', 'least-size']), judged(10, ['stock'])];
    expect(shortOf(all)).toBe(6);
    expect(shortOf(all, { least: { why: null, leastMm2: 10 } })).toBe(6);
    expect(shortOf(all, { least: { why: 'its drop', leastMm2: 10 } })).toBe(10);
    expect(shortOf(all, { least: { why: 'its drop', leastMm2: 10.005 } })).toBe(10);
    expect(shortOf([judged(6, ['least-size'])])).toBeNull();
  });

  test('not below what its ports take', () => {
    const all = [judged(6, ['stock']), judged(10, ['stock'])];
    expect(shortOf(all, { portMm2: 8 })).toBe(10);
    expect(shortOf(all, { portMm2: 12 })).toBeNull();
    expect(shortOf([judged(10 / 1.001, ['stock'])], { portMm2: 10 })).toBe(10 / 1.001);
  });

  test('not one that is in doubt, unless the chosen one is too', () => {
    expect(shortOf([judged(6, ['stock'], 'warm')])).toBeNull();
    expect(shortOf([judged(6, ['stock'], 'warm')], { chosen: judged(16, [], 'warm') })).toBe(6);
  });
});
