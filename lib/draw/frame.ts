import { draftBandHeightMm, drawDraftBand } from './draft-band.ts';
import { drawText, linePitchMm, wrapText } from './lettering.ts';
import { at, boxAt, cornersOf, type PaperBox, widthMm } from './paper.ts';
import { drawLine, drawShape, type Parent } from './pen.ts';
import { drawProjectionMark, projectionMarkMm } from './projection-mark.ts';
import { drawScaleBar, type ScaleBarLength, scaleBarHeightMm, scaleBarWidthMm } from './scale-bar.ts';
import { frameBox } from './sheet-format.ts';
import { lines, types } from './style.ts';
import { type Drawing, layPaper, openGroup } from './surface.ts';
import { drawTitleBlock, type TitleBlock, titleBlockHeightMm, titleBlockWidthMm } from './title-block.ts';
import { drawZones } from './zones.ts';

export interface FrameRequest {
  readonly block: TitleBlock;
  /** Why the sheet is a draft; null where it is released. */
  readonly draft: string | null;
  /** Projection of drawings with more than one view. */
  readonly projection: 'first' | 'third' | null;
  /** What holds for the whole sheet, such as how dimensions are written. */
  readonly notes: readonly string[];
}

export interface Frame {
  /** The room that is left for the drawing. */
  readonly room: PaperBox;
  /** What did not fit: title-block fields by caption, and notes by their words. */
  readonly tooLong: readonly string[];
}

const padMm = 2;
const roomPadMm = 3;
const stripHeightMm = scaleBarHeightMm + 2 * padMm;

/**
 * Draws the sheet round a drawing: paper, frame and zones after ISO 5457 (mem), title block after ISO 7200,
 * a scale bar that can be measured, the notes, and the band that marks a draft. Portrait sheets have bar and
 * notes in a strip above the title block, landscape ones to the left of it.
 */
export function drawFrame(drawing: Drawing, request: FrameRequest): Frame {
  layPaper(drawing);
  const group = openGroup(drawing, drawing.svg, 'frame');
  const frame = frameBox(request.block.format);
  drawZones(drawing, group, frame);
  const beside = request.block.format.orientation === 'landscape';
  const blockMm = beside ? titleBlockWidthMm : widthMm(frame);
  const block = boxAt(
    frame.rightMm - blockMm,
    frame.bottomMm - titleBlockHeightMm,
    blockMm,
    titleBlockHeightMm,
  );
  const strip = beside
    ? { ...block, leftMm: frame.leftMm, rightMm: block.leftMm }
    : { ...frame, topMm: block.topMm - stripHeightMm, bottomMm: block.topMm };
  const unfit = drawTitleBlock(drawing, group, block, request.block);
  const notes = drawStrip(drawing, group, strip, request);
  drawLine(group, [at(frame.leftMm, strip.topMm), at(strip.rightMm, strip.topMm)], lines.rule);
  const headMm = request.draft === null ? 0 : draftBandHeightMm;
  if (request.draft !== null)
    drawDraftBand(drawing, group, { ...frame, bottomMm: frame.topMm + headMm }, request.draft);
  drawShape(group, cornersOf(frame), lines.frame);
  return {
    room: {
      leftMm: frame.leftMm + roomPadMm,
      topMm: frame.topMm + headMm + roomPadMm,
      rightMm: frame.rightMm - roomPadMm,
      bottomMm: strip.topMm - roomPadMm,
    },
    tooLong: [...unfit, ...notes],
  };
}

/** Bar and notes: side by side where the strip is wide, one below the other where it is not; the mark at the right. */
function drawStrip(
  drawing: Drawing,
  parent: Parent,
  strip: PaperBox,
  request: FrameRequest,
): readonly string[] {
  const { scale, format } = request.block;
  const wide = format.orientation === 'portrait';
  const length: ScaleBarLength = wide ? 'long' : 'short';
  let { leftMm, topMm } = { leftMm: strip.leftMm + padMm, topMm: strip.topMm + padMm };
  let rightMm = strip.rightMm - padMm;
  if (scale !== null) {
    drawScaleBar(drawing, parent, { ratio: scale, topLeft: at(leftMm, topMm), length });
    if (wide) leftMm += scaleBarWidthMm(length);
    else topMm += scaleBarHeightMm + padMm / 2;
  }
  if (request.projection !== null) {
    rightMm -= projectionMarkMm.width;
    drawProjectionMark(parent, at(rightMm, topMm), request.projection);
    rightMm -= padMm;
  }
  const notes = scale === null ? ['Not to scale', ...request.notes] : request.notes;
  return drawNotes(drawing, parent, { ...strip, leftMm, topMm, rightMm }, notes);
}

/** Writes notes from the top of a box; returns those that it has no room for. */
function drawNotes(drawing: Drawing, parent: Parent, box: PaperBox, notes: readonly string[]): string[] {
  const type = types.note;
  let baselineMm = box.topMm + type.capMm;
  return notes.filter((note) => {
    const broken = wrapText(drawing.metrics, note, widthMm(box), type);
    const lastMm = baselineMm + (broken.length - 1) * linePitchMm(type);
    if (lastMm + drawing.metrics.descentMm(type) > box.bottomMm) return true;
    for (const text of broken) {
      drawText(drawing, parent, text, at(box.leftMm, baselineMm), { type });
      baselineMm += linePitchMm(type);
    }
    return false;
  });
}
