import type { Box } from '../shape/point.ts';
import type { LayoutHouse } from './layout-house.ts';
import { type PlacedItem, planGapM } from './placed.ts';

/** What a layout costs for being untidy, in metres of wire. */
export interface Tidiness {
  /** Parts that share no edge and no centre line with another. */
  readonly alignment: number;
  /** Gaps that differ on the two sides of a part, and margins on the two sides of the board. */
  readonly gaps: number;
  /** Like parts that are neither in line nor mirrored. */
  readonly pairs: number;
  /** Ground bars away from their distribution. */
  readonly companions: number;
}

type Axis = 'x' | 'y';

/** From and to of a box along an axis. */
function low(box: Box, axis: Axis): number {
  return axis === 'x' ? box.minX : box.minY;
}
function high(box: Box, axis: Axis): number {
  return axis === 'x' ? box.maxX : box.maxY;
}

/** How far two boxes are out of line along an axis: by the lower edges, the upper ones, or the middles. */
export function outOfLineM(a: Box, b: Box, axis: Axis): number {
  const [lowM, highM] = [low(a, axis) - low(b, axis), high(a, axis) - high(b, axis)];
  return Math.min(Math.abs(lowM), Math.abs(highM), Math.abs(lowM + highM) / 2);
}

/** Further out of line than this, it is as if there were no line at all, metres (house judgement). */
const nearLineM = 0.08;

/** What being out of line counts: nothing to what a tape shows, half from there on, all where no line is near. */
function lineShare(byM: number, tapeM: number): number {
  return byM <= tapeM / 2 + 1e-9 ? 0 : Math.min(1, 0.5 + byM / (2 * nearLineM));
}

/** A difference of gaps that is seen, at most, metres (house judgement): beyond, the parts do not belong together. */
const likeGapM = 0.1;

/** Room within which two parts are neighbours in a row, metres (house judgement). */
const neighbourM = 0.4;

/** Judges how tidy placed parts are. */
export function tidiness(box: Box, placed: readonly PlacedItem[], house: LayoutHouse): Tidiness {
  let [alignment, gaps] = [0, 0];
  for (const axis of ['x', 'y'] as const) {
    for (const one of placed) {
      alignment += lineCost(box, placed, one, axis, house);
      gaps += unlikeGaps(placed, one, axis);
    }
    gaps += unlikeMargins(box, placed, axis);
  }
  return {
    alignment: house.alignmentM * alignment,
    gaps: house.gaps * gaps,
    pairs: house.pairM * unlikePairs(placed, house.tapeM),
    companions: house.companion * companionsApart(placed),
  };
}

/** Out of line with the nearest line of another part, or with the middle of the board. */
function lineCost(
  box: Box,
  placed: readonly PlacedItem[],
  one: PlacedItem,
  axis: Axis,
  { tapeM }: LayoutHouse,
): number {
  const { body } = one;
  let least = Math.abs(low(body, axis) + high(body, axis) - low(box, axis) - high(box, axis)) / 2;
  for (const other of placed)
    if (other !== one) least = Math.min(least, outOfLineM(body, other.body, axis));
  return lineShare(least, tapeM);
}

/** By how much the gaps to the neighbours of a part along an axis differ, where it has them on both sides. */
function unlikeGaps(placed: readonly PlacedItem[], one: PlacedItem, axis: Axis): number {
  const { body } = one;
  const across = axis === 'x' ? 'y' : 'x';
  let [before, after] = [Infinity, Infinity];
  for (const { body: other } of placed) {
    if (other === body || low(other, across) >= high(body, across) || low(body, across) >= high(other, across))
      continue;
    const beforeM = low(body, axis) - high(other, axis);
    if (beforeM >= -1e-9) before = Math.min(before, beforeM);
    const afterM = low(other, axis) - high(body, axis);
    if (afterM >= -1e-9) after = Math.min(after, afterM);
  }
  if (before > neighbourM || after > neighbourM) return 0;
  return Math.min(likeGapM, Math.abs(before - after));
}

/** By how much the free margins of the board differ along an axis. */
function unlikeMargins(box: Box, placed: readonly PlacedItem[], axis: Axis): number {
  let [from, to] = [Infinity, -Infinity];
  for (const { body } of placed) {
    from = Math.min(from, low(body, axis));
    to = Math.max(to, high(body, axis));
  }
  return to < from ? 0 : Math.min(likeGapM, Math.abs(from - low(box, axis) - (high(box, axis) - to)));
}

function isLike(a: PlacedItem, b: PlacedItem): boolean {
  const [sizeA, sizeB] = [sizeOf(a), sizeOf(b)];
  return sizeA.every((side, at) => Math.abs(side - (sizeB[at] ?? 0)) < 1e-6);
}

function sizeOf({ body, turnDeg }: PlacedItem): readonly [number, number, number] {
  const [x, y] = [body.maxX - body.minX, body.maxY - body.minY];
  return turnDeg % 180 === 0 ? [x, y, body.maxZ - body.minZ] : [y, x, body.maxZ - body.minZ];
}

/** Pairs of like parts: half where they are turned alike or mirrored but out of line, all where they are turned across. */
function unlikePairs(placed: readonly PlacedItem[], tapeM: number): number {
  let sum = 0;
  for (let at = 0; at < placed.length; at += 1)
    for (let other = at + 1; other < placed.length; other += 1) {
      const [a, b] = [placed[at], placed[other]];
      if (!a || !b || !isLike(a, b)) continue;
      if ((a.turnDeg - b.turnDeg) % 180 !== 0) sum += 1;
      else {
        const byM = Math.min(outOfLineM(a.body, b.body, 'x'), outOfLineM(a.body, b.body, 'y'));
        sum += lineShare(byM, tapeM) / 2;
      }
    }
  return sum;
}

/** A ground bar and its distribution stand beside each other up to so far apart, metres (house judgement). */
const besideM = 0.06;

function companionsApart(placed: readonly PlacedItem[]): number {
  let sum = 0;
  for (const bar of placed) {
    if (bar.shares !== 'ground') continue;
    let nearM = Infinity;
    for (const block of placed)
      if (block.shares === 'feed') nearM = Math.min(nearM, planGapM(bar.body, block.body));
    if (nearM < Infinity) sum += Math.max(0, nearM - besideM);
  }
  return sum;
}
