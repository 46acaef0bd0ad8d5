import { expect, test } from 'vitest';
import { fuseDropV, fuseOhm } from '../../lib/power/fuse-resistance.ts';
import { readHouseRules } from '../../lib/read/read-house-rules.ts';

const rules = readHouseRules({ 'bolt-in-fuse-volt': 0.1, 'blade-fuse-volt': 0.12 });

test('a fuse drops by its style what the house rules say, whatever its rating', () => {
  for (const form of ['micro-blade', 'mini-blade', 'standard-blade', 'maxi-blade'] as const)
    expect(fuseDropV(form, rules)).toBe(0.12);
  for (const form of ['small-bolt-in', 'large-bolt-in', 'class-t'] as const)
    expect(fuseDropV(form, rules)).toBe(0.1);
  expect(fuseOhm({ form: 'large-bolt-in', ratingA: 200 }, rules)).toBeCloseTo(0.0005, 12);
  expect(fuseOhm({ form: 'large-bolt-in', ratingA: 0 }, rules)).toBe(0);
});
