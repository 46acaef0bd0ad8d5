import type { PlanBoard } from '../../model/plan/index.ts';
import { strokeObstacles } from '../drawn-strokes.ts';
import { at, boxAt, boxesMeet, type PaperBox, segmentMeetsBox } from '../paper.ts';
import type { Drawing } from '../surface.ts';
import { captionMm, directionArrowsMm, drawDirectionArrows } from './direction-arrows.ts';

/** What is said where the arrows find no free corner. */
export const arrowsLeft = 'direction arrows';

interface ArrowsPlace {
  readonly mirrored: boolean;
  readonly caption: string | null;
  /** Where they must not stand: among the lines of a board they are read as some of these. */
  readonly keepOff?: readonly PaperBox[];
}

/**
 * Puts the arrows that tell the vehicle's directions into a free corner of the room, the lower ones first, or
 * wherever else there is room; names them where there is none. Seen from the back the arrow of x points left.
 */
export function placeDirectionArrows(
  drawing: Drawing,
  { right, upward }: Pick<PlanBoard, 'right' | 'upward'>,
  room: PaperBox,
  { mirrored, caption, keepOff = [] }: ArrowsPlace,
): string[] {
  const { width } = directionArrowsMm;
  const height = directionArrowsMm.height + (caption === null ? 0 : captionMm);
  const box = freePlace(drawing, room, { width, height }, { fromRight: mirrored, keepOff });
  if (box) {
    const corner = at(mirrored ? box.rightMm : box.leftMm, box.bottomMm);
    drawDirectionArrows(drawing, drawing.svg, { right, upward, mirrored, corner, caption });
    return [];
  }
  return [arrowsLeft];
}

/** Where a block is sought a place. */
interface FreePlace {
  /** The right corners before the left ones. Default no. */
  readonly fromRight?: boolean;
  /** Boxes that it must not stand on, whatever is drawn there. Default none. */
  readonly keepOff?: readonly PaperBox[];
}

/**
 * A place for a block in a room that is free of all that is drawn so far: a corner, the lower ones first, or
 * wherever else there is one; null where there is none.
 */
export function freePlace(
  drawing: Drawing,
  room: PaperBox,
  size: { readonly width: number; readonly height: number },
  { fromRight = false, keepOff = [] }: FreePlace = {},
): PaperBox | null {
  const drawn = strokeObstacles(drawing);
  const isFree = (box: PaperBox): boolean =>
    keepOff.every((other) => !boxesMeet(other, box)) &&
    drawing.texts.every((text) => !boxesMeet(text.box, box)) &&
    drawn.every((each) => ('box' in each ? !boxesMeet(each.box, box) : !segmentMeetsBox(each.segment, box)));
  return placesIn(room, size.width, size.height, fromRight).find(isFree) ?? null;
}

const stepMm = 4;

/** Places for a block in a room: its corners, the lower ones first, then anywhere, from the lower corner up. */
function placesIn(room: PaperBox, width: number, height: number, mirrored: boolean): PaperBox[] {
  const lefts = [room.leftMm, room.rightMm - width];
  const tops = [room.bottomMm - height, room.topMm];
  const [firstLeft, lastLeft] = mirrored ? lefts.toReversed() : lefts;
  const steps = (from: number, to: number): number[] => {
    const count = Math.max(0, Math.floor(Math.abs(to - from) / stepMm));
    return Array.from({ length: count + 1 }, (_, index) => from + Math.sign(to - from) * index * stepMm);
  };
  const box = (leftMm: number, topMm: number): PaperBox => boxAt(leftMm, topMm, width, height);
  const corners = tops.flatMap((top) => [firstLeft, lastLeft].map((left) => box(left ?? room.leftMm, top)));
  const anywhere = steps(tops[0] ?? 0, tops[1] ?? 0).flatMap((top) =>
    steps(firstLeft ?? 0, lastLeft ?? 0).map((left) => box(left, top)),
  );
  return [...corners, ...anywhere];
}
