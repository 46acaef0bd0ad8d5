/** The little of fontkit that is used: the package ships no types of its own. */
declare module 'fontkit' {
  export interface GlyphBox {
    readonly minY: number;
    readonly maxY: number;
  }
  export interface Glyph {
    readonly advanceWidth: number;
    readonly bbox: GlyphBox;
  }
  export interface Font {
    readonly unitsPerEm: number;
    readonly capHeight: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
    layout(text: string): { readonly advanceWidth: number };
  }
  export function create(bytes: Uint8Array): Font | { readonly fonts: readonly Font[] };
}
