import type { SheetMark } from '../../model/plan/sheet-mark.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines } from '../line-styles.ts';
import { cornersOf, type PaperBox, widthMm } from '../paper.ts';
import { drawShape } from '../pen.ts';
import { type Drawing, layPaper, openGroup } from '../surface.ts';
import { draftBandHeightMm, drawDraftBand } from './draft-band.ts';
import { drawFootStrip, type FootStrip, footStripBox } from './foot-strip.ts';
import { frameBox } from './sheet-format.ts';
import {
  type DrawnTitleBlock,
  drawTitleBlock,
  type TitleBlock,
  titleBlockHeightMm,
  titleBlockWidthMm,
} from './title-block.ts';
import { drawZones } from './zones.ts';

export interface FrameRequest {
  readonly block: TitleBlock;
  /** Why nobody may build from the sheet; null where it is released. */
  readonly mark: SheetMark | null;
  /** Projection of drawings with more than one view. */
  readonly projection: 'first' | 'third' | null;
  /** What holds for the whole sheet, such as how dimensions are written. */
  readonly notes: readonly string[];
}

export interface Frame {
  /** The room that is left for the drawing. */
  readonly room: PaperBox;
  /** Captions of the fields, or `Draft`, whose text is too long for its room even in the smallest type. */
  readonly tooLong: readonly string[];
  /** Writes the number of the sheet into the title block, once; hands back the caption where it is too long. */
  readonly writeNumber: DrawnTitleBlock['writeNumber'];
}

const roomPadMm = 3;

/**
 * Draws the sheet round a drawing: paper, frame and zones after ISO 5457 (mem), title block after ISO 7200,
 * a scale bar that can be measured, the notes, and the band that marks a draft. Portrait sheets have bar and
 * notes in a strip above the title block, landscape ones to the left of it.
 */
export function drawFrame(drawing: Drawing, request: FrameRequest): Frame {
  layPaper(drawing);
  const group = openGroup(drawing, drawing.svg, 'frame');
  const { block, mark } = request;
  const { frame, blockBox, foot, strip, headMm } = partsOf(request);
  drawZones(drawing, group, frame);
  const { tooLong, writeNumber } = drawTitleBlock(drawing, group, blockBox, block);
  const stripBox = drawFootStrip(drawing, group, foot, strip);
  if (mark !== null && !drawDraftBand(drawing, group, { ...frame, bottomMm: frame.topMm + headMm }, mark))
    tooLong.push('Draft');
  drawShape(group, cornersOf(frame), lines.frame);
  return { room: roomIn(frame, headMm, stripBox), tooLong, writeNumber };
}

/** The room that a frame leaves for the drawing, before anything is drawn. */
export function frameRoom(metrics: TextMetrics, request: FrameRequest): PaperBox {
  const { frame, foot, strip, headMm } = partsOf(request);
  return roomIn(frame, headMm, footStripBox(metrics, foot, strip));
}

interface FrameParts {
  readonly frame: PaperBox;
  readonly blockBox: PaperBox;
  /** Where the strip may stand. */
  readonly foot: PaperBox;
  readonly strip: FootStrip;
  /** How high the band of a draft is. */
  readonly headMm: number;
}

function partsOf({ block, mark, projection, notes }: FrameRequest): FrameParts {
  const frame = frameBox(block.format);
  const beside = block.format.orientation === 'landscape';
  const blockMm = beside ? titleBlockWidthMm : widthMm(frame);
  const blockBox = {
    ...frame,
    leftMm: frame.rightMm - blockMm,
    topMm: frame.bottomMm - titleBlockHeightMm,
  };
  return {
    frame,
    blockBox,
    foot: beside ? { ...frame, rightMm: blockBox.leftMm } : { ...frame, bottomMm: blockBox.topMm },
    strip: { ratio: block.scale, projection, notes, leastHeightMm: beside ? titleBlockHeightMm : 0 },
    headMm: mark === null ? 0 : draftBandHeightMm,
  };
}

function roomIn(frame: PaperBox, headMm: number, strip: PaperBox): PaperBox {
  return {
    leftMm: frame.leftMm + roomPadMm,
    topMm: frame.topMm + headMm + roomPadMm,
    rightMm: frame.rightMm - roomPadMm,
    bottomMm: strip.topMm - roomPadMm,
  };
}
