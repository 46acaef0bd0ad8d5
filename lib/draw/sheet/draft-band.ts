import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import { hatchFill } from '../hatch.ts';
import { baselineFor, drawLines, drawText, fitText, linePitchMm } from '../lettering/lettering.ts';
import { lines, types } from '../line-styles.ts';
import { at, cornersOf, heightMm, type PaperBox, widthMm } from '../paper.ts';
import { drawShape, fillShape, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';

/** Height of the band that marks a draft. */
export const draftBandHeightMm = 13;

const gapMm = 4;
/** Hatching at each end that stays in sight, however long the reason. */
const hatchMm = 8;
const padMm = 1;

/**
 * Marks a sheet that nobody may build from: a hatched band across its head, with the word and the reason on clear paper. It
 * has room of its own, so it hides nothing and nothing hides it, in black and white as well. False where the
 * reason is too long for the band.
 */
export function drawDraftBand(drawing: Drawing, parent: Parent, band: PaperBox, mark: SheetMark): boolean {
  const { word, reason } = mark;
  const markMm = drawing.metrics.widthMm(word, types.mark);
  const room = {
    widthMm: widthMm(band) - 2 * hatchMm - 3 * gapMm - markMm,
    heightMm: heightMm(band) - 2 * padMm,
  };
  const fitted = fitText(drawing.metrics, reason, room, [types.field, types.note]);
  const reasonMm = Math.max(0, ...fitted.lines.map((each) => drawing.metrics.widthMm(each, fitted.type)));
  const startMm = (band.leftMm + band.rightMm - markMm - gapMm - reasonMm) / 2;
  const endMm = startMm + markMm + gapMm + reasonMm;
  fillShape(parent, cornersOf(band), hatchFill(drawing, 'cutaway'));
  fillShape(parent, cornersOf({ ...band, leftMm: startMm - gapMm, rightMm: endMm + gapMm }), 'paper');
  drawShape(parent, cornersOf(band), lines.frame);
  const middleMm = (band.topMm + band.bottomMm) / 2;
  const ink = 'draft';
  drawText(drawing, parent, word, at(startMm, baselineFor(middleMm, types.mark)), {
    type: types.mark,
    ink,
  });
  const firstMm = middleMm - ((fitted.lines.length - 1) * linePitchMm(fitted.type)) / 2;
  const point = at(startMm + markMm + gapMm, baselineFor(firstMm, fitted.type));
  drawLines(drawing, parent, fitted.lines, point, { type: fitted.type, ink });
  return fitted.fits;
}
