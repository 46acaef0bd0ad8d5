import type { PlanItem, PlanPlacement } from '../../model/plan/index.ts';
import { strokeObstacles } from '../drawn-strokes.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import { wrapText } from '../lettering/lettering.ts';
import { indexObstacles, type Obstacle } from '../lettering/obstacle-index.ts';
import { drawLabels, drawLinesIn, linesSizeMm, type TextLabel } from '../lettering/view-labels.ts';
import { spacing, type TypeStyle, types } from '../line-styles.ts';
import { at, boxAt, grown, type PaperBox, type PaperPoint } from '../paper.ts';
import type { Parent } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { dimetric, inPicture, type PictureView, type SpacePoint } from './axonometry.ts';
import type { Hiding } from './hidden-lines.ts';

/** A part as a picture shows it. */
export interface SeenPart {
  readonly item: PlanItem;
  readonly placement: PlanPlacement;
}

/** A picture in which names are sought a place. */
export interface FaceScene {
  readonly drawing: Drawing;
  readonly view: PictureView;
  readonly hiding: Hiding;
}

const said = types.pictureName;
/** Longer names outside their part are broken. */
const outsideMm = 42;
const padMm = spacing.clearMm;

/** Writes the names of parts: upon them where they have room there and are seen, else beside them; names the rest. */
export function writeNames(
  scene: FaceScene,
  parent: Parent,
  parts: readonly SeenPart[],
  room: PaperBox,
): string[] {
  const { drawing, view } = scene;
  const drawn = indexObstacles(strokeObstacles(drawing));
  const loose = parts.filter(({ item, placement }) => {
    const upon = linesUpon(scene, placement, shortName(item), said);
    if (!upon || drawn.meetsBox(grown(upon.box, padMm), [])) return true;
    drawLinesIn(
      drawing,
      openSubject(drawing, parent, item.id),
      { lines: upon.lines, type: said },
      upon.box,
      false,
    );
    return false;
  });
  const labels = loose.map((part) => nameLabel(scene, part));
  return drawLabels(drawing, parent, labels, room, faceObstacles(view, parts));
}

/** The name of a part beside it, at the end of a leader. */
function nameLabel(scene: FaceScene, { item, placement }: SeenPart): TextLabel {
  const name = shortName(item);
  return {
    id: `name ${item.id}`,
    type: said,
    lines: wrapText(scene.drawing.metrics, name, outsideMm, said),
    anchors: seenPoints(scene, placement).map((place) => anchorAt(inPicture(scene.view, place))),
    own: [item.id, faceId(item.id)],
    subject: item.id,
    asideMm,
  };
}

/** Names side by side are not read as one. */
const asideMm = 1.6;

const faceId = (item: string): string => `face ${item}`;

/** The upper faces of parts, where no name of another part may stand or point across. */
function faceObstacles(view: PictureView, parts: readonly SeenPart[]): Obstacle[] {
  return parts.map(({ item, placement }) => {
    const [low, high] = [
      inPicture(view, facePoint(placement, 0, 0)),
      inPicture(view, facePoint(placement, 1, 1)),
    ];
    const box = { leftMm: low.xMm, rightMm: high.xMm, topMm: high.yMm, bottomMm: low.yMm };
    return { id: faceId(item.id), box: { ...box, bottomMm: Math.max(box.topMm, box.bottomMm) } };
  });
}

/** Lines that stand in the middle of the upper face of a part, and the box round them; null where they have no room. */
function linesUpon(
  { drawing, view, hiding }: FaceScene,
  placement: PlanPlacement,
  name: string,
  type: TypeStyle,
): { readonly lines: readonly string[]; readonly box: PaperBox } | null {
  const { metrics } = drawing;
  const wideMm = placement.widthM * view.mmPerM * Math.cos((dimetric.x.angleDeg * Math.PI) / 180);
  const lines = wrapText(metrics, name, wideMm - 2 * padMm, type);
  const size = linesSizeMm(drawing, lines, type);
  const { xMm, yMm } = inPicture(view, facePoint(placement, 0.5, 0.5));
  const box = boxAt(xMm - size.widthMm / 2, yMm - size.heightMm / 2, size.widthMm, size.heightMm);
  return isUpon({ drawing, view, hiding }, placement, box) ? { lines, box } : null;
}

/** True where a box on paper lies on the upper face of a part, and that is seen there. */
function isUpon({ view, hiding }: FaceScene, placement: PlanPlacement, box: PaperBox): boolean {
  const { leftMm, rightMm, topMm, bottomMm } = box;
  return (
    holdsBox(view, placement, box) &&
    sharesOf(5).every(([x, y]) => {
      const point = at(leftMm + (rightMm - leftMm) * x, topMm + (bottomMm - topMm) * y);
      return hiding.isSeen(underPoint(view, placement, point));
    })
  );
}

/** Shares from 0 to 1 both ways, those in the middle first. */
function sharesOf(count: number): (readonly [number, number])[] {
  const shares = Array.from({ length: count }, (_, step) => step / (count - 1));
  const off = ([x, y]: readonly [number, number]): number => Math.hypot(x - 0.5, y - 0.5);
  return shares.flatMap((x) => shares.map((y) => [x, y] as const)).toSorted((a, b) => off(a) - off(b));
}

/** A place on the upper face of a part, as shares of its width and depth. */
function facePoint(
  { xM, yM, widthM, depthM, raisedM, heightM }: PlanPlacement,
  x: number,
  y: number,
): SpacePoint {
  return { xM: xM + widthM * x, yM: yM + depthM * y, zM: raisedM + heightM };
}

/** The place on the upper face of a part that is seen at a point of the paper. */
function underPoint(view: PictureView, placement: PlanPlacement, { xMm, yMm }: PaperPoint): SpacePoint {
  const origin = inPicture(view, facePoint(placement, 0, 0));
  const angle = (dimetric.x.angleDeg * Math.PI) / 180;
  const alongM = (xMm - origin.xMm) / (view.mmPerM * Math.cos(angle));
  const upM = (origin.yMm - yMm) / view.mmPerM - alongM * Math.sin(angle);
  const corner = facePoint(placement, 0, 0);
  return { ...corner, xM: corner.xM + alongM, yM: corner.yM + upM };
}

function holdsBox(view: PictureView, placement: PlanPlacement, box: PaperBox): boolean {
  const { xM, yM, widthM, depthM } = placement;
  const padM = padMm / view.mmPerM;
  return [
    at(box.leftMm, box.topMm),
    at(box.rightMm, box.topMm),
    at(box.leftMm, box.bottomMm),
    at(box.rightMm, box.bottomMm),
  ].every((corner) => {
    const place = underPoint(view, placement, corner);
    return (
      place.xM >= xM + padM &&
      place.xM <= xM + widthM - padM &&
      place.yM >= yM + padM &&
      place.yM <= yM + depthM - padM
    );
  });
}

/** Places of the upper face of a part that are seen, those in its middle first; without any, its middle. */
function seenPoints({ hiding }: FaceScene, placement: PlanPlacement): SpacePoint[] {
  const inner = sharesOf(5).map(([x, y]) => facePoint(placement, 0.1 + 0.8 * x, 0.1 + 0.8 * y));
  const shown = inner.filter((place) => hiding.isSeen(place));
  return shown.length > 0 ? shown.slice(0, 5) : [facePoint(placement, 0.5, 0.5)];
}
