import type { ConductorRole } from '../model/vocabulary.ts';
import { drawConductor } from './conductor-line.ts';
import { baselineFor, drawText } from './lettering/lettering.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { at, type PaperBox, widthMm } from './paper.ts';
import type { Parent } from './pen.ts';
import { types } from './style.ts';
import { type Drawing, openGroup } from './surface.ts';

const sampleMm = 13;
const gapMm = 2;
const betweenMm = 5;

const lineMm = 5.5;

/** Height of a key in a room so wide. */
export function roleStripHeightMm(
  metrics: TextMetrics,
  entries: readonly StripEntry[],
  widthMm: number,
): number {
  return linesOf(metrics, entries, widthMm).length * lineMm;
}

/** A line of a role, and what it stands for on a sheet. */
export interface StripEntry {
  readonly role: ConductorRole;
  readonly name: string;
}

function entryMm(metrics: TextMetrics, { name }: StripEntry): number {
  return sampleMm + gapMm + metrics.widthMm(name, types.note);
}

function lineWidthMm(metrics: TextMetrics, line: readonly StripEntry[]): number {
  return line.reduce((sum, entry) => sum + entryMm(metrics, entry) + betweenMm, -betweenMm);
}

/** As many entries on each line as a width takes. */
function linesOf(metrics: TextMetrics, entries: readonly StripEntry[], widthMm: number): StripEntry[][] {
  const broken: StripEntry[][] = [];
  for (const entry of entries) {
    const last = broken.at(-1);
    if (last && lineWidthMm(metrics, [...last, entry]) <= widthMm) last.push(entry);
    else broken.push([entry]);
  }
  return broken;
}

/** Draws the key of conductor lines side by side, in the middle of the head of a room. */
export function drawRoleStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  entries: readonly StripEntry[],
): void {
  const group = openGroup(drawing, parent);
  const { metrics } = drawing;
  linesOf(metrics, entries, widthMm(room)).forEach((line, nth) => {
    const middleMm = room.topMm + (nth + 0.5) * lineMm;
    let xMm = (room.leftMm + room.rightMm - lineWidthMm(metrics, line)) / 2;
    for (const entry of line) {
      drawConductor(group, [at(xMm, middleMm), at(xMm + sampleMm, middleMm)], entry.role);
      const point = at(xMm + sampleMm + gapMm, baselineFor(middleMm, types.note));
      drawText(drawing, group, entry.name, point, { type: types.note });
      xMm += entryMm(metrics, entry) + betweenMm;
    }
  });
}
