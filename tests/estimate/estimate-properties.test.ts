import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costsOf, estimated, pieces } from './estimated-job.ts';

const parts = ['amp', 'bolt', 'clip'] as const;
/** Ten-thousandths of the currency. */
const amount = fc.integer({ min: 1, max: 50_000_000 });
const count = fc.integer({ min: 1, max: 400 });
const share = fc.integer({ min: 1, max: 99_999 }).map((thousandths) => `${thousandths / 1000} %`);

const shops = fc.record({
  amounts: fc.tuple(amount, amount, amount),
  per: fc.tuple(count, count, count),
  taken: fc.tuple(count, count, count),
  currency: fc.constantFrom('EUR', 'JPY', 'KWD'),
  labour: fc.integer({ min: 1, max: 3_000_000 }),
  minutes: fc.integer({ min: 0, max: 3000 }),
  markup: share,
  tax: share,
});
type MadeShop = typeof shops extends fc.Arbitrary<infer S> ? S : never;

function priceText(tenThousandths: number, per: number): string {
  return `${(tenThousandths / 10_000).toFixed(4)} per ${per}`;
}

/** The estimate of a shop that was drawn; `without` is the part whose price is left out. */
function estimateOf(made: MadeShop, without: string | null = null) {
  const prices = parts.map(
    (part, at) => [part, priceText(made.amounts[at] ?? 1, made.per[at] ?? 1)] as const,
  );
  return estimated({
    pick: parts.map((part, at) => pieces(part, made.taken[at] ?? 1)),
    minutes: { board: made.minutes },
    shop: {
      currency: made.currency,
      prices: Object.fromEntries(prices.filter(([part]) => part !== without)),
      estimate: {
        labour: `${(made.labour / 10_000).toFixed(4)} per h`,
        markup: made.markup,
        tax: made.tax,
      },
    },
  });
}

describe('whatever the shop asks', () => {
  test('the lines of the sum are the total, and the parts their line', () => {
    fc.assert(
      fc.property(shops, (made) => {
        const estimate = estimateOf(made);
        expect(estimate.sum.reduce((all, { minor }) => all + minor, 0)).toBe(estimate.totalMinor);
        const own = Object.values(costsOf(estimate)).reduce<number>((all, one) => all + (one ?? 0), 0);
        expect(estimate.sum.find(({ of }) => of === 'parts')?.minor).toBe(own);
      }),
    );
  });

  test('a dearer part never lowers the total', () => {
    fc.assert(
      fc.property(shops, fc.nat(2), amount, (made, at, more) => {
        const dearer = made.amounts.map((one, own) => (own === at ? Math.min(one + more, 99_999_999) : one));
        const [a = 1, b = 1, c = 1] = dearer;
        const after = estimateOf({ ...made, amounts: [a, b, c] });
        expect(after.totalMinor ?? 0).toBeGreaterThanOrEqual(estimateOf(made).totalMinor ?? 0);
      }),
    );
  });

  test('leaving out a price never raises the total, which is then the least', () => {
    fc.assert(
      fc.property(shops, fc.constantFrom(...parts), (made, without) => {
        const whole = estimateOf(made);
        const less = estimateOf(made, without);
        expect(whole.isAtLeast).toBe(false);
        expect(less.isAtLeast).toBe(true);
        expect(less.totalMinor ?? 0).toBeLessThanOrEqual(whole.totalMinor ?? 0);
      }),
    );
  });

  test('a part costs no less than its share of the price, and less than one smallest unit more', () => {
    fc.assert(
      fc.property(shops, (made) => {
        const estimate = estimateOf(made);
        for (const [at, part] of parts.entries()) {
          // Whole numbers on both sides: cost x per against amount x taken, in ten-thousandths of the smallest unit.
          const cost = BigInt(costsOf(estimate)[part] ?? 0) * BigInt(made.per[at] ?? 1) * 10_000n;
          const unit = BigInt(made.per[at] ?? 1) * 10_000n;
          const exact =
            BigInt(made.amounts[at] ?? 1) * BigInt(made.taken[at] ?? 1) * 10n ** BigInt(estimate.decimals);
          expect(cost >= exact && cost - exact < unit).toBe(true);
        }
      }),
    );
  });
});
