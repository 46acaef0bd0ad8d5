import { drawLines, linePitchMm, wrapText } from '../lettering/lettering.ts';
import { at, type PaperBox, widthMm } from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import { lines, types } from '../style.ts';
import type { Drawing } from '../surface.ts';
import { drawProjectionMark, projectionMarkMm } from './projection-mark.ts';
import type { ScaleRatio } from './scale.ts';
import { drawScaleBar, scaleBarHeightMm, scaleBarWidthMm } from './scale-bar.ts';

export interface FootStrip {
  /** Null for a diagram: the strip then says that it is not to scale. */
  readonly ratio: ScaleRatio | null;
  readonly projection: 'first' | 'third' | null;
  readonly notes: readonly string[];
  readonly leastHeightMm: number;
}

const padMm = 2;
/** The least width in which notes stand beside the long bar and the projection mark. */
const wideMm = 150;

/**
 * Draws scale bar, notes and projection mark at the foot of a box, and a rule above them: side by side where
 * the box is wide, notes below the bar where it is not. As high as its notes need, so no note is left out.
 */
export function drawFootStrip(drawing: Drawing, parent: Parent, foot: PaperBox, strip: FootStrip): PaperBox {
  const length = widthMm(foot) >= wideMm ? 'long' : 'short';
  const bar =
    strip.ratio === null ? { wide: 0, high: 0 } : { wide: scaleBarWidthMm(length), high: scaleBarHeightMm };
  const mark =
    strip.projection === null
      ? { wide: 0, high: 0 }
      : { wide: projectionMarkMm.width + padMm, high: projectionMarkMm.height };
  const beside = length === 'long';
  const leftMm = foot.leftMm + padMm + (beside ? bar.wide : 0);
  const markMm = foot.rightMm - padMm - mark.wide;
  const texts = notesOf(strip).flatMap((note) =>
    wrapText(drawing.metrics, note, markMm - leftMm, types.note),
  );
  const notesMm = texts.length * linePitchMm(types.note);
  const besideBar = Math.max(notesMm, mark.high);
  const highMm = 2 * padMm + (beside ? Math.max(bar.high, besideBar) : bar.high + padMm / 2 + besideBar);
  const box = { ...foot, topMm: foot.bottomMm - Math.max(highMm, strip.leastHeightMm) };
  const topMm = box.topMm + padMm;
  const notesTopMm = beside ? topMm : topMm + bar.high + padMm / 2;
  if (strip.ratio !== null)
    drawScaleBar(drawing, parent, { ratio: strip.ratio, topLeft: at(foot.leftMm + padMm, topMm), length });
  if (strip.projection !== null) drawProjectionMark(parent, at(markMm + padMm, notesTopMm), strip.projection);
  drawLines(drawing, parent, texts, at(leftMm, notesTopMm + types.note.capMm), { type: types.note });
  drawLine(
    parent,
    [at(box.leftMm, box.topMm), at(box.rightMm, box.topMm), at(box.rightMm, box.bottomMm)],
    lines.rule,
  );
  return box;
}

function notesOf({ ratio, notes }: FootStrip): readonly string[] {
  return ratio === null ? ['Not to scale', ...notes] : notes;
}
