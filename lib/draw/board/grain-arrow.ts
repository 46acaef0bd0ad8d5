import type { GrainWay } from '../../model/outline.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import { lines, spacing, types } from '../line-styles.ts';
import { at, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawLine } from '../pen.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { freePlace } from './place-arrows.ts';

/** What is said where the arrow finds no free place. */
export const grainLeft = 'grain arrow';

const shaftMm = 16;
const word = 'GRAIN';
const type = types.field;

/** The way that the grain of a board has to run, where its sheet has one. */
export function grainShown({ grain, sheetGrain }: Pick<PlanBoard, 'grain' | 'sheetGrain'>): GrainWay | null {
  return sheetGrain === null ? null : grain;
}

/** Size of the arrow with its word beside it. */
function sizeOf(drawing: Drawing, grain: GrainWay): { readonly width: number; readonly height: number } {
  const wordMm = drawing.metrics.widthMm(word, type) + spacing.labelGapMm + 3;
  const highMm = type.capMm + 2;
  return grain === 'level'
    ? { width: shaftMm + wordMm, height: highMm }
    : { width: 3 + wordMm, height: shaftMm + 2 };
}

/** Draws a way of the grain, an arrow with two heads and the word, into a free place of the room; names it where there is none. */
export function placeGrainArrow(
  drawing: Drawing,
  grain: GrainWay | null,
  room: PaperBox,
  keepOff: readonly PaperBox[] = [],
): string[] {
  if (grain === null) return [];
  const box = freePlace(drawing, room, sizeOf(drawing, grain), { fromRight: true, keepOff });
  if (!box) return [grainLeft];
  const group = openGroup(drawing, drawing.svg, 'grain');
  const middleMm = (box.topMm + box.bottomMm) / 2;
  const [from, to]: readonly [PaperPoint, PaperPoint] =
    grain === 'level'
      ? [at(box.leftMm + 0.5, middleMm), at(box.leftMm + 0.5 + shaftMm, middleMm)]
      : [at(box.leftMm + 1.5, box.bottomMm - 1), at(box.leftMm + 1.5, box.bottomMm - 1 - shaftMm)];
  drawLine(group, [from, to], lines.seen);
  drawArrowHead(group, to, from);
  drawArrowHead(group, from, to);
  const besideMm = Math.max(from.xMm, to.xMm) + spacing.labelGapMm + (grain === 'level' ? 0 : 1);
  drawText(drawing, group, word, at(besideMm, baselineFor(middleMm, type)), { type, align: 'start' });
  return [];
}
