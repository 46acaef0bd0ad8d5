import { baselineFor, drawText } from './lettering/lettering.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { types } from './line-styles.ts';
import { at, type PaperBox, type PaperPoint, widthMm } from './paper.ts';
import type { Parent } from './pen.ts';
import type { Drawing } from './surface.ts';

/** Sizes of a key, millimetres: a sample, the gap to its name, that to the next, the height of a line. */
export interface KeySizes {
  readonly sampleMm: number;
  readonly gapMm: number;
  readonly betweenMm: number;
  readonly lineMm: number;
}

/** What a key tells: a sample of a line beside its name. */
export interface KeyEntry {
  readonly name: string;
  readonly drawSample: (parent: Parent, from: PaperPoint, to: PaperPoint) => void;
}

type Named = Pick<KeyEntry, 'name'>;

/** Height of a key in a room so wide. */
export function keyStripHeightMm(
  metrics: TextMetrics,
  entries: readonly Named[],
  wideMm: number,
  sizes: KeySizes,
): number {
  return linesOf(metrics, entries, wideMm, sizes).length * sizes.lineMm;
}

/** Draws a key, its entries side by side, in the middle of the head of a room. */
export function drawKeyStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  entries: readonly KeyEntry[],
  sizes: KeySizes,
): void {
  const { metrics } = drawing;
  const { sampleMm, gapMm, betweenMm, lineMm } = sizes;
  linesOf(metrics, entries, widthMm(room), sizes).forEach((line, nth) => {
    const middleMm = room.topMm + (nth + 0.5) * lineMm;
    let xMm = (room.leftMm + room.rightMm - lineWidthMm(metrics, line, sizes)) / 2;
    for (const entry of line) {
      entry.drawSample(parent, at(xMm, middleMm), at(xMm + sampleMm, middleMm));
      const point = at(xMm + sampleMm + gapMm, baselineFor(middleMm, types.note));
      drawText(drawing, parent, entry.name, point, { type: types.note });
      xMm += entryMm(metrics, entry, sizes) + betweenMm;
    }
  });
}

function entryMm(metrics: TextMetrics, { name }: Named, { sampleMm, gapMm }: KeySizes): number {
  return sampleMm + gapMm + metrics.widthMm(name, types.note);
}

function lineWidthMm(metrics: TextMetrics, line: readonly Named[], sizes: KeySizes): number {
  const { betweenMm } = sizes;
  return line.reduce((sum, entry) => sum + entryMm(metrics, entry, sizes) + betweenMm, -betweenMm);
}

/** As many entries on each line as a width takes. */
function linesOf<T extends Named>(
  metrics: TextMetrics,
  entries: readonly T[],
  wideMm: number,
  sizes: KeySizes,
): T[][] {
  const broken: T[][] = [];
  for (const entry of entries) {
    const last = broken.at(-1);
    if (last && lineWidthMm(metrics, [...last, entry], sizes) <= wideMm) last.push(entry);
    else broken.push([entry]);
  }
  return broken;
}
