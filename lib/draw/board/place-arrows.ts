import type { PlanBoard } from '../../model/plan/index.ts';
import { strokeObstacles } from '../drawn-strokes.ts';
import { at, boxesMeet, type PaperBox, segmentMeetsBox } from '../paper.ts';
import type { Drawing } from '../surface.ts';
import { captionMm, directionArrowsMm, drawDirectionArrows } from './direction-arrows.ts';

/** What is said where the arrows find no free corner. */
export const arrowsLeft = 'direction arrows';

/**
 * Puts the arrows that tell the vehicle's directions into a free corner of the room, the lower ones first;
 * names them where none is free. Seen from the back the arrow of x points left.
 */
export function placeDirectionArrows(
  drawing: Drawing,
  { right, upward }: Pick<PlanBoard, 'right' | 'upward'>,
  room: PaperBox,
  { mirrored, caption }: { readonly mirrored: boolean; readonly caption: string | null },
): string[] {
  const { width } = directionArrowsMm;
  const height = directionArrowsMm.height + (caption === null ? 0 : captionMm);
  const lefts = mirrored ? [room.rightMm - width, room.leftMm] : [room.leftMm, room.rightMm - width];
  const tops = [room.bottomMm - height, room.topMm];
  const drawn = strokeObstacles(drawing);
  const isFree = (box: PaperBox): boolean =>
    drawing.texts.every((text) => !boxesMeet(text.box, box)) &&
    drawn.every((each) => ('box' in each ? !boxesMeet(each.box, box) : !segmentMeetsBox(each.segment, box)));
  for (const topMm of tops)
    for (const leftMm of lefts) {
      const box = { leftMm, topMm, rightMm: leftMm + width, bottomMm: topMm + height };
      if (!isFree(box)) continue;
      const corner = at(mirrored ? box.rightMm : box.leftMm, box.bottomMm);
      drawDirectionArrows(drawing, drawing.svg, { right, upward, mirrored, corner, caption });
      return [];
    }
  return [arrowsLeft];
}
