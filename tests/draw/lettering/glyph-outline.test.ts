import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fontFiles } from '../../../lib/draw/lettering/text-metrics.ts';
import { types } from '../../../lib/draw/line-styles.ts';
import { fontBytes, shippedMetrics } from './shipped-metrics.ts';

function endsOf(d: string): (readonly [number, number])[] {
  return [...d.matchAll(/[MLQC]([^MLQCZ]*)/g)].map(([, tail = '']) => {
    const numbers = tail.trim().split(/\s+/).map(Number);
    return [numbers.at(-2) ?? Number.NaN, numbers.at(-1) ?? Number.NaN] as const;
  });
}

describe('outlines of glyphs', () => {
  const font = fontkit.create(fontBytes(fontFiles['condensed-600']));

  // H has no curves, so its outline reaches exactly as far as the box that the font states for it.
  it('reach as far as the font says', () => {
    if ('fonts' in font) throw new Error('one font was expected');
    const { bbox } = font.glyphForCodePoint('H'.codePointAt(0) ?? 0);
    const ends = endsOf(shippedMetrics.outline('H', types.item));
    const em = types.item.capMm / 0.698;
    const ys = ends.map(([, y]) => y);
    expect(Math.min(...ys)).toBeCloseTo((-bbox.maxY * em) / font.unitsPerEm, 2);
    expect(Math.max(...ys)).toBeCloseTo((-bbox.minY * em) / font.unitsPerEm, 2);
    // The height of a capital is what the type is sized by (ISO 3098-1, from memory).
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(types.item.capMm, 1);
  });

  it('follow each other by their advance widths', () => {
    const [one = 0, two = 0] = ['I', 'HI'].map((text) =>
      Math.max(...endsOf(shippedMetrics.outline(text, types.item)).map(([x]) => x)),
    );
    expect(two - one).toBeCloseTo(
      shippedMetrics.widthMm('HI', types.item) - shippedMetrics.widthMm('I', types.item),
      2,
    );
  });
});
