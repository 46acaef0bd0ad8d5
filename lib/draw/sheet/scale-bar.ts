import { drawText } from '../lettering/lettering.ts';
import { lines, spacing, types } from '../line-styles.ts';
import { at, boxAt, cornersOf, type PaperPoint } from '../paper.ts';
import { drawShape, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import { type ScaleRatio, scaleText } from './scale.ts';

/** One bar: its true length on paper, and how it is divided. */
interface Bar {
  readonly unitMm: number;
  readonly unit: string;
  /** Blocks of one unit, or of a part of it, black and white in turn. */
  readonly blocks: number;
  readonly blockUnits: number;
  /** A figure at every so many blocks. */
  readonly figureEvery: number;
}

/** Long and short sets: 100 mm over 4 in, or 50 mm over 2 in. */
const barSets = {
  long: {
    mm: { unitMm: 1, unit: 'mm', blocks: 10, blockUnits: 10, figureEvery: 2 },
    inch: { unitMm: 25.4, unit: 'in', blocks: 8, blockUnits: 0.5, figureEvery: 2 },
  },
  short: {
    mm: { unitMm: 1, unit: 'mm', blocks: 5, blockUnits: 10, figureEvery: 5 },
    inch: { unitMm: 25.4, unit: 'in', blocks: 4, blockUnits: 0.5, figureEvery: 2 },
  },
} as const satisfies Record<string, { mm: Bar; inch: Bar }>;
export type ScaleBarLength = keyof typeof barSets;

const barHeightMm = 1.6;
const figureGapMm = 1;

/** Height of the bars with their figures and the line that says how to measure them. */
export const scaleBarHeightMm = 4 * types.note.capMm + 2 * barHeightMm + 4 * figureGapMm;

/** Width on paper, the last figures' overhang included. */
export function scaleBarWidthMm(length: ScaleBarLength): number {
  const { mm, inch } = barSets[length];
  return Math.max(barLengthMm(mm), barLengthMm(inch)) + 14;
}

/**
 * Draws two bars, millimetres above inches, with their lengths in the scale of the drawing. A ruler laid on
 * them tells whether the print is true, and a pair of dividers takes a length off them.
 */
export function drawScaleBar(
  drawing: Drawing,
  parent: Parent,
  { ratio, topLeft, length }: { ratio: ScaleRatio; topLeft: PaperPoint; length: ScaleBarLength },
): void {
  const { mm, inch } = barSets[length];
  const type = types.note;
  const { xMm, yMm } = topLeft;
  const figuresMm = yMm + type.capMm;
  const barsMm = figuresMm + figureGapMm;
  drawBlocks(parent, mm, at(xMm, barsMm), 0);
  drawBlocks(parent, inch, at(xMm, barsMm + barHeightMm), 1);
  drawFigures(drawing, parent, { bar: mm, ratio, leftMm: xMm, baselineMm: figuresMm });
  const lowerMm = barsMm + 2 * barHeightMm + figureGapMm + type.capMm;
  drawFigures(drawing, parent, { bar: inch, ratio, leftMm: xMm, baselineMm: lowerMm });
  const inches = (inch.blocks * inch.blockUnits).toString();
  const said = `${scaleText(ratio)} where the bars measure ${mm.blocks * mm.blockUnits} mm and ${inches} in`;
  drawText(drawing, parent, said, at(xMm, lowerMm + type.capMm + 2 * figureGapMm), { type });
}

function barLengthMm(bar: Bar): number {
  return bar.blocks * bar.blockUnits * bar.unitMm;
}

function drawBlocks(parent: Parent, bar: Bar, topLeft: PaperPoint, firstFilled: 0 | 1): void {
  const blockMm = bar.blockUnits * bar.unitMm;
  for (let block = 0; block < bar.blocks; block += 1) {
    const box = boxAt(topLeft.xMm + block * blockMm, topLeft.yMm, blockMm, barHeightMm);
    drawShape(parent, cornersOf(box), lines.rule, block % 2 === firstFilled ? 'line' : 'paper');
  }
}

interface Figures {
  readonly bar: Bar;
  readonly ratio: ScaleRatio;
  readonly leftMm: number;
  readonly baselineMm: number;
}

function drawFigures(drawing: Drawing, parent: Parent, { bar, ratio, leftMm, baselineMm }: Figures): void {
  const type = types.note;
  for (let block = 0; block <= bar.blocks; block += bar.figureEvery) {
    const figure = String(Number((block * bar.blockUnits * ratio).toFixed(2)));
    const xMm = leftMm + block * bar.blockUnits * bar.unitMm;
    const align = block === 0 ? 'start' : 'middle';
    const box = drawText(drawing, parent, figure, at(xMm, baselineMm), { type, align });
    if (block === bar.blocks)
      drawText(drawing, parent, bar.unit, at(box.rightMm + spacing.clearMm, baselineMm), { type });
  }
}
