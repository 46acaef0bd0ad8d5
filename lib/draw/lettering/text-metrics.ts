import * as fontkit from 'fontkit';
import { remembered } from '../../model/once-for.ts';
import { emMm, type FontFamily, type FontWeight, type TypeStyle } from '../line-styles.ts';
import { glyphOutline } from './glyph-outline.ts';

/** One cut of the shipped type. */
export type FontCut = `${FontFamily}-${FontWeight}`;

/** Where the bytes of each cut stand among the installed packages (latin subset, both alike for metrics). */
export const fontFiles = {
  'sans-400': '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2',
  'sans-600': '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2',
  'condensed-400': '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-400-normal.woff2',
  'condensed-600': '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-600-normal.woff2',
} as const satisfies Record<FontCut, string>;

/** Measures text in the shipped type. */
export interface TextMetrics {
  /** Advance width with kerning, millimetres. A character that the type lacks counts as one whole em. */
  widthMm(text: string, type: TypeStyle): number;
  /** Baseline to the top of the tallest printable ASCII glyph, millimetres. */
  ascentMm(type: TypeStyle): number;
  /** Baseline to the foot of the deepest printable ASCII glyph, millimetres, positive. */
  descentMm(type: TypeStyle): number;
  /** The characters that the type lacks, each once: a browser would draw them in another type. */
  missing(text: string, type: TypeStyle): readonly string[];
  /** The glyphs as path data in millimetres, the baseline beginning at the origin, y down. */
  outline(text: string, type: TypeStyle): string;
}

interface Cut {
  advanceEm(text: string): number;
  has(character: string): boolean;
  outline(text: string, emMm: number): string;
  readonly ascentEm: number;
  readonly descentEm: number;
}

/** Text metrics from the bytes of the four font files (woff2, woff, ttf or otf), read once by the caller. */
export function textMetricsFrom(fontBytes: Readonly<Record<FontCut, Uint8Array>>): TextMetrics {
  // A cut is opened where a text is first set in it: that takes as long as a sheet to draw.
  const cuts = new Map<FontCut, Cut>();
  const cutOf = (type: TypeStyle): Cut => {
    const name: FontCut = `${type.family}-${type.weight}`;
    const opened = cuts.get(name) ?? openCut(fontBytes[name]);
    cuts.set(name, opened);
    return opened;
  };
  return {
    widthMm: (text, type) => cutOf(type).advanceEm(text) * emMm(type),
    ascentMm: (type) => cutOf(type).ascentEm * emMm(type),
    descentMm: (type) => cutOf(type).descentEm * emMm(type),
    missing: (text, type) => [...new Set(text)].filter((character) => !cutOf(type).has(character)),
    outline: (text, type) => cutOf(type).outline(text, emMm(type)),
  };
}

function openCut(bytes: Uint8Array): Cut {
  const font = fontkit.create(bytes);
  if ('fonts' in font) throw new TypeError('a font collection was given where one font is needed');
  const em = font.unitsPerEm;
  const { ascent, descent } = inkOfAscii(font);
  return {
    advanceEm: pairwise(font),
    has: hasGlyph(font),
    outline: (text, emMm) => glyphOutline(font, text, emMm),
    ascentEm: ascent / em,
    descentEm: descent / em,
  };
}

function hasGlyph(font: fontkit.Font): (character: string) => boolean {
  return (character) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0);
}

function inkOfAscii(font: fontkit.Font): { ascent: number; descent: number } {
  const printable = Array.from({ length: 94 }, (_, index) => font.glyphForCodePoint(33 + index).bbox);
  return {
    ascent: Math.max(...printable.map((box) => box.maxY)),
    descent: -Math.min(...printable.map((box) => box.minY)),
  };
}

/**
 * Sums advances and what each pair of neighbours adds or takes (kerning, and the two-letter ligatures). The
 * shipped type has no longer ones, so this equals a full layout; it is remembered by pair, since a layout
 * costs a third of a millisecond and a site has millions of texts.
 */
function pairwise(font: fontkit.Font): (text: string) => number {
  const singles = new Map<string, number>();
  const pairs = new Map<string, number>();
  const has = hasGlyph(font);
  const single = (character: string): number =>
    remembered(singles, character, () =>
      has(character) ? font.glyphForCodePoint(character.codePointAt(0) ?? 0).advanceWidth : font.unitsPerEm,
    );
  const pair = (left: string, right: string): number =>
    remembered(pairs, left + right, () =>
      has(left) && has(right) ? font.layout(left + right).advanceWidth - single(left) - single(right) : 0,
    );
  return (text) => {
    let units = 0;
    let before: string | null = null;
    for (const character of text) {
      units += single(character) + (before === null ? 0 : pair(before, character));
      before = character;
    }
    return units / font.unitsPerEm;
  };
}
