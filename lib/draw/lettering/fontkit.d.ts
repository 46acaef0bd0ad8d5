/** The little of fontkit that is used: the package ships no types of its own. */
declare module 'fontkit' {
  export interface GlyphBox {
    readonly minY: number;
    readonly maxY: number;
  }
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    readonly args: readonly number[];
  }
  export interface Glyph {
    readonly advanceWidth: number;
    readonly bbox: GlyphBox;
    readonly path: { readonly commands: readonly PathCommand[] };
  }
  export interface GlyphRun {
    readonly advanceWidth: number;
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly {
      readonly xAdvance: number;
      readonly xOffset: number;
      readonly yOffset: number;
    }[];
  }
  export interface Font {
    readonly unitsPerEm: number;
    readonly capHeight: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
    layout(text: string): GlyphRun;
  }
  export function create(bytes: Uint8Array): Font | { readonly fonts: readonly Font[] };
}
