import { describe, expect, it } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { jobOf } from '../plan/plan-small-shop.ts';
import { inParts, inVehicle } from '../plan/shop-changes.ts';
import { type Change, smallShop } from '../read/small-shop.ts';

/** The drop finding of the small shop's amplifier at the end of a long way. */
function dropOf(...changes: readonly Change[]): string {
  const far = inVehicle(
    '{ zone: sill, length: 3 m }]\n    reaches',
    '{ zone: sill, length: 40 m }]\n    reaches',
  );
  const job = jobOf(smallShop(far, ...changes));
  const { plan, remarks } = planKept(job);
  const found = judge(job, plan, remarks).find(({ rule }) => rule === 'drop-over-limit');
  return found?.message ?? 'none';
}

describe('a finding that rests on what a device draws', () => {
  it('says that the class of the amplifier was assumed', () => {
    const message = dropOf(inParts('fuse: 60 A, amplifier-class: class-d,', 'fuse: 60 A,'));
    expect(message).toMatch(/lost in the feed of amp.*; assumed for amp an amplifier of class AB$/);
  });

  it('says nothing of it where the maker tells the class, or the efficiency itself', () => {
    expect(dropOf()).not.toMatch(/assumed/);
    const told = inParts(
      'fuse: 60 A, amplifier-class: class-d,',
      'fuse: 60 A, efficiency: { full: 70 %, eighth: 50 % },',
    );
    expect(dropOf(told)).toMatch(/lost in the feed of amp/);
    expect(dropOf(told)).not.toMatch(/assumed/);
  });

  it('names the devices that it is about, and no others', () => {
    // The radio states no draw now, but nothing of the amplifier's drop hangs on it.
    expect(dropOf(inParts('fuse: 10 A, draw: 2 A', 'fuse: 10 A'))).not.toMatch(/assumed/);
  });
});
