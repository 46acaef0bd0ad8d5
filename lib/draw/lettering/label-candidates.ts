import { spacing } from '../line-styles.ts';
import {
  at,
  boxAt,
  boxHolds,
  centreOf,
  grown,
  heightMm,
  nearestOf,
  type PaperBox,
  type PaperPoint,
  type PaperSegment,
  widthMm,
} from '../paper.ts';
import type { ObstacleIndex } from './obstacle-index.ts';

/** A text that wants a place. */
export interface LabelRequest {
  readonly id: string;
  /** Size of the text as it is read level. */
  readonly widthMm: number;
  readonly heightMm: number;
  /**
   * What the text names: boxes round it, or points (boxes without size), the most wanted first. The text
   * stands beside one of them, or a leader ends at it.
   */
  readonly anchors: readonly PaperBox[];
  /** A part large enough to hold its own text, tried first. */
  readonly inside?: PaperBox;
  /** Obstacles that are the label's own: its leader may cross them, its text may not. */
  readonly own: readonly string[];
  /** Boxes that the text may stand in, wholly; across their edge it may not. Its leader may cross them. */
  readonly within?: readonly string[];
  /** True where its leader must run aslant, so that it is not taken for a line that runs level or upright. Default no. */
  readonly oblique?: boolean;
  /** Where it has no nearer place, it may stand anywhere in the room, at the end of a leader that may cross these boxes. Left out, not. */
  readonly far?: { readonly over: readonly string[] };
  /** May the text be turned, to be read from the right edge? Default no. */
  readonly turnable?: boolean;
}

/** One place that a label may take. */
export interface Candidate {
  readonly box: PaperBox;
  readonly turned: boolean;
  readonly leader: PaperSegment | null;
  /** How far from ideal: 0 is best. */
  readonly cost: number;
}

/** A point as an anchor. */
export function anchorAt({ xMm, yMm }: PaperPoint): PaperBox {
  return boxAt(xMm, yMm, 0, 0);
}

/** The eight places round an anchor, best first: which way in x, which way in y. */
const sides: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];
const leaderReachesMm = [5, 8, 12, 17, 23, 30, 40, 55, 75] as const;
/** 24 directions, as shares to the right and down. */
const leaderDirections = Array.from({ length: 24 }, (_, step) => {
  const angle = (step * 2 * Math.PI) / 24;
  return [Math.cos(angle), -Math.sin(angle)] as const;
});
const leaderCost = 20;
const crossingCost = 6;
const turnedCost = 2;
const anchorCost = 1.5;

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turned: boolean;
}

function sizesOf(label: LabelRequest): Size[] {
  const level = { widthMm: label.widthMm, heightMm: label.heightMm, turned: false };
  const turned = { widthMm: label.heightMm, heightMm: label.widthMm, turned: true };
  return label.turnable ? [level, turned] : [level];
}

/** Every place inside or beside what a label names that is free of obstacles and in the room. */
export function nearCandidates(label: LabelRequest, index: ObstacleIndex, room: PaperBox): Candidate[] {
  const found: Candidate[] = [];
  for (const size of sizesOf(label)) {
    const extra = size.turned ? turnedCost : 0;
    if (label.inside) {
      const box = boxAround(centreOf(label.inside), size);
      if (boxHolds(label.inside, box)) found.push({ box, turned: size.turned, leader: null, cost: extra });
    }
    label.anchors.forEach((anchor, nth) => {
      sides.forEach((side, order) => {
        const cost = 1 + order * 0.25 + nth * anchorCost + extra;
        found.push({ box: boxBeside(anchor, side, size), turned: size.turned, leader: null, cost });
      });
    });
  }
  return found.filter((candidate) => isFree(candidate.box, label, index, room));
}

/** Every place at the end of a leader that is free of obstacles and in the room. */
export function leaderCandidates(label: LabelRequest, index: ObstacleIndex, room: PaperBox): Candidate[] {
  return sizesOf(label).flatMap((size) =>
    label.anchors.flatMap((anchor, nth) =>
      ledTo(label, ringOf(anchor, size), { anchor, nth, turned: size.turned, over: [] }, index, room),
    ),
  );
}

/** From place to place of a label that may stand anywhere in the room. */
const farStepMm = { across: 5, down: 3.2 } as const;

/** Places all over the room for a label that may stand far from what it names. */
export function farCandidates(label: LabelRequest, index: ObstacleIndex, room: PaperBox): Candidate[] {
  const { widthMm: wide, heightMm: high } = label;
  const over = label.far?.over ?? [];
  const columns = Math.floor((widthMm(room) - wide) / farStepMm.across);
  const rows = Math.floor((heightMm(room) - high) / farStepMm.down);
  const boxes = Array.from({ length: Math.max(0, columns + 1) }, (_, column) =>
    Array.from({ length: Math.max(0, rows + 1) }, (__, row) =>
      boxAt(room.leftMm + column * farStepMm.across, room.topMm + row * farStepMm.down, wide, high),
    ),
  ).flat();
  return label.anchors.flatMap((anchor, nth) =>
    ledTo(label, boxes, { anchor, nth, turned: false, over }, index, room),
  );
}

/** An anchor of a label and its place among them, whether the text there is turned, and what its leader may cross. */
interface Led {
  readonly anchor: PaperBox;
  readonly nth: number;
  readonly turned: boolean;
  readonly over: readonly string[];
}

/** Of boxes for a text those that are free, each with its leader, where that has a way. */
function ledTo(
  label: LabelRequest,
  boxes: readonly PaperBox[],
  { anchor, nth, turned, over }: Led,
  index: ObstacleIndex,
  room: PaperBox,
): Candidate[] {
  const own = [...label.own, ...(label.within ?? [])];
  return boxes.flatMap((box): Candidate[] => {
    if (!isFree(box, label, index, room)) return [];
    const leader = leaderTo(anchor, box);
    if (label.oblique === true && isStraight(leader)) return [];
    if (index.leaderBlocked(leader, [...own, ...over])) return [];
    const lengthMm = Math.hypot(leader.to.xMm - leader.from.xMm, leader.to.yMm - leader.from.yMm);
    const crossings = index.leaderCrossings(leader, own);
    const cost = leaderCost + lengthMm / 2 + crossings * crossingCost + nth * anchorCost;
    return [{ box, turned, leader, cost: cost + (turned ? turnedCost : 0) }];
  });
}

/** True where a leader runs level or upright, or nearly so. */
function isStraight({ from, to }: PaperSegment): boolean {
  const [acrossMm, downMm] = [Math.abs(to.xMm - from.xMm), Math.abs(to.yMm - from.yMm)];
  return Math.min(acrossMm, downMm) < 0.2 * Math.max(acrossMm, downMm);
}

function isFree(box: PaperBox, label: LabelRequest, index: ObstacleIndex, room: PaperBox): boolean {
  return boxHolds(room, box) && !index.meetsBox(grown(box, spacing.clearMm), label.within ?? []);
}

function boxAround(centre: PaperPoint, size: Size): PaperBox {
  return boxAt(centre.xMm - size.widthMm / 2, centre.yMm - size.heightMm / 2, size.widthMm, size.heightMm);
}

/** The text's box, a gap away from the anchor on one of its sides; on a corner the boxes stand diagonally. */
function boxBeside(anchor: PaperBox, [sideX, sideY]: readonly [number, number], size: Size): PaperBox {
  const { xMm, yMm } = centreOf(anchor);
  const gap = sideX !== 0 && sideY !== 0 ? spacing.labelGapMm / 2 : spacing.labelGapMm;
  const reachX = (widthMm(anchor) + size.widthMm) / 2 + gap;
  const reachY = (heightMm(anchor) + size.heightMm) / 2 + gap;
  return boxAround(at(xMm + sideX * reachX, yMm + sideY * reachY), size);
}

/** Boxes on rings round the anchor. */
function ringOf(anchor: PaperBox, size: Size): PaperBox[] {
  const { xMm, yMm } = centreOf(anchor);
  return leaderReachesMm.flatMap((reachMm) =>
    leaderDirections.map(([right, down]) => {
      const reachX = (widthMm(anchor) + size.widthMm) / 2 + reachMm;
      const reachY = (heightMm(anchor) + size.heightMm) / 2 + reachMm;
      return boxAround(at(xMm + reachX * right, yMm + reachY * down), size);
    }),
  );
}

/** From the anchor to just before the text. */
function leaderTo(anchor: PaperBox, box: PaperBox): PaperSegment {
  const from = nearestOf(anchor, centreOf(box));
  return { from, to: nearestOf(grown(box, spacing.clearMm / 2), from) };
}
