import type { ConductorRole } from '../model/vocabulary.ts';
import { drawConductor } from './conductor-line.ts';
import { baselineFor, drawText } from './lettering/lettering.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { at, type PaperBox, widthMm } from './paper.ts';
import type { Parent } from './pen.ts';
import { roleStyles, types } from './style.ts';
import { type Drawing, openGroup } from './surface.ts';

const sampleMm = 13;
const gapMm = 2;
const betweenMm = 5;

const lineMm = 5.5;

/** Height of a key in a room so wide. */
export function roleStripHeightMm(
  metrics: TextMetrics,
  roles: readonly ConductorRole[],
  widthMm: number,
): number {
  return linesOf(metrics, roles, widthMm).length * lineMm;
}

function entryMm(metrics: TextMetrics, role: ConductorRole): number {
  return sampleMm + gapMm + metrics.widthMm(roleStyles[role].name, types.note);
}

function lineWidthMm(metrics: TextMetrics, line: readonly ConductorRole[]): number {
  return line.reduce((sum, role) => sum + entryMm(metrics, role) + betweenMm, -betweenMm);
}

/** As many entries on each line as a width takes. */
function linesOf(metrics: TextMetrics, roles: readonly ConductorRole[], widthMm: number): ConductorRole[][] {
  const broken: ConductorRole[][] = [];
  for (const role of roles) {
    const last = broken.at(-1);
    if (last && lineWidthMm(metrics, [...last, role]) <= widthMm) last.push(role);
    else broken.push([role]);
  }
  return broken;
}

/** Draws the key of conductor lines side by side, in the middle of the head of a room. */
export function drawRoleStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  roles: readonly ConductorRole[],
): void {
  const group = openGroup(drawing, parent);
  const { metrics } = drawing;
  linesOf(metrics, roles, widthMm(room)).forEach((line, nth) => {
    const middleMm = room.topMm + (nth + 0.5) * lineMm;
    let xMm = (room.leftMm + room.rightMm - lineWidthMm(metrics, line)) / 2;
    for (const role of line) {
      drawConductor(group, [at(xMm, middleMm), at(xMm + sampleMm, middleMm)], role);
      const point = at(xMm + sampleMm + gapMm, baselineFor(middleMm, types.note));
      drawText(drawing, group, roleStyles[role].name, point, { type: types.note });
      xMm += entryMm(metrics, role) + betweenMm;
    }
  });
}
