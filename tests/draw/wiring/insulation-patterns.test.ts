import { describe, expect, it } from 'vitest';
import {
  insulationOf,
  insulations,
  insulationWords,
  sheath,
} from '../../../lib/draw/wiring/insulation-patterns.ts';
import { colourSchema } from '../../../lib/model/vocabulary.ts';

describe('insulations', () => {
  it('have an entry for every letter code that a wire may have', () => {
    // IEC 60757: BK BN RD OG YE GN BU VT GY WH PK TQ; CLR is the trade's for clear, common practice, no source.
    const codes = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH', 'PK', 'TQ', 'CLR'];
    expect(Object.keys(insulations)).toEqual(codes);
    for (const code of codes) expect(colourSchema.safeParse(code).success).toBe(true);
  });

  it('are told apart without colour: no two share pattern and ink', () => {
    const looks = [...Object.values(insulations), sheath].map(({ pattern, ink }) =>
      JSON.stringify([pattern, ink]),
    );
    expect(new Set(looks).size).toBe(looks.length);
  });

  it('are told in words, with their stripe', () => {
    expect(insulationWords('WH/BK')).toBe('WH/BK white, black stripe');
    expect(insulationWords('RD')).toBe('RD red');
    expect(insulationOf('GN/YE').stripe?.name).toBe('yellow');
    expect(insulationOf('GN').stripe).toBeNull();
    expect(insulationWords(null)).toBe(sheath.name);
  });
});
