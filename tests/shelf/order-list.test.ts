import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Price, price } from '../../lib/model/shelf/price.ts';
import { orderList } from '../../lib/shelf/order-list.ts';
import { cuts, ft, promisedTo, reelStock } from './takes.ts';

const priced = (part: string, text: string): Record<string, Price> => ({ [part]: price.parse(text) });

/** Worked by hand. */
describe('the order list of a shop', () => {
  test('is what all jobs together take and the shelf lacks, which no job alone may lack', () => {
    const stock = { lug: { pieces: 5, 'off-cuts': {} } };
    const jobs = [promisedTo('one', { pieces: { lug: 4 } }), promisedTo('two', { pieces: { lug: 4 } })];
    expect(orderList({ stock, prices: {} }, jobs.slice(1))).toEqual([]);
    expect(orderList({ stock, prices: {} }, jobs)).toMatchObject([
      { part: 'lug', quantity: 3, unit: 'piece', longestM: null, price: null, units: null, cents: null },
    ]);
  });

  test.each([
    ['0.35 each', 11, 385],
    ['14.50 per 100', 1, 1450],
    ['1.20 per 10', 2, 240],
    ['1.20 per 11', 1, 120],
    ['0.0375 each', 11, 42],
  ])('eleven pieces at %s: %i units, %i cents, rounded up', (text, units, cents) => {
    const jobs = [promisedTo('one', { pieces: { lug: 11 } })];
    expect(orderList({ stock: {}, prices: priced('lug', text) }, jobs)).toMatchObject([{ units, cents }]);
  });

  test.each([
    ['1.85 per ft', 25, 4625],
    // 25 ft are 7.62 m.
    ['6 per m', 8, 4800],
    ['40 per 25 ft', 1, 4000],
    // Two cuts of 12 1/2 ft do not come out of one reel of 20 ft.
    ['30 per 20 ft', 2, 6000],
    ['30 per 12 ft', null, null],
  ])('two cuts of 12 1/2 ft at %s: %s units, %s cents', (text, units, cents) => {
    const jobs = [promisedTo('one', { cuts: cuts('red', { a: 12.5 * ft, b: 12.5 * ft }) })];
    const [line] = orderList({ stock: { red: reelStock([12 * ft]) }, prices: priced('red', text) }, jobs);
    expect(line).toMatchObject({ unit: 'm', units, cents });
    expect(line?.longestM).toBeCloseTo(12.5 * ft, 9);
    expect(line?.quantity).toBeCloseTo(25 * ft, 5);
  });

  test('ordered as it says, with reels as they are sold, leaves nothing to order', () => {
    const feet = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(feet, feet, (reels, own) => {
        const jobs = [
          promisedTo('one', {
            cuts: cuts('red', Object.fromEntries(own.map((one, n) => [`w${n}`, one * ft]))),
          }),
        ];
        const prices = priced('red', '50 per 20 ft');
        const [line] = orderList({ stock: { red: reelStock(reels.map((one) => one * ft)) }, prices }, jobs);
        const bought = Array.from({ length: line?.units ?? 0 }, () => 20 * ft);
        const filled = reelStock([...reels.map((one) => one * ft), ...bought]);
        expect(orderList({ stock: { red: filled }, prices }, jobs)).toEqual([]);
      }),
    );
  });
});
