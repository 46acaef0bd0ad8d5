import type { Box } from '../../shape/point.ts';
import { type PlacedItem, planGapM } from '../placed.ts';
import type { LayoutHouse } from './layout-house.ts';

/** What a layout costs for being untidy, in metres of wire. */
export interface Tidiness {
  /** Neighbours in a row or a column that share no edge and no centre line. */
  readonly alignment: number;
  /** Gaps that differ on the two sides of a part, and margins on the two sides of the board. */
  readonly gaps: number;
  /** Parts of one kind that are neither in line nor mirrored. */
  readonly pairs: number;
  /** Ground bars away from their distribution. */
  readonly companions: number;
}

type Standing = readonly (PlacedItem | undefined)[];

/** How far two boxes are out of line along x: by their left edges, their right ones, or their middles. */
function outOfLineX(a: Box, b: Box): number {
  const low = a.minX - b.minX;
  const high = a.maxX - b.maxX;
  return Math.min(Math.abs(low), Math.abs(high), Math.abs(low + high) / 2);
}

/** The same along y. */
function outOfLineY(a: Box, b: Box): number {
  const low = a.minY - b.minY;
  const high = a.maxY - b.maxY;
  return Math.min(Math.abs(low), Math.abs(high), Math.abs(low + high) / 2);
}

/** How far two boxes are out of line along an axis. */
export function outOfLineM(a: Box, b: Box, axis: 'x' | 'y'): number {
  return axis === 'x' ? outOfLineX(a, b) : outOfLineY(a, b);
}

/** Further out of line than this, it is as if there were no line at all, metres (house judgement). */
const nearLineM = 0.08;

/** What being out of line counts: nothing to what a tape shows, half from there on, all where no line is near. */
function lineShare(byM: number, tapeM: number): number {
  return byM <= tapeM / 2 + 1e-9 ? 0 : Math.min(1, 0.5 + byM / (2 * nearLineM));
}

/** A difference of gaps that is seen, at most, metres (house judgement): beyond, the parts do not belong together. */
const likeGapM = 0.1;

/** Room within which two parts are neighbours in a row or a column, metres (house judgement). */
const neighbourM = 0.3;

/** Judges how tidy placed parts are. Searches call it very often: it makes no objects on the way. */
export function tidiness(box: Box, placed: Standing, house: LayoutHouse): Tidiness {
  let [alignment, gaps, pairs] = [0, 0, 0];
  for (let at = 0; at < placed.length; at += 1) {
    const one = placed[at];
    if (!one) continue;
    if (house.alignmentM > 0) alignment += lineCost(box, placed, one, house.tapeM);
    if (house.gaps > 0) gaps += unlikeGaps(placed, one);
    for (let other = at + 1; other < placed.length; other += 1) {
      const two = placed[other];
      if (two && one.kind !== '' && one.kind === two.kind) pairs += unlikePair(one, two, house.tapeM);
    }
  }
  gaps += unlikeMargins(box, placed);
  return {
    alignment: house.alignmentM * alignment,
    gaps: house.gaps * gaps,
    pairs: house.pairM * pairs,
    companions: house.companion * companionsApart(placed),
  };
}

/**
 * How much a part is out of line with its neighbours: the nearest in each direction, in the mean. One without a
 * neighbour is held against the middle of the board.
 */
function lineCost(box: Box, placed: Standing, one: PlacedItem, tapeM: number): number {
  const { body: a } = one;
  let [right, left, top, bottom] = [neighbourM, neighbourM, neighbourM, neighbourM];
  let [byRight, byLeft, byTop, byBottom] = [-1, -1, -1, -1];
  for (const other of placed) {
    if (!other || other === one) continue;
    const { body: b } = other;
    if (b.minY < a.maxY && a.minY < b.maxY) {
      const afterM = b.minX - a.maxX;
      const beforeM = a.minX - b.maxX;
      if (afterM >= -1e-9 && afterM < right) {
        right = afterM;
        byRight = outOfLineY(a, b);
      }
      if (beforeM >= -1e-9 && beforeM < left) {
        left = beforeM;
        byLeft = outOfLineY(a, b);
      }
    } else if (b.minX < a.maxX && a.minX < b.maxX) {
      const overM = b.minY - a.maxY;
      const underM = a.minY - b.maxY;
      if (overM >= -1e-9 && overM < top) {
        top = overM;
        byTop = outOfLineX(a, b);
      }
      if (underM >= -1e-9 && underM < bottom) {
        bottom = underM;
        byBottom = outOfLineX(a, b);
      }
    }
  }
  const count = Number(byRight >= 0) + Number(byLeft >= 0) + Number(byTop >= 0) + Number(byBottom >= 0);
  if (count > 0)
    return (
      ((byRight >= 0 ? lineShare(byRight, tapeM) : 0) +
        (byLeft >= 0 ? lineShare(byLeft, tapeM) : 0) +
        (byTop >= 0 ? lineShare(byTop, tapeM) : 0) +
        (byBottom >= 0 ? lineShare(byBottom, tapeM) : 0)) /
      count
    );
  const toMiddleM = Math.min(
    Math.abs(a.minX + a.maxX - box.minX - box.maxX) / 2,
    Math.abs(a.minY + a.maxY - box.minY - box.maxY) / 2,
  );
  return lineShare(toMiddleM, tapeM);
}

/** By how much the gaps on both sides of a part differ, along x and along y, where it has neighbours on both. */
function unlikeGaps(placed: Standing, one: PlacedItem): number {
  const { body: a } = one;
  let [right, left, top, bottom] = [Infinity, Infinity, Infinity, Infinity];
  for (const other of placed) {
    if (!other || other === one) continue;
    const { body: b } = other;
    if (b.minY < a.maxY && a.minY < b.maxY) {
      if (b.minX >= a.maxX - 1e-9) right = Math.min(right, b.minX - a.maxX);
      else if (a.minX >= b.maxX - 1e-9) left = Math.min(left, a.minX - b.maxX);
    } else if (b.minX < a.maxX && a.minX < b.maxX) {
      if (b.minY >= a.maxY - 1e-9) top = Math.min(top, b.minY - a.maxY);
      else if (a.minY >= b.maxY - 1e-9) bottom = Math.min(bottom, a.minY - b.maxY);
    }
  }
  const level = Math.max(right, left) <= neighbourM ? Math.min(likeGapM, Math.abs(right - left)) : 0;
  const upright = Math.max(top, bottom) <= neighbourM ? Math.min(likeGapM, Math.abs(top - bottom)) : 0;
  return level + upright;
}

/** By how much the free margins of the board differ, along x and along y. */
function unlikeMargins(box: Box, placed: Standing): number {
  let [left, right, bottom, top] = [Infinity, Infinity, Infinity, Infinity];
  for (const one of placed) {
    if (!one) continue;
    left = Math.min(left, one.body.minX - box.minX);
    right = Math.min(right, box.maxX - one.body.maxX);
    bottom = Math.min(bottom, one.body.minY - box.minY);
    top = Math.min(top, box.maxY - one.body.maxY);
  }
  if (left === Infinity) return 0;
  return Math.min(likeGapM, Math.abs(left - right)) + Math.min(likeGapM, Math.abs(bottom - top));
}

/**
 * Two parts of one kind: half where they are turned across each other, less where they are mirrored end for end, which is
 * meant only of like parts; half where they are out of line both ways.
 */
function unlikePair(a: PlacedItem, b: PlacedItem, tapeM: number): number {
  const by = (a.turnDeg - b.turnDeg + 360) % 360;
  const turned = by === 0 ? 0 : by === 180 ? (a.size === b.size ? 0 : 0.25) : 0.5;
  const byM = Math.min(outOfLineX(a.body, b.body), outOfLineY(a.body, b.body));
  return turned + lineShare(byM, tapeM) / 2;
}

/** A ground bar and its distribution stand beside each other up to so far apart, metres (house judgement). */
const besideM = 0.06;

function companionsApart(placed: Standing): number {
  let sum = 0;
  for (const bar of placed) {
    if (bar?.shares !== 'ground') continue;
    let nearM = Infinity;
    for (const block of placed)
      if (block?.shares === 'feed') nearM = Math.min(nearM, planGapM(bar.body, block.body));
    if (nearM < Infinity) sum += Math.max(0, nearM - besideM);
  }
  return sum;
}
