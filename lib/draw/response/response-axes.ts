import { baselineFor, drawText } from '../lettering/lettering.ts';
import { type LineStyle, lines, types } from '../line-styles.ts';
import { at, cornersOf, heightMm, type PaperBox, type PaperPoint, widthMm } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';

/** What is heard, and the levels that tell one path from the next. */
export const axes = { fromHz: 20, toHz: 20_000, fromDb: -30, toDb: 6 } as const;
const stepDb = 6;
/** Frequencies that are written at the axis of a whole sheet. */
export const labelledHz = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000] as const;
const tickMm = 1.6;
const grid: LineStyle = { ...lines.hatch, elements: 'dotted' };

/** Room round the field of a graph for the figures at its axes. */
export const axisRoomMm = { left: 11, right: 5, bottom: 7 } as const;

/** Where a frequency and a level stand in a field: frequency on a logarithmic axis. */
export function placeIn(field: PaperBox, frequencyHz: number, levelDb: number): PaperPoint {
  const along = Math.log(frequencyHz / axes.fromHz) / Math.log(axes.toHz / axes.fromHz);
  const down = (axes.toDb - levelDb) / (axes.toDb - axes.fromDb);
  return at(field.leftMm + along * widthMm(field), field.topMm + down * heightMm(field));
}

/** Draws grid lines: every 6 dB, and the frequencies that are written at the axis. */
export function drawGrid(parent: Parent, field: PaperBox): void {
  for (let levelDb = axes.fromDb + stepDb; levelDb < axes.toDb; levelDb += stepDb) {
    const { yMm } = placeIn(field, axes.fromHz, levelDb);
    drawLine(parent, [at(field.leftMm, yMm), at(field.rightMm, yMm)], levelDb === 0 ? lines.hatch : grid);
  }
  for (const frequencyHz of labelledHz.slice(1, -1)) {
    const { xMm } = placeIn(field, frequencyHz, 0);
    drawLine(parent, [at(xMm, field.topMm), at(xMm, field.bottomMm)], grid);
  }
}

/** Draws the frame of a field with ticks at every digit of a decade, and the figures of both axes. */
export function drawAxes(
  drawing: Drawing,
  parent: Parent,
  field: PaperBox,
  writtenHz: readonly number[],
): void {
  drawShape(parent, cornersOf(field), lines.part);
  for (const decade of [10, 100, 1000, 10_000])
    for (let digit = 1; digit < 10; digit += 1) {
      const frequencyHz = decade * digit;
      if (frequencyHz <= axes.fromHz || frequencyHz >= axes.toHz) continue;
      const { xMm } = placeIn(field, frequencyHz, 0);
      drawLine(parent, [at(xMm, field.bottomMm - tickMm), at(xMm, field.bottomMm)], lines.dimension);
    }
  const type = types.dimension;
  for (const frequencyHz of writtenHz) {
    const { xMm } = placeIn(field, frequencyHz, 0);
    const unit = frequencyHz === axes.toHz ? ' Hz' : '';
    const text = (frequencyHz >= 1000 ? `${frequencyHz / 1000} k` : `${frequencyHz}`) + unit;
    // The first keeps clear of the figures at the left, the last of the edge of the sheet.
    const align = frequencyHz === axes.fromHz ? 'start' : frequencyHz === axes.toHz ? 'end' : 'middle';
    const pointMm = align === 'end' ? field.rightMm + axisRoomMm.right - 1 : xMm;
    drawText(drawing, parent, text, at(pointMm, field.bottomMm + 1.6 + type.capMm), { type, align });
  }
  for (let levelDb: number = axes.fromDb; levelDb <= axes.toDb; levelDb += stepDb) {
    const { yMm } = placeIn(field, axes.fromHz, levelDb);
    const text = levelDb === axes.toDb ? `+${levelDb} dB` : `${levelDb}`;
    const point = at(field.leftMm - 1.4, baselineFor(yMm, type));
    drawText(drawing, parent, text, point, { type, align: 'end' });
  }
}
