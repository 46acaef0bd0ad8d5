import { drawLines, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, type PaperBox, type PaperPoint, widthMm } from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import { drawProjectionMark, projectionMarkMm } from './projection-mark.ts';
import type { ScaleRatio } from './scale.ts';
import { drawScaleBar, type ScaleBarLength, scaleBarHeightMm, scaleBarWidthMm } from './scale-bar.ts';

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

/** Where what stands in a strip falls. */
interface LaidStrip {
  readonly box: PaperBox;
  readonly length: ScaleBarLength;
  readonly texts: readonly string[];
  readonly notes: PaperPoint;
  readonly mark: PaperPoint;
}

/** The room that a strip takes at the foot of a box. */
export function footStripBox(metrics: TextMetrics, foot: PaperBox, strip: FootStrip): PaperBox {
  return layStrip(metrics, foot, strip).box;
}

function layStrip(metrics: TextMetrics, foot: PaperBox, strip: FootStrip): LaidStrip {
  const length = widthMm(foot) >= wideMm ? 'long' : 'short';
  const bar =
    strip.ratio === null ? { wide: 0, high: 0 } : { wide: scaleBarWidthMm(length), high: scaleBarHeightMm };
  const markRoom =
    strip.projection === null
      ? { wide: 0, high: 0 }
      : { wide: projectionMarkMm.width + padMm, high: projectionMarkMm.height };
  const beside = length === 'long';
  const leftMm = foot.leftMm + padMm + (beside ? bar.wide : 0);
  const markMm = foot.rightMm - padMm - markRoom.wide;
  const texts = notesOf(strip).flatMap((note) => wrapText(metrics, note, markMm - leftMm, types.note));
  const notesMm = texts.length * linePitchMm(types.note);
  const besideBar = Math.max(notesMm, markRoom.high);
  const highMm = 2 * padMm + (beside ? Math.max(bar.high, besideBar) : bar.high + padMm / 2 + besideBar);
  const box = { ...foot, topMm: foot.bottomMm - Math.max(highMm, strip.leastHeightMm) };
  const topMm = box.topMm + padMm;
  const notesTopMm = beside ? topMm : topMm + bar.high + padMm / 2;
  const mark = at(markMm + padMm, notesTopMm);
  return { box, length, texts, notes: at(leftMm, notesTopMm + types.note.capMm), mark };
}

/**
 * Draws scale bar, notes and projection mark at the foot of a box, and a rule above them: side by side where
 * the box is wide, notes below the bar where it is not. As high as its notes need, so no note is left out.
 */
export function drawFootStrip(drawing: Drawing, parent: Parent, foot: PaperBox, strip: FootStrip): PaperBox {
  const { box, length, texts, notes, mark } = layStrip(drawing.metrics, foot, strip);
  const topLeft = at(foot.leftMm + padMm, box.topMm + padMm);
  if (strip.ratio !== null) drawScaleBar(drawing, parent, { ratio: strip.ratio, topLeft, length });
  if (strip.projection !== null) drawProjectionMark(parent, mark, strip.projection);
  drawLines(drawing, parent, texts, notes, { type: types.note });
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
