import { type Item, onBoard, type Side, sides, type TurnDeg, turnedSide } from '../../board/layout/item.ts';
import type { PlanItem, PlanPlacement } from '../../model/plan/index.ts';
import type { Panel } from '../../model/vocabulary.ts';
import { boxRound, type PaperBox } from '../paper.ts';
import { onPaper, type PlanView } from '../sheet/scale.ts';
import { rectangleOnPaper } from './board-view.ts';

/** Something at an edge of an item: where along that edge on paper, and which edge it is as the item is turned. */
export interface EdgeMark {
  readonly side: Side;
  readonly alongMm: number;
}

/** An item where it stands on a board. */
export interface ItemOnBoard {
  readonly item: PlanItem;
  readonly placement: PlanPlacement;
  /** Its footprint on paper. */
  readonly box: PaperBox;
  /** Where a place on one of its panels comes to stand; null for one on its face, or nowhere. */
  readonly mark: (panel: Panel | null, atM: number | null) => EdgeMark | null;
  /** Where one of its own edges, before any turn, faces on paper. */
  readonly facing: (edge: Side) => Side;
}

/** Puts an item of a plan on its board, as a view shows it. */
export function itemOnBoard(item: PlanItem, placement: PlanPlacement, view: PlanView): ItemOnBoard {
  const { xM, yM, widthM, depthM } = placement;
  const box = boxRound(rectangleOnPaper(view, { xM, yM, widthM, heightM: depthM }));
  const turnDeg = turnOf(placement.turnDeg);
  const facing = (edge: Side): Side => turnedSide(edge, turnDeg);
  // The board's own geometry turns places; of an item it needs no more than the size.
  const plain: Item = {
    id: item.id,
    widthM: item.widthM ?? 0,
    depthM: item.depthM ?? 0,
    heightM: 0,
    massKg: 0,
    rooms: {},
    terminals: [],
  };
  const at = { item: item.id, xM, yM, turnDeg, heightM: 0 };
  return {
    item,
    placement,
    box,
    facing,
    mark: (panel, atM) => {
      if (panel === null || panel === 'face') return null;
      const { widthM: w, depthM: d } = plain;
      const along = atM ?? (panel === 'left' || panel === 'right' ? d : w) / 2;
      const own = { left: [0, along], right: [w, along], bottom: [along, 0], top: [along, d] }[panel];
      const place = onPaper(view, onBoard(plain, at, { xM: own[0] ?? 0, yM: own[1] ?? 0 }));
      const side = facing(panel);
      return { side, alongMm: side === 'left' || side === 'right' ? place.yMm : place.xMm };
    },
  };
}

function turnOf(turnDeg: number): TurnDeg {
  const quarter = ((Math.round(turnDeg / 90) % 4) + 4) % 4;
  return quarter === 0 ? 0 : quarter === 1 ? 90 : quarter === 2 ? 180 : 270;
}

/** The side of a box that a point lies on or next to. */
export function nearestSide(box: PaperBox, xMm: number, yMm: number): { side: Side; offMm: number } {
  const off: Readonly<Record<Side, number>> = {
    right: Math.abs(xMm - box.rightMm),
    top: Math.abs(yMm - box.topMm),
    left: Math.abs(xMm - box.leftMm),
    bottom: Math.abs(yMm - box.bottomMm),
  };
  const side = sides.reduce((best, each) => (off[each] < off[best] ? each : best), 'right');
  const past = Math.max(box.leftMm - xMm, xMm - box.rightMm, box.topMm - yMm, yMm - box.bottomMm, 0);
  return { side, offMm: Math.max(past, off[side]) };
}
