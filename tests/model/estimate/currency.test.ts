import { describe, expect, test } from 'vitest';
import { decimalsOf, moneyText, writtenAmount } from '../../../lib/model/estimate/currency.ts';

/** Where the data of browsers rounds a currency of ISO 4217 to what is paid in cash, or knows it under another use. */
const asPaid = new Set(
  Intl.supportedValuesOf('currency').filter((code) => {
    const digits = new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions();
    return digits.maximumFractionDigits !== decimalsOf(code);
  }),
);

describe('the decimals of a currency', () => {
  // ISO 4217, list one, minor units: quoted from memory.
  test.each([
    ['EUR', 2],
    ['USD', 2],
    ['GBP', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['ISK', 0],
    ['KWD', 3],
    ['TND', 3],
    ['CLF', 4],
  ])('of %s are %i', (code, decimals) => {
    expect(decimalsOf(code)).toBe(decimals);
  });

  test('are never fewer than those that Unicode gives it (CLDR), which tells some as they are paid in cash', () => {
    for (const code of asPaid) {
      const { maximumFractionDigits = 0 } = new Intl.NumberFormat('en', {
        style: 'currency',
        currency: code,
      }).resolvedOptions();
      expect(decimalsOf(code), code).toBeGreaterThanOrEqual(maximumFractionDigits);
    }
    expect(asPaid.size).toBeLessThan(40);
  });
});

describe('an amount', () => {
  test.each([
    [0, 2, '0.00'],
    [5, 2, '0.05'],
    [1250, 2, '12.50'],
    [1250, 0, '1250'],
    [7, 3, '0.007'],
    [123_456_789, 3, '123456.789'],
  ])('of %i smallest units with %i decimals is %s', (minor, decimals, text) => {
    expect(moneyText(minor, decimals)).toBe(text);
  });

  test('that is a price keeps the decimals that it is written with', () => {
    expect(writtenAmount(85, 2)).toBe('85.00');
    expect(writtenAmount(0.0375, 2)).toBe('0.0375');
    expect(writtenAmount(1200, 0)).toBe('1200');
  });
});
