import { describe, expect, it } from 'vitest';
import { pullTest } from '../../../lib/model/tables/pull-test.ts';

// UL 486A, as a terminal maker's published application specification prints it, and ABYC E-11 (from memory): lb.
const published = {
  '18': [20, 10],
  '16': [30, 15],
  '14': [50, 30],
  '12': [70, 35],
  '10': [80, 40],
  '8': [90, 45],
  '6': [100, 50],
  '4': [140, 60],
  '2': [180, 70],
  '1/0': [250, 80],
} as const;

describe('the pull test of a crimped end', () => {
  it.each(Object.entries(published))('of %s AWG is as published', (awg, [sampleLb, tugLb]) => {
    expect(pullTest(awg)).toEqual({ sampleLb, tugLb });
  });

  it('asks for more of a thicker conductor, and of a sample more than of every end', () => {
    const rows = Object.keys(published)
      .toSorted((a, b) => (a === '1/0' ? 1 : b === '1/0' ? -1 : Number(b) - Number(a)))
      .map((awg) => pullTest(awg));
    rows.forEach((row, index) => {
      expect(row?.sampleLb).toBeGreaterThan(row?.tugLb ?? 0);
      if (index > 0) expect(row?.sampleLb).toBeGreaterThan(rows[index - 1]?.sampleLb ?? 0);
    });
  });

  it('is left to the terminal maker where none is published', () => {
    expect(pullTest('3')).toBeNull();
    expect(pullTest(null)).toBeNull();
  });
});
