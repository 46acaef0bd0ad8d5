import { describe, expect, test } from 'vitest';
import { labourRate, labourRateText } from '../../../lib/model/estimate/labour-rate.ts';
import { faultBy } from '../../../lib/model/fields.ts';

describe('a rate of labour', () => {
  test.each([
    ['85 per h', 85],
    ['92.50 per h', 92.5],
    ['0.0001 per h', 0.0001],
  ])('%s is read, and written so that it is read again', (text, amountPerHour) => {
    const read = labourRate.parse(text);
    expect(read).toEqual({ amountPerHour });
    expect(labourRate.parse(labourRateText(read))).toEqual(read);
  });

  test.each([
    ['85', /does not say what it is for: write 85 per h/],
    ['85 per hour', /is for "per hour", which is not an hour: write 85 per h/],
    ['85 per day', /not an hour/],
    ['85/h', /./],
    ['85 /h', /write 85 per h/],
    ['85,50 per h', /decimal comma: write 85\.50/],
    ['$85 per h', /sign of currency/],
    ['0 per h', /is nothing/],
    ['-85 per h', /below zero/],
    ['1.23456 per h', /at most four decimals/],
  ])('%j is told', (text, says) => {
    expect(faultBy(labourRate, text)).toMatch(says);
  });
});
