import { describe, expect, test } from 'vitest';
import { pickLead } from '../../../lib/propose/laying/leads.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';
import { smallShop } from '../../read/small-shop.ts';

const foot = 0.3048;
const lead = (feet: number) => {
  return { part: `lead-${feet}`, lengthM: feet * foot, isY: false, conductors: [] };
};
const made = [lead(3), lead(6), lead(12), lead(17)];
const { shop, rules } = jobOf(smallShop());

/** The leads that are picked one after another for ways of so many feet, from a shelf with so many pieces of each. */
function picked(pieces: Readonly<Record<string, number>>, ...waysFt: readonly number[]): readonly string[] {
  const stock = Object.fromEntries(
    Object.entries(pieces).map(([part, count]) => [part, { pieces: count, 'off-cuts': {} }]),
  );
  const around = { shop: { ...shop, stock }, rules };
  const used = new Map<string, number>();
  return waysFt.map((feet) => pickLead(around, made, feet * foot, used)?.part ?? 'none');
}

// The house rule, common practice, no source: what is over by 6 ft at the most lies in a loop.
describe('the made lead for a way', () => {
  test('is the shortest that reaches and lies on the shelf, before a shorter one that is to be ordered', () => {
    expect(picked({ 'lead-6': 1, 'lead-12': 1 }, 5)).toEqual(['lead-6']);
    expect(picked({ 'lead-12': 1, 'lead-17': 1 }, 6)).toEqual(['lead-12']);
  });

  test('is ordered where all on the shelf are longer than its way by more than the rule', () => {
    expect(picked({ 'lead-12': 1 }, 5.9)).toEqual(['lead-6']);
    expect(picked({ 'lead-17': 1 }, 2)).toEqual(['lead-3']);
    expect(picked({}, 7)).toEqual(['lead-12']);
  });

  test('is taken from the shelf once for each piece, and is the longest where none reaches', () => {
    expect(picked({ 'lead-6': 1, 'lead-12': 1 }, 6, 6, 6)).toEqual(['lead-6', 'lead-12', 'lead-6']);
    expect(picked({ 'lead-3': 1 }, 18)).toEqual(['lead-17']);
  });
});
