import type { Lane } from './lane.ts';
import type { Stretch } from './walls.ts';

/** That an end of a lane draws back from what it only just reaches: which end, and where it comes to lie (m). */
export interface Evasion {
  readonly lane: Lane;
  readonly isLowEnd: boolean;
  readonly toM: number;
}

/** A wire draws an end of a lane back by no more than this (m). */
const mostBackM = 0.06;

/**
 * The end of a jam's first or last lane that has to draw back least to get past what holds it from below or above;
 * null where both would have to give way too far.
 */
export function evasionIn(
  jam: readonly Lane[],
  needM: (lane: Lane) => number,
  mayMove: (lane: Lane, isLowEnd: boolean, toM: number) => boolean,
): Evasion | null {
  const [first, last] = [jam[0], jam.at(-1)];
  if (!first || !last) return null;
  const ends = [
    ...evasions(first, first.bounds.lowBy, needM(first)),
    ...evasions(last, last.bounds.highBy, needM(last)),
  ];
  const possible = ends.filter(
    ({ lane, isLowEnd, toM }) => backM(lane, isLowEnd, toM) <= mostBackM && mayMove(lane, isLowEnd, toM),
  );
  const byBack = possible.toSorted(
    (a, b) => backM(a.lane, a.isLowEnd, a.toM) - backM(b.lane, b.isLowEnd, b.toM),
  );
  return byBack[0] ?? null;
}

function evasions(lane: Lane, by: Stretch, needM: number): Evasion[] {
  const { span } = lane;
  // What stands at one point is an end of the wire itself.
  if (by[1] - by[0] < 1e-6) return [];
  const [lowEnd, highEnd] = [by[1] + needM, by[0] - needM];
  return [
    ...(lowEnd < span[1] ? [{ lane, isLowEnd: true, toM: lowEnd }] : []),
    ...(highEnd > span[0] ? [{ lane, isLowEnd: false, toM: highEnd }] : []),
  ];
}

function backM({ span }: Lane, isLowEnd: boolean, toM: number): number {
  return isLowEnd ? toM - span[0] : span[1] - toM;
}
