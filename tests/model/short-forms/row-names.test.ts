import { describe, expect, test } from 'vitest';
import { rowNames } from '../../../lib/model/short-forms/row-names.ts';

describe('a written name stands for', () => {
  test.each<readonly [string, readonly string[]]>([
    ['REM', ['REM']],
    ['CH1..4', ['CH1', 'CH2', 'CH3', 'CH4']],
    ['CH1..CH3', ['CH1', 'CH2', 'CH3']],
    ['1..2', ['1', '2']],
    ['OUT9..11', ['OUT9', 'OUT10', 'OUT11']],
    ['low-1..2', ['low-1', 'low-2']],
    ['CH1..2+', ['CH1+', 'CH2+']],
    ['G7..7', ['G7']],
    ['B+, GND', ['B+', 'GND']],
    ['IN3..1', ['IN3', 'IN2', 'IN1']],
    ['f1..2, f8', ['f1', 'f2', 'f8']],
    ['1+2, 3+4', ['1+2', '3+4']],
    ['BASS BOOST', ['BASS BOOST']],
    ['A1..64', Array.from({ length: 64 }, (_, index) => `A${index + 1}`)],
  ])('%s', (written, names) => {
    expect(rowNames(written)).toEqual(names);
  });
});

describe('no row is', () => {
  test.each<readonly [string, RegExp]>([
    ['CH1..OUT4', /CH1\.\.OUT4 has not a number on either side/],
    ['CH..4', /has not a number on either side/],
    ['CH1..', /has not a number on either side/],
    ['OUT01..04', /begins with 0/],
    ['B+,, GND', /no name beside it/],
    ['B+, GND,', /no name beside it/],
    ['CH1..3, CH3', /has CH3 twice/],
    ['A1..65', /stands for 65 names/],
    ['A1..40, B1..40', /stands for 80 names/],
    ['A1..99999999999', /stands for/],
  ])('%s', (written, says) => {
    expect(rowNames(written)).toEqual({ unreadable: expect.stringMatching(says) });
  });
});
