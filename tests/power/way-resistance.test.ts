import { describe, expect, test } from 'vitest';
import { isFault } from '../../lib/model/fault.ts';
import { type WayParts, wayOhm } from '../../lib/power/way-resistance.ts';
import { readHouseRules } from '../../lib/read/read-house-rules.ts';
import { redone } from '../publish/workings/redo.ts';

/** A shop whose house rules are easy to add up. */
const rules = readHouseRules({
  'lug-resistance': 0.0001,
  'joint-resistance': 0.0002,
  'body-resistance': 0.001,
  'bolt-in-fuse-volt': 0.1,
  'blade-fuse-volt': 0.12,
});
const way = (more: Partial<WayParts> = {}) =>
  wayOhm(
    { crimps: 4, bolts: 2, throughBody: false, fuse: { form: 'large-bolt-in', ratingA: 100 }, ...more },
    rules,
  );
const ohm = (more: Partial<WayParts> = {}) => {
  const made = way(more);
  if (isFault(made)) throw new Error(made.message);
  expect(redone(made.trace)).toBeCloseTo(made.value, 12);
  return made.value;
};

describe('the resistance of a way beside its conductors', () => {
  // By hand: 4 lugs of 0.1 mohm, 2 joints of 0.2 mohm, 0.1 V / 100 A = 1 mohm.
  test('is that of its ends, its contacts, its fuse and the body', () => {
    expect(ohm()).toBeCloseTo(0.0018, 12);
    expect(ohm({ throughBody: true })).toBeCloseTo(0.0028, 12);
    expect(ohm({ crimps: 0, bolts: 0 })).toBeCloseTo(0.001, 12);
    // 0.12 V / 30 A = 4 mohm.
    expect(ohm({ fuse: { form: 'maxi-blade', ratingA: 30 } })).toBeCloseTo(0.0048, 12);
  });

  test('is refused of fewer parts than none, and of a fuse without a rating', () => {
    expect(way({ crimps: -1 })).toHaveProperty('fault');
    expect(way({ bolts: -1 })).toHaveProperty('fault');
    expect(way({ fuse: { form: 'maxi-blade', ratingA: 0 } })).toHaveProperty('fault');
    expect(way({ crimps: -1, fuse: { form: 'maxi-blade', ratingA: 0 } })).toHaveProperty('fault');
  });
});
