import type { KeepClearKind } from '../../model/plan/board.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import { keepClearStyles, lines, types } from '../line-styles.ts';
import { at, boxAt, cornersOf, type PaperBox } from '../paper.ts';
import { drawPath, drawShape, pathThrough } from '../pen.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { hatchStrokes } from './keep-clear.ts';
import { freePlace } from './place-arrows.ts';

const heading = 'Keep clear:';
const sampleMm = { wide: 9, high: 4 } as const;
const gapMm = 2;
const lineMm = 6;

/** What is said where the key finds no room. */
export const keyLeft = 'key of the rooms to keep clear';

/** Puts what each hatch means into a free place of a room: side by side or, where there is none, one below the other. */
export function placeClearKey(
  drawing: Drawing,
  room: PaperBox,
  kinds: readonly KeepClearKind[],
): readonly string[] {
  if (kinds.length === 0) return [];
  const entryMm = (kind: KeepClearKind): number =>
    sampleMm.wide + 3 * gapMm + drawing.metrics.widthMm(keepClearStyles[kind].name, types.note);
  const headMm = drawing.metrics.widthMm(heading, types.note) + 2 * gapMm;
  const widths = kinds.map(entryMm);
  const row = { width: headMm + widths.reduce((sum, each) => sum + each, gapMm), height: lineMm };
  const column = { width: Math.max(headMm, ...widths) + gapMm, height: lineMm * (kinds.length + 1) };
  const level = freePlace(drawing, room, row);
  if (level) {
    const starts = widths.map((_, nth) => headMm + widths.slice(0, nth).reduce((sum, each) => sum + each, 0));
    drawKey(drawing, level, kinds, (nth) => at(starts[nth] ?? 0, 0));
    return [];
  }
  const upright = freePlace(drawing, room, column);
  if (upright) drawKey(drawing, upright, kinds, (nth) => at(0, (nth + 1) * lineMm));
  return upright ? [] : [keyLeft];
}

function drawKey(
  drawing: Drawing,
  box: PaperBox,
  kinds: readonly KeepClearKind[],
  offset: (nth: number) => ReturnType<typeof at>,
): void {
  const group = openGroup(drawing, drawing.svg, 'keep-clear-key');
  const word = (text: string, leftMm: number, topMm: number): void => {
    const baselineMm = baselineFor(topMm + lineMm / 2, types.note);
    drawText(drawing, group, text, at(leftMm, baselineMm), { type: types.note });
  };
  word(heading, box.leftMm + gapMm, box.topMm);
  for (const [nth, kind] of kinds.entries()) {
    const { xMm, yMm } = offset(nth);
    const [leftMm, topMm] = [box.leftMm + gapMm + xMm, box.topMm + yMm];
    const sample = boxAt(leftMm, topMm + (lineMm - sampleMm.high) / 2, sampleMm.wide, sampleMm.high);
    const { line, name } = keepClearStyles[kind];
    for (const stroke of hatchStrokes(sample, kind)) drawPath(group, pathThrough(stroke), line);
    drawShape(group, cornersOf(sample), lines.rule);
    word(name, sample.rightMm + gapMm, topMm);
  }
}
