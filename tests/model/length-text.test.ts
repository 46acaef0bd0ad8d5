import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dimensionNote,
  dimensionText,
  formatLength,
  type LengthStyle,
} from '../../lib/model/quantity/length-text.ts';
import { parseQuantity } from '../../lib/model/quantity/quantity.ts';

const sixteenths: LengthStyle = { system: 'inch', fraction: 16 };

describe('formatLength', () => {
  // 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8); the sums below are done by hand from that.
  it.each([
    [0.346075, 16, '13 5/8 in', '13.625 in', '346 mm'],
    [0.0254, 16, '1 in', '1.0 in', '25 mm'],
    [0.0127, 16, '1/2 in', '0.5 in', '13 mm'],
    [0.0015875, 16, '1/16 in', '0.063 in', '2 mm'],
    [0.00079375, 32, '1/32 in', '0.031 in', '1 mm'],
    [0, 16, '0 in', '0.0 in', '0 mm'],
    [0.3048, 16, '12 in', '12.0 in', '305 mm'],
    [-0.346075, 16, '-13 5/8 in', '-13.625 in', '-346 mm'],
    [0.1, 16, '3 15/16 in', '3.937 in', '100 mm'],
    [0.1, 32, '3 15/16 in', '3.937 in', '100 mm'],
    [0.05, 32, '1 31/32 in', '1.969 in', '50 mm'],
  ] as const)('writes %f m to 1/%i in as %s, %s and %s', (lengthM, fraction, inches, decimal, mm) => {
    const text = formatLength(lengthM, { system: 'inch', fraction });
    expect([text.fraction, text.decimal, text.mm]).toEqual([inches, decimal, mm]);
  });

  it('rounds a half away from zero, both ways', () => {
    // 13 5/8 in and 1/32 more lies half way between two sixteenths: 13.65625 x 25.4 mm = 346.86875 mm.
    expect(formatLength(0.34686875, sixteenths).fraction).toBe('13 11/16 in');
    expect(formatLength(-0.34686875, sixteenths).fraction).toBe('-13 11/16 in');
  });

  it('carries into the next whole inch, and never writes minus nought', () => {
    expect(formatLength(0.02535, sixteenths).fraction).toBe('1 in');
    expect(formatLength(-0.0001, sixteenths)).toMatchObject({ fraction: '0 in', mm: '0 mm' });
  });

  it('tells how far the shown form is from the truth', () => {
    // 100 mm is 3.93701 in; 3 15/16 in is 100.0125 mm.
    expect(formatLength(0.1, sixteenths).roundedByM).toBeCloseTo(0.0000125, 9);
    expect(formatLength(0.346075, sixteenths).roundedByM).toBe(0);
    expect(formatLength(0.346075, { system: 'mm', fraction: 16, mmDecimals: 1 }).roundedByM).toBeCloseTo(
      0.000025,
      9,
    );
  });

  it('puts the system of the shop first', () => {
    expect(formatLength(0.346075, sixteenths).primary).toBe('13 5/8 in');
    expect(formatLength(0.346075, { system: 'mm', fraction: 16 }).primary).toBe('346 mm');
    expect(formatLength(0.346075, { system: 'mm', fraction: 16, mmDecimals: 1 }).primary).toBe('346.1 mm');
  });

  it('writes long wire in feet and inches where asked', () => {
    const feet: LengthStyle = { ...sixteenths, feet: true };
    expect(formatLength(3.6576, feet).primary).toBe('12 ft');
    expect(formatLength(3.749675, feet).primary).toBe('12 ft 3 5/8 in');
    expect(formatLength(0.2794, feet).primary).toBe('11 in');
  });

  it('refuses a length that is none', () => {
    expect(() => formatLength(Number.NaN, sixteenths)).toThrow(RangeError);
  });

  it('is read back by the reader of job files within its own rounding', () => {
    const styles = fc.record({
      system: fc.constant('inch' as const),
      fraction: fc.constantFrom(16 as const, 32 as const),
      feet: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), styles, (lengthM, style) => {
        const text = formatLength(lengthM, style);
        const step = 0.0254 / style.fraction;
        const back = parseQuantity(text.primary, 'length');
        expect(back).toBeTypeOf('number');
        expect(Math.abs(Number(back) - lengthM)).toBeLessThanOrEqual(step / 2 + 1e-9);
        expect(Math.abs(Number(parseQuantity(text.mm, 'length')) - lengthM)).toBeLessThanOrEqual(
          0.0005 + 1e-9,
        );
      }),
    );
  });
});

describe('dimensionText', () => {
  it('stands without units, which the note tells', () => {
    expect(dimensionText(0.346075, sixteenths)).toBe('13 5/8 (13.625) [346]');
    expect(dimensionText(0.346075, { system: 'mm', fraction: 32 })).toBe('346 [13 5/8]');
    expect(dimensionText(0.2032, sixteenths)).toBe('8 [203]');
    // 8.02 in is no whole number, though the nearest sixteenth is: the decimal has to stay.
    expect(dimensionText(0.203708, sixteenths)).toBe('8 (8.02) [204]');
    expect(dimensionText(0, sixteenths)).toBe('0');
    expect(dimensionNote(sixteenths)).toContain('1/16');
    expect(dimensionNote({ system: 'mm', fraction: 32, mmDecimals: 1 })).toContain('mm to 0.1');
  });
});
