import type { PlanWire } from '../../model/plan/index.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { at, type PaperBox, widthMm } from '../paper.ts';
import { type Parent, pathThrough } from '../pen.ts';
import { types } from '../style.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { drawBody } from './conductor-body.ts';
import { insulationWords } from './insulation.ts';

const [sampleMm, gapMm, betweenMm, lineMm, bodyMm] = [11, 1.6, 4.5, 5, 1.4];

/** The insulations of wires in the order of their letters; null stands for cables. */
export function insulationsIn(
  wires: readonly Pick<PlanWire, 'colour'>[],
  withSheath: boolean,
): (string | null)[] {
  const letters = [...new Set(wires.flatMap(({ colour }) => colour ?? []))].sort();
  return withSheath || wires.some(({ colour }) => colour === null) ? [...letters, null] : letters;
}

function entryMm(metrics: TextMetrics, letters: string | null): number {
  return sampleMm + gapMm + metrics.widthMm(insulationWords(letters), types.note);
}

function rowMm(metrics: TextMetrics, row: readonly (string | null)[]): number {
  return row.reduce((sum, each) => sum + entryMm(metrics, each) + betweenMm, -betweenMm);
}

/** As many entries in each row as a width takes. */
function rowsOf(metrics: TextMetrics, all: readonly (string | null)[], wideMm: number): (string | null)[][] {
  const rows: (string | null)[][] = [];
  for (const each of all) {
    const last = rows.at(-1);
    if (last && rowMm(metrics, [...last, each]) <= wideMm) last.push(each);
    else rows.push([each]);
  }
  return rows;
}

/** Height of the key of insulations in a room so wide. */
export function insulationStripHeightMm(
  metrics: TextMetrics,
  all: readonly (string | null)[],
  wideMm: number,
): number {
  return rowsOf(metrics, all, wideMm).length * lineMm;
}

/** Draws the key of insulations in the middle of the head of a room: colour and pattern beside letters and word. */
export function drawInsulationStrip(
  drawing: Drawing,
  parent: Parent,
  room: PaperBox,
  all: readonly (string | null)[],
): void {
  const group = openGroup(drawing, parent, 'insulations');
  const { metrics } = drawing;
  rowsOf(metrics, all, widthMm(room)).forEach((row, nth) => {
    const middleMm = room.topMm + (nth + 0.5) * lineMm;
    let xMm = (room.leftMm + room.rightMm - rowMm(metrics, row)) / 2;
    for (const letters of row) {
      drawBody(group, pathThrough([at(xMm, middleMm), at(xMm + sampleMm, middleMm)]), bodyMm, letters);
      const point = at(xMm + sampleMm + gapMm, baselineFor(middleMm, types.note));
      drawText(drawing, group, insulationWords(letters), point, { type: types.note });
      xMm += entryMm(metrics, letters) + betweenMm;
    }
  });
}
