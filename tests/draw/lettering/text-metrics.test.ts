import fc from 'fast-check';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { type FontCut, fontFiles } from '../../../lib/draw/lettering/text-metrics.ts';
import { capHeightEm, capHeightsMm, emMm, type TypeStyle, types } from '../../../lib/draw/line-styles.ts';
import { fontBytes, shippedMetrics } from './shipped-metrics.ts';

const cuts: readonly (readonly [FontCut, TypeStyle])[] = [
  ['sans-400', { family: 'sans', weight: 400, capMm: 2.5 }],
  ['sans-600', { family: 'sans', weight: 600, capMm: 5 }],
  ['condensed-400', { family: 'condensed', weight: 400, capMm: 2.5 }],
  ['condensed-600', { family: 'condensed', weight: 600, capMm: 3.5 }],
];

function openFont(cut: FontCut): fontkit.Font {
  const font = fontkit.create(fontBytes(fontFiles[cut]));
  if ('fonts' in font) throw new TypeError('one font was expected');
  return font;
}

describe.each(cuts)('metrics of %s', (cut, type) => {
  const font = openFont(cut);
  const layoutMm = (text: string): number => (font.layout(text).advanceWidth / font.unitsPerEm) * emMm(type);

  // The reference is fontkit's own layout of the whole text (advances, kerning, ligatures).
  it('measures any text as a full layout does', () => {
    const latin = fc.string({
      unit: fc.integer({ min: 32, max: 126 }).map((code) => String.fromCharCode(code)),
      maxLength: 30,
    });
    fc.assert(
      fc.property(latin, (text) => {
        expect(shippedMetrics.widthMm(text, type)).toBeCloseTo(layoutMm(text), 6);
      }),
    );
  });

  it.each(['AVATo', 'officefi fl', 'amp-front.B+', '13 5/8 (13.625) [346]', 'Ø 1/2 ±0.5 °C'])(
    'measures %s',
    (text) => {
      expect(shippedMetrics.widthMm(text, type)).toBeCloseTo(layoutMm(text), 6);
    },
  );

  it('has capitals as high as the style says', () => {
    expect(font.capHeight / font.unitsPerEm).toBe(capHeightEm);
    expect(emMm(type) * capHeightEm).toBeCloseTo(type.capMm, 3);
  });

  it('holds every printable ASCII glyph between ascent and descent', () => {
    for (let code = 33; code < 127; code += 1) {
      const { minY, maxY } = font.glyphForCodePoint(code).bbox;
      expect((maxY / font.unitsPerEm) * emMm(type)).toBeLessThanOrEqual(shippedMetrics.ascentMm(type) + 1e-9);
      expect((-minY / font.unitsPerEm) * emMm(type)).toBeLessThanOrEqual(
        shippedMetrics.descentMm(type) + 1e-9,
      );
    }
  });

  it('tells what the type lacks and counts it as a whole em', () => {
    expect(shippedMetrics.missing('4 Ω or 4 ohm, Ω', type)).toEqual(['Ω']);
    expect(shippedMetrics.widthMm('Ω', type)).toBeCloseTo(emMm(type), 9);
    expect(shippedMetrics.missing('Ø ½ ± ° × ² µ “ ” – −', type)).toEqual([]);
  });
});

describe('type sizes', () => {
  // ISO 3098-1: nominal sizes 1,8; 2,5; 3,5; 5; 7; 10; 14; 20 mm, each root two times the last (from memory).
  it('are sizes of ISO 3098-1, in steps of root two', () => {
    expect(capHeightsMm).toEqual([2.5, 3.5, 5, 7]);
    for (const type of Object.values(types)) expect(capHeightsMm).toContain(type.capMm);
  });

  // One point is 1/72 in. Body at least 10 pt, wire labels 14 pt, as the sheets have to have it.
  it('are no smaller than 10 pt, and 14 pt for wire labels', () => {
    const points = (type: TypeStyle): number => (emMm(type) / 25.4) * 72;
    for (const type of Object.values(types)) expect(points(type)).toBeGreaterThanOrEqual(10);
    expect(points(types.wireLabel)).toBeGreaterThanOrEqual(14);
  });
});
