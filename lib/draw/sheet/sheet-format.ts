import type { PaperBox } from '../paper.ts';

/** Sheets that a shop's printer takes, portrait, in millimetres (ISO 216; Letter is 8 1/2 by 11 in, Tabloid 11 by 17 in). */
export const sheetFormats = {
  Letter: { widthMm: 215.9, heightMm: 279.4 },
  A4: { widthMm: 210, heightMm: 297 },
  Tabloid: { widthMm: 279.4, heightMm: 431.8 },
  A3: { widthMm: 297, heightMm: 420 },
} as const;
export type SheetFormatName = keyof typeof sheetFormats;
/** What a shop prints everything on that asks for no larger sheet. */
export type UsualFormatName = Extract<SheetFormatName, 'Letter' | 'A4'>;

export interface SheetFormat {
  readonly name: SheetFormatName;
  readonly orientation: 'portrait' | 'landscape';
}

/** Margins after ISO 5457 (mem): 20 mm on the filing edge, 10 mm on the others. */
export const sheetMarginsMm = { filing: 20, other: 10 } as const;

/** The sheet's size as it is read. */
export function sheetSize({ name, orientation }: SheetFormat): { widthMm: number; heightMm: number } {
  const { widthMm, heightMm } = sheetFormats[name];
  return orientation === 'portrait' ? { widthMm, heightMm } : { widthMm: heightMm, heightMm: widthMm };
}

/** The frame: everything that is drawn stands inside it. */
export function frameBox(format: SheetFormat): PaperBox {
  const { widthMm, heightMm } = sheetSize(format);
  return frameRound(widthMm, heightMm);
}

/** The frame of a sheet so large. */
export function frameRound(widthMm: number, heightMm: number): PaperBox {
  const { filing, other } = sheetMarginsMm;
  return { leftMm: filing, topMm: other, rightMm: widthMm - other, bottomMm: heightMm - other };
}
