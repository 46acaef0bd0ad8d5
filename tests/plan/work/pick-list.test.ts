import { describe, expect, test } from 'vitest';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const ft = 0.3048;

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
