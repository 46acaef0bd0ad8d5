import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutFromReels } from '../../../lib/plan/work/pick-list.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const ft = 0.3048;

describe('cuts from the reels on the shelf', () => {
  test('two ends of 8 ft are not 14 ft', () => {
    expect(cutFromReels([8 * ft, 8 * ft], [14 * ft]).uncut).toEqual([14 * ft]);
    // The shortest piece that still gives a cut gives it, so that long pieces stay long.
    expect(cutFromReels([30 * ft, 9 * ft], [8 * ft]).reels).toEqual([
      { lengthM: 30 * ft, cutsM: [] },
      { lengthM: 9 * ft, cutsM: [8 * ft] },
    ]);
    expect(cutFromReels([8 * ft, 8 * ft], [7 * ft, 7 * ft]).uncut).toEqual([]);
    expect(cutFromReels([14 * ft], [7 * ft, 7 * ft]).uncut).toEqual([]);
  });

  test('a short cut comes from a short end, so that the long reel is left for the long cut', () => {
    expect(cutFromReels([20 * ft, 5 * ft], [4 * ft, 20 * ft]).uncut).toEqual([]);
  });

  test('what is left uncut has no reel that would still give it, and nothing is cut twice', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 6 });
    fc.assert(
      fc.property(lengths, lengths, (reels, cuts) => {
        const missing = cutFromReels(reels, cuts).uncut;
        const given = [...cuts];
        for (const one of missing) given.splice(given.indexOf(one), 1);
        const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0);
        expect(given.length + missing.length).toBe(cuts.length);
        expect(sum(given)).toBeLessThanOrEqual(sum(reels));
        for (const cut of given) expect(reels.some((reel) => reel >= cut)).toBe(true);
        expect(cutFromReels([...reels, ...missing], cuts).uncut).toEqual([]);
      }),
    );
  });
});

describe('the pick list', () => {
  test('a reel whose ends are all too short is short by the whole cut, though their sum would do', () => {
    const { plan } = smallPlan(
      ...['red-4', 'red-8'].map(
        (reel): Change => [
          'content/shop.yaml',
          `${reel}: { reels: [30 ft] }`,
          `${reel}: { reels: [8 ft, 8 ft, 8 ft] }`,
        ],
      ),
    );
    const feed = byId(plan.wires, 'feed');
    const line = plan.pick.find(({ part }) => part === feed.part);
    expect(feed.lengthM).toBeGreaterThan(8 * ft);
    expect(line?.stockQuantity).toBeCloseTo(24 * ft, 3);
    expect(line?.stockQuantity).toBeGreaterThan(line?.quantity ?? Number.NaN);
    expect(line?.short).toBeCloseTo(feed.lengthM, 3);
  });

  test('has each part of the job with its number', () => {
    const { plan } = smallPlan();
    const quantities = Object.fromEntries(plan.pick.map(({ part, quantity }) => [part, quantity]));
    expect(quantities).toMatchObject({
      'holder-a': 1,
      'amp-a': 1,
      'woofer-a': 1,
      'lead-a': 1,
      'large-60': 1,
    });
    expect(quantities['loom-a']).toBeCloseTo(3.5, 9);
    expect(Object.keys(quantities)).not.toContain('battery-a');
  });
});
