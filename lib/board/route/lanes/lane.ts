import { across, endsOf, exitLineM, type LaidLegs } from './lane-wire.ts';
import type { Leg } from './leg.ts';
import { type Bounds, boundsOf, type Stretch, tighter, type Walls } from './walls.ts';

/** What lanes are laid on. */
export interface LaneBoard {
  readonly walls: Walls;
  /** The lines of the map that legs were told apart by. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** Free room between a wire and what stands on the board (m). */
  readonly clearanceM: number;
}

/** Where a leg has to stay because another drew back (m). */
export interface Kept {
  readonly lowM: number;
  readonly highM: number;
}

export const keptNowhere: Kept = { lowM: -Infinity, highM: Infinity };

/** A wire on its way into lanes. */
export interface OwnLegs extends LaidLegs {
  legs: readonly Leg[];
  atM: number[];
  kept: Kept[];
  /** The share of its bend radius that it is laid with. */
  readonly share: number;
  /** How often an end of a leg was drawn back. */
  drawnBack: number;
}

/** A leg among all that run like it, with what holds it. */
export interface Lane {
  readonly wire: number;
  readonly leg: Leg;
  /** From where to where it runs (m), the lower end first. */
  readonly span: Stretch;
  readonly bounds: Bounds;
}

/** Lanes from low to high for which there is too little room. */
export type LaneJam = readonly Lane[];

/** The line that a leg is looked from when it is said what lies below and what above it (m). */
export function lookedFromM({ xs, ys }: LaneBoard, { level, rank, line }: Leg): number {
  const lines = level ? ys : xs;
  const fromM = lines[line] ?? 0;
  return fromM + (rank - line) * ((lines[line + 1] ?? fromM) - fromM);
}

/** Half a wire and the free room beside it (m). */
export function roomBesideM({ clearanceM }: LaneBoard, { wire }: LaidLegs): number {
  return wire.diameterM / 2 + clearanceM;
}

/** A leg of a wire with what holds it where it runs now. */
export function laneOf(board: LaneBoard, own: OwnLegs, wire: number, leg: Leg): Lane {
  const [a, b] = endsOf(own, leg.nth, board.walls);
  const needM = roomBesideM(board, own);
  const isLast = leg.nth === own.legs.length - 1;
  // Past a bend the wire reaches further by its own half; at a terminal and at the edge of the board it ends.
  const [beforeM, afterM] = [leg.nth === 0 ? 0 : needM, isLast ? 0 : needM];
  const [fromM, toM] = a < b ? [a - beforeM, b + afterM] : [b - afterM, a + beforeM];
  const exitSide = isLast && 'exitSide' in own.wire.to ? own.wire.to.exitSide : -1;
  const run = { level: leg.level, atM: lookedFromM(board, leg), fromM, toM, exitSide };
  const byWalls = boundsOf(board.walls, run, needM);
  const kept = own.kept[leg.nth] ?? keptNowhere;
  const byKept = between(byWalls, kept.lowM, kept.highM, a);
  const byEnds = boundsByEnds(board, own, leg, byKept);
  const isFree = Number.isNaN(leg.fixedM);
  const bounds = isFree ? byEnds : between(byEnds, leg.fixedM, leg.fixedM, leg.nth === 0 ? a : b);
  return { wire, leg, span: [Math.min(a, b), Math.max(a, b)], bounds };
}

/** Bounds that something at one place along the leg makes narrower. */
function between(bounds: Bounds, lowM: number, highM: number, alongM: number): Bounds {
  const by = [alongM, alongM] as const;
  return tighter(tighter(bounds, true, lowM, by), false, highM, by);
}

/** A leg next to the first or the last leaves that one straight wire for a bend. */
function boundsByEnds(board: LaneBoard, own: OwnLegs, leg: Leg, bounds: Bounds): Bounds {
  const { nth, level } = leg;
  const { wire, legs, share } = own;
  const leastM = Math.max(share * wire.bendRadiusM, roomBesideM(board, own));
  const atM = lookedFromM(board, leg);
  const [fromM, toM] = endsOf(own, nth, board.walls);
  let all = bounds;
  const keep = (endM: number, isAbove: boolean, alongM: number) => {
    all = tighter(all, isAbove, isAbove ? endM + leastM : endM - leastM, [alongM, alongM]);
  };
  if (nth === 1) keep(across(wire.from, level), atM > across(wire.from, level), fromM);
  if (nth !== legs.length - 2) return all;
  if (!('exitSide' in wire.to)) keep(across(wire.to, level), atM > across(wire.to, level), toM);
  else keep(exitLineM(board.walls, wire.to.exitSide, own.atM[nth + 1] ?? 0), wire.to.exitSide >= 2, toM);
  return all;
}
