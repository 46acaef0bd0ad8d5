import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadApart } from '../../../lib/draw/lettering/spread.ts';

const ascending = fc
  .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 12 })
  .map((wanted) => wanted.sort((a, b) => a - b));

describe('spreadApart', () => {
  it('leaves alone what is apart', () => {
    expect(spreadApart([1, 6, 20], 5, 0, 30)).toEqual([1, 6, 20]);
  });

  it('moves a crowd to both sides alike', () => {
    expect(spreadApart([10, 10, 10], 4, 0, 30)).toEqual([6, 10, 14]);
  });

  it('refuses what can not fit', () => {
    expect(spreadApart([1, 2, 3], 5, 0, 9)).toBeNull();
  });

  it('keeps order, pitch and bounds', () => {
    fc.assert(
      fc.property(ascending, (wanted) => {
        const moved = spreadApart(wanted, 5, -10, 110) ?? [];
        expect(moved).toHaveLength(wanted.length);
        moved.forEach((position, index) => {
          expect(position).toBeGreaterThanOrEqual(-10 - 1e-9);
          expect(position).toBeLessThanOrEqual(110 + 1e-9);
          expect(position - (moved[index - 1] ?? -Infinity)).toBeGreaterThanOrEqual(5 - 1e-9);
        });
      }),
    );
  });

  // Outside check: for a convex problem a point is best if no other allowed point is better; try many.
  it('moves no more than any other allowed arrangement', () => {
    const others = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 12, maxLength: 12 });
    const cost = (wanted: readonly number[], moved: readonly number[]): number =>
      moved.reduce((sum, position, index) => sum + (position - (wanted[index] ?? 0)) ** 2, 0);
    fc.assert(
      fc.property(ascending, others, (wanted, slack) => {
        let position = -10;
        const allowed = wanted.map((_, index) => {
          position += (slack[index] ?? 0) / (index === 0 ? 1 : 4) + (index === 0 ? 0 : 5);
          return position;
        });
        fc.pre((allowed.at(-1) ?? 0) <= 110);
        expect(cost(wanted, spreadApart(wanted, 5, -10, 110) ?? [])).toBeLessThanOrEqual(
          cost(wanted, allowed) + 1e-9,
        );
      }),
    );
  });
});
