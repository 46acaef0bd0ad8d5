import type { Direction } from '../../model/vocabulary.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import { lines, spacing, types } from '../line-styles.ts';
import { at, boxAt, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawLine, type Parent } from '../pen.ts';
import { type Drawing, openGroup } from '../surface.ts';

export interface DirectionArrows {
  /** Which way in the vehicle the right of the drawing and its top face. */
  readonly right: Direction;
  readonly upward: Direction;
  /** Seen from the back: what is on the right of the board is on the left of the paper. */
  readonly mirrored: boolean;
  /** Which face is looked at; null where every sheet of its kind shows the same one. */
  readonly caption: string | null;
  /** Lower left corner of the block, or its lower right one where mirrored. */
  readonly corner: PaperPoint;
}

const shaftMm = 11;

/** Size of the block without a caption, lettering included. */
export const directionArrowsMm = { width: 32, height: 20.2 } as const;

/** Height of a line of caption above the block. */
export const captionMm = 7;

/** Draws two arrows from one point, named by where they point in the vehicle, such as FRONT and UP. */
export function drawDirectionArrows(drawing: Drawing, parent: Parent, arrows: DirectionArrows): PaperBox {
  const group = openGroup(drawing, parent);
  const side = arrows.mirrored ? -1 : 1;
  const type = types.field;
  const origin = at(arrows.corner.xMm + side * 2, arrows.corner.yMm - 3.2);
  const sideTip = at(origin.xMm + side * shaftMm, origin.yMm);
  const upTip = at(origin.xMm, origin.yMm - shaftMm);
  drawLine(group, [sideTip, origin, upTip], lines.seen);
  drawArrowHead(group, sideTip, origin);
  drawArrowHead(group, upTip, origin);
  const beside = at(sideTip.xMm + side * spacing.labelGapMm, baselineFor(origin.yMm, type));
  const align = arrows.mirrored ? 'end' : 'start';
  drawText(drawing, group, arrows.right.toUpperCase(), beside, { type, align });
  const above = at(arrows.corner.xMm, upTip.yMm - spacing.labelGapMm - 0.5);
  drawText(drawing, group, arrows.upward.toUpperCase(), above, { type, align });
  if (arrows.caption !== null) {
    const top = at(arrows.corner.xMm, above.yMm - 2 * type.capMm);
    drawText(drawing, group, arrows.caption, top, { type, align });
  }
  const leftMm = arrows.mirrored ? arrows.corner.xMm - directionArrowsMm.width : arrows.corner.xMm;
  return boxAt(
    leftMm,
    arrows.corner.yMm - directionArrowsMm.height,
    directionArrowsMm.width,
    directionArrowsMm.height,
  );
}
