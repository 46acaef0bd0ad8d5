import { describe, expect, test } from 'vitest';
import { faultBy } from '../../../lib/model/fields.ts';
import { price, priceText } from '../../../lib/model/shelf/price.ts';

describe('a price', () => {
  test.each([
    ['480 each', 480, 1, 'piece'],
    ['1.85 per ft', 1.85, 1, 'ft'],
    ['0.0375 per m', 0.0375, 1, 'm'],
    ['89 per 50 ft', 89, 50, 'ft'],
    ['120.50 per 100m', 120.5, 100, 'm'],
    ['14.5 per 100', 14.5, 100, 'piece'],
  ])('%s is read, and written so that it is read again', (text, amount, count, unit) => {
    const read = price.parse(text);
    expect(read).toEqual({ amount, per: { count, unit } });
    expect(price.parse(priceText(read))).toEqual(read);
  });

  // What people write in tables and mails: told with what to write, and never guessed.
  test.each([
    ['1,85 per ft', /decimal comma: write 1\.85$/],
    ['$1.85 per ft', /sign of currency/],
    ['1.85 € each', /sign of currency/],
    ['EUR 12 each', /sign of currency/],
    ['1,250 each', /read in two ways/],
    ['1.250,00 each', /read in two ways/],
    ['1 250 each', /read in two ways/],
    ["1'250.00 each", /read in two ways/],
    ['1.85', /does not say what it is for: write 1\.85 each, 1\.85 per ft/],
    ['1.85 per yd', /is for "per yd", which is not understood/],
    ['1.85 per 0', /not understood/],
    ['0 each', /is nothing: leave out/],
    ['0.00 per ft', /is nothing: leave out/],
    ['-2 each', /below zero/],
    ['1.23456 each', /at most four decimals/],
    ['cheap each', /not a sum of money/],
    ['', /not a sum of money/],
  ])('%j is told', (text, says) => {
    expect(faultBy(price, text)).toMatch(says);
  });

  test('that YAML reads as a number is told with what to write', () => {
    expect(faultBy(price, 1.85)).toMatch(/what is paid and what for, such as 1\.85 per ft/);
  });
});
