import { hatchFill } from './hatch.ts';
import { baselineFor, drawText } from './lettering.ts';
import { at, cornersOf, type PaperBox } from './paper.ts';
import { drawShape, fillShape, type Parent } from './pen.ts';
import { lines, types } from './style.ts';
import type { Drawing } from './surface.ts';

/** Height of the band that marks a draft. */
export const draftBandHeightMm = 13;

/**
 * Marks a sheet as a draft: a hatched band across its head, with the word and the reason on clear paper. It
 * has room of its own, so it hides nothing and nothing hides it, in black and white as well.
 */
export function drawDraftBand(drawing: Drawing, parent: Parent, band: PaperBox, reason: string): void {
  fillShape(parent, cornersOf(band), hatchFill(drawing, 'cutaway'));
  const middleMm = (band.topMm + band.bottomMm) / 2;
  const gapMm = 4;
  const markMm = drawing.metrics.widthMm('DRAFT', types.mark);
  const reasonMm = drawing.metrics.widthMm(reason, types.field);
  const startMm = (band.leftMm + band.rightMm - markMm - gapMm - reasonMm) / 2;
  const endMm = startMm + markMm + gapMm + reasonMm;
  const clear = { ...band, leftMm: startMm - gapMm, rightMm: endMm + gapMm };
  fillShape(parent, cornersOf(clear), 'paper');
  drawShape(parent, cornersOf(band), lines.frame);
  drawText(drawing, parent, 'DRAFT', at(startMm, baselineFor(middleMm, types.mark)), {
    type: types.mark,
    ink: 'draft',
  });
  drawText(drawing, parent, reason, at(startMm + markMm + gapMm, baselineFor(middleMm, types.field)), {
    type: types.field,
    ink: 'draft',
  });
}
