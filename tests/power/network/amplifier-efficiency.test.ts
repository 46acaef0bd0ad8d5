import { describe, expect, test } from 'vitest';
import { supplySchema } from '../../../lib/model/kinds/fields/supply.ts';
import { amplifierEfficiency } from '../../../lib/power/network/amplifier-efficiency.ts';
import { ratedSupplyV } from '../../../lib/power/network/rated-voltage.ts';
import { readHouseRules } from '../../../lib/read/read-house-rules.ts';

const rules = readHouseRules({});
/** The supply of an amplifier as a file has it. */
const supply = (more: object) =>
  supplySchema.parse({ type: 'regulated', fuse: '80 A', 'amplifier-class': 'class-d', ...more });

// Full-range class D at full power and at an eighth: 0.75 and 0.55, common practice, no source.
describe('the efficiency of an amplifier', () => {
  test.each([
    ['as its maker says', { full: '78 %', eighth: '60 %' }, 0.78, 0.6],
    ['at an eighth by its class, where its maker gives it at full power alone', { full: '78 %' }, 0.78, 0.55],
    ['at an eighth at most that at full power', { full: '50 %' }, 0.5, 0.5],
    ['by its class', undefined, 0.75, 0.55],
  ] as const)('is %s', (_, efficiency, full, eighth) => {
    const told = amplifierEfficiency(supply({ efficiency }), rules);
    expect(told).toMatchObject({ full, eighth });
  });
});

// Rated power is stated at 14.4 V (common practice, no source); twice that in a 24 V system.
test('rated powers hold at the voltage of their maker, else at the usual one of the system', () => {
  expect(ratedSupplyV(supply({ 'rated-at': '13.2 V' }), rules)).toBe(13.2);
  expect(ratedSupplyV(supply({ 'rated-at': '28.8 V' }), rules, 2)).toBe(28.8);
  expect(ratedSupplyV(supply({}), rules)).toBe(14.4);
  expect(ratedSupplyV(supply({}), rules, 2)).toBe(28.8);
});
