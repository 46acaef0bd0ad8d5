import { drawText, fitText, linePitchMm } from '../lettering/lettering.ts';
import { types } from '../line-styles.ts';
import { at, heightMm, type PaperBox, widthMm } from '../paper.ts';
import type { Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';

/** Writes the title of an item, and lines below it, into the free middle; false where they have no room. */
export function letterMiddle(
  drawing: Drawing,
  parent: Parent,
  free: PaperBox,
  title: string,
  below: readonly string[] = [],
): boolean {
  const { metrics } = drawing;
  const type = types.note;
  const belowMm = below.length * linePitchMm(type);
  const room = { widthMm: widthMm(free) - 1, heightMm: heightMm(free) - belowMm - 1 };
  const fitted = fitText(metrics, title, room, [types.item, types.terminal]);
  const tooWide = below.some((text) => metrics.widthMm(text, type) > room.widthMm);
  if (!fitted.fits || tooWide) return false;
  const pitch = linePitchMm(fitted.type);
  const highMm = fitted.type.capMm + (fitted.lines.length - 1) * pitch + belowMm;
  const xMm = (free.leftMm + free.rightMm) / 2;
  const firstMm = (free.topMm + free.bottomMm) / 2 - highMm / 2 + fitted.type.capMm;
  fitted.lines.forEach((text, index) => {
    drawText(drawing, parent, text, at(xMm, firstMm + index * pitch), { type: fitted.type, align: 'middle' });
  });
  const lastMm = firstMm + (fitted.lines.length - 1) * pitch;
  below.forEach((text, index) => {
    const yMm = lastMm + (index + 1) * linePitchMm(type) + 0.4;
    drawText(drawing, parent, text, at(xMm, yMm), { type, align: 'middle' });
  });
  return true;
}
