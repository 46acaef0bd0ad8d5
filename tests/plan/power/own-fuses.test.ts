import { describe, expect, it } from 'vitest';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';

const supply = 'supply: { type: regulated, fuse: 60 A, amplifier-class: class-d,';

/** The small shop's amplifier of 300 W, with so many fuses of its own aboard, and what its maker states. */
const mainFuse = (aboard: number, stated = '60 A') =>
  byId(
    smallPlan(
      inParts(
        supply,
        `supply: { type: regulated, fuse: ${stated}, fuses-fitted: ${aboard}, amplifier-class: class-d,`,
      ),
    ).plan.power.fuses,
    'main-fuse',
  );

// Common practice, no source: where a device has fuses of its own aboard, the fuse before it protects the conductor.
describe('the fuse before a device', () => {
  it('has the ceiling of its maker where the device has no fuse aboard', () => {
    expect(mainFuse(0)).toMatchObject({ ceilingA: 60, ratingA: 60 });
    // Of 300 W at class D about 29 A flow: 25 A would open, and a maker who allows no more is told.
    expect(mainFuse(0, '25 A')).toMatchObject({ ceilingA: 25, ratingA: null });
  });

  it('has none where the device protects itself: then it is chosen by the current and its conductor', () => {
    expect(mainFuse(2, '25 A')).toMatchObject({ ceilingA: null, chosen: 'computed' });
    expect(mainFuse(2, '25 A').ratingA).toBeGreaterThanOrEqual(35);
  });
});
