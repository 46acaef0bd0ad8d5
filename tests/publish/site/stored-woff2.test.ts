import { brotliDecompressSync } from 'node:zlib';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { fontFiles } from '../../../lib/draw/lettering/text-metrics.ts';
import { storedWoff2 } from '../../../lib/publish/site/stored-woff2.ts';
import { fontBytes } from '../../draw/lettering/shipped-metrics.ts';

function openFont(bytes: Uint8Array): fontkit.Font {
  const font = fontkit.create(bytes);
  if ('fonts' in font) throw new TypeError('one font was expected');
  return font;
}

describe.each(Object.values(fontFiles))('%s, stored', (file) => {
  const packed = fontBytes(file);
  const stored = storedWoff2(packed);

  it('is read as the packed file is: every glyph, and how they stand beside each other', () => {
    const [one, other] = [openFont(packed), openFont(stored)];
    expect(other.unitsPerEm).toBe(one.unitsPerEm);
    for (let code = 32; code < 0x2200; code += 1) {
      expect(other.hasGlyphForCodePoint(code)).toBe(one.hasGlyphForCodePoint(code));
      if (!one.hasGlyphForCodePoint(code)) continue;
      const [a, b] = [one.glyphForCodePoint(code), other.glyphForCodePoint(code)];
      expect([b.advanceWidth, b.bbox, b.path.commands]).toEqual([a.advanceWidth, a.bbox, a.path.commands]);
    }
    const text = 'AVATo officefi 13 5/8';
    expect(other.layout(text).positions).toEqual(one.layout(text).positions);
  });

  it('holds a stream that another reader of Brotli takes', () => {
    const view = new DataView(stored.buffer);
    const unpacked = brotliDecompressSync(stored.subarray(stored.length - view.getUint32(20)));
    expect(unpacked.length).toBeGreaterThan(packed.length);
    expect(view.getUint32(8)).toBe(stored.length);
  });
});

it('is made of no other file', () => {
  expect(() => storedWoff2(new Uint8Array(100))).toThrow('WOFF2');
});
