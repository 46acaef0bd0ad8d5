import { describe, expect, it } from 'vitest';
import { hyphenedNumbers } from '../../../lib/publish/words/hyphened-numbers.ts';

const whole = (text: string) => ({ text, whole: true });
const loose = (text: string) => ({ text, whole: false });

describe('numbers joined by a hyphen', () => {
  it('are pieces that stay whole', () => {
    expect(hyphenedNumbers('Not in DIN 46228-4.')).toEqual([
      loose('Not in DIN '),
      whole('46228-4'),
      loose('.'),
    ]);
    expect(hyphenedNumbers('2026-04-20 to 1/2-3/4 in')).toEqual([
      whole('2026-04-20'),
      loose(' to '),
      whole('1/2-3/4'),
      loose(' in'),
    ]);
  });

  it('are not words with a number, nor a number alone', () => {
    for (const text of ['amp-4x75', '-12 V', 'CH1- to 5', 'spacer-m6-25', '200 A'])
      expect(hyphenedNumbers(text)).toEqual([]);
  });
});
