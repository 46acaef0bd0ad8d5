import type { Side } from '../../board/layout/item.ts';
import { type KeepClear, type KeepClearKind, keepClearKinds } from '../../model/plan/board.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { keepClearPitchMm, keepClearStyles, type LineStyle, lines, spacing } from '../line-styles.ts';
import { at, grown, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawPath, type Parent, pathThrough } from '../pen.ts';
import { lengthOnPaper, type PlanView } from '../sheet/scale.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { surroundingsBox } from './board-base.ts';
import { clippedLine, interrupted } from './clip.ts';
import type { ItemOnBoard } from './item-on-board.ts';
import type { BoardScene } from './scaled-sheet.ts';

/** A strip of paper in front of a side of an item, and for what it is kept clear. */
export interface ClearBand {
  readonly box: PaperBox;
  readonly side: Side;
  readonly kinds: readonly KeepClearKind[];
}

/** Depths closer to each other than this are one limit, millimetres of paper. */
const sameMm = 0.2;

/**
 * The rooms of an item on paper, to scale. Of several rooms on one side, each shows from the limit of the smaller
 * one to its own, so that no hatch hides another; those that end together share a strip.
 */
export function clearBands(box: PaperBox, rooms: readonly KeepClear[], view: PlanView): ClearBand[] {
  const sides = [...new Set(rooms.map(({ side }) => side))];
  return sides.flatMap((side) => {
    const bands: ClearBand[] = [];
    let fromMm = 0;
    const own = rooms.filter((room) => room.side === side).toSorted((a, b) => a.depthM - b.depthM);
    for (const { kind, depthM } of own) {
      const toMm = lengthOnPaper(view, depthM);
      const last = bands.at(-1);
      if (last && toMm - fromMm < sameMm) bands[bands.length - 1] = { ...last, kinds: [...last.kinds, kind] };
      else bands.push({ box: stripOf(box, side, fromMm, toMm), side, kinds: [kind] });
      fromMm = Math.max(fromMm, toMm);
    }
    return bands;
  });
}

function stripOf(box: PaperBox, side: Side, fromMm: number, toMm: number): PaperBox {
  if (side === 'left') return { ...box, leftMm: box.leftMm - toMm, rightMm: box.leftMm - fromMm };
  if (side === 'right') return { ...box, leftMm: box.rightMm + fromMm, rightMm: box.rightMm + toMm };
  if (side === 'top') return { ...box, topMm: box.topMm - toMm, bottomMm: box.topMm - fromMm };
  return { ...box, topMm: box.bottomMm + fromMm, bottomMm: box.bottomMm + toMm };
}

/** Hatches what must stay clear round the items. Drawn last, below all else: it makes way for items and texts. */
export function drawKeepClear(
  drawing: Drawing,
  parent: Parent,
  scene: BoardScene,
  items: readonly ItemOnBoard[],
): void {
  const frame = surroundingsBox(scene);
  const taken = [
    ...items.map(({ box }) => box),
    ...drawing.texts.map(({ box }) => grown(box, spacing.clearMm)),
  ];
  const draw = (group: Parent, points: readonly PaperPoint[], line: LineStyle): void => {
    const pieces = clippedLine(points, frame).flatMap((piece) => interrupted(piece, taken));
    for (const piece of pieces) drawPath(group, pathThrough(piece), line);
  };
  for (const { item, placement, box } of items) {
    const group = openSubject(drawing, parent, item.id);
    for (const band of clearBands(box, placement.keepClear, scene.view)) {
      for (const kind of band.kinds)
        for (const stroke of hatchStrokes(band.box, kind)) draw(group, stroke, keepClearStyles[kind].line);
      draw(group, limitOf(band), lines.clearLimit);
    }
  }
}

/** The far side of a strip. */
function limitOf({ box, side }: ClearBand): PaperPoint[] {
  const { leftMm, rightMm, topMm, bottomMm } = box;
  if (side === 'left') return [at(leftMm, topMm), at(leftMm, bottomMm)];
  if (side === 'right') return [at(rightMm, topMm), at(rightMm, bottomMm)];
  if (side === 'top') return [at(leftMm, topMm), at(rightMm, topMm)];
  return [at(leftMm, bottomMm), at(rightMm, bottomMm)];
}

/** The strokes of a hatch in a box, on one raster for the whole sheet, so that neighbouring strips run on. */
export function hatchStrokes(box: PaperBox, kind: KeepClearKind): PaperPoint[][] {
  const { leftMm, rightMm, topMm, bottomMm } = box;
  const sign = keepClearStyles[kind].slope === 'up' ? 1 : -1;
  const pitch = keepClearPitchMm * Math.SQRT2;
  // Strokes are x + y = n pitch, or x - y = n pitch.
  const sums = [topMm, bottomMm].flatMap((y) => [leftMm + sign * y, rightMm + sign * y]);
  const first = Math.ceil(Math.min(...sums) / pitch);
  const count = Math.max(0, Math.floor(Math.max(...sums) / pitch) - first + 1);
  return Array.from({ length: count }, (_, index) => (first + index) * pitch).flatMap((sum) =>
    clippedLine([at(leftMm, sign * (sum - leftMm)), at(rightMm, sign * (sum - rightMm))], box),
  );
}

/** The kinds of room that the items of a board keep clear. */
export function clearKinds({ placements }: PlanBoard): KeepClearKind[] {
  return keepClearKinds.filter((kind) =>
    placements.some(({ keepClear }) => keepClear.some((room) => room.kind === kind)),
  );
}
