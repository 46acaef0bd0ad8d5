import { eased } from './ease.ts';
import {
  keptNowhere,
  type Lane,
  type LaneBoard,
  type LaneJam,
  laneOf,
  lookedFromM,
  type OwnLegs,
} from './lane.ts';
import { across, exitLineM, type LaidLegs, type LaneWire } from './lane-wire.ts';
import { keyOf, type Leg } from './leg.ts';
import { type Apart, type Pull, solvePlaces } from './solve.ts';

/** How often level and upright legs are put in their lanes in turns. */
const mostTurns = 6;

/** A wire for which lanes are wanted. */
export interface WireInLanes {
  readonly wire: LaneWire;
  /** None: the wire is left out. */
  readonly legs: readonly Leg[];
  /** The share of its bend radius that it is laid with. */
  readonly share: number;
}

/**
 * Gives every leg of every wire its lane: those that run level and those that run upright, in turns, since the one
 * moves the ends of the other, until nothing moves any more. Legs keep their order and their room, and lie so that
 * wires get short.
 */
export class Lanes {
  readonly #board: LaneBoard;
  readonly #own: readonly OwnLegs[];

  constructor(board: LaneBoard, wires: readonly WireInLanes[]) {
    this.#board = board;
    this.#own = wires.map(({ wire, legs, share }) => ({
      wire,
      legs,
      atM: legs.map((leg) => (Number.isNaN(leg.fixedM) ? lookedFromM(board, leg) : leg.fixedM)),
      kept: legs.map(() => keptNowhere),
      share,
      drawnBack: 0,
    }));
  }

  /** The wires as they lie; null for one that is left out. */
  get laid(): readonly (LaidLegs | null)[] {
    return this.#own.map((own) => (own.legs.length === 0 ? null : own));
  }

  /** Puts all legs in their lanes, level or upright ones first; tells the jam where there is no room. */
  settle(levelFirst: boolean): LaneJam | null {
    for (let turn = 0, moved = true; moved && turn < mostTurns; turn += 1) {
      moved = false;
      for (const level of [levelFirst, !levelFirst]) {
        const found = this.#solve(level);
        if (found !== true && found !== false) return found;
        moved ||= found;
      }
    }
    return null;
  }

  /** Finds the lanes of all level or of all upright legs: whether that moves one, or the jam that there is. */
  #solve(level: boolean): boolean | LaneJam {
    for (;;) {
      const lanes = this.#lanesOf(level);
      const places = lanes.map(({ wire, leg, bounds: { lowM, highM } }) => {
        return { lowM, highM, wishM: this.#own[wire]?.atM[leg.nth] ?? 0 };
      });
      const solved = solvePlaces(places, this.#aparts(lanes), this.#pulls(lanes, level));
      if ('placesM' in solved) return this.#move(lanes, solved.placesM);
      const jam = solved.jam.flatMap((at) => lanes[at] ?? []);
      if (!eased(this.#board, this.#own, jam)) return jam;
    }
  }

  #move(lanes: readonly Lane[], placesM: readonly number[]): boolean {
    let moved = false;
    lanes.forEach(({ wire, leg: { nth } }, at) => {
      const own = this.#own[wire];
      const [wasM = 0, isM = 0] = [own?.atM[nth], placesM[at]];
      if (own) own.atM[nth] = isM;
      moved ||= Math.abs(wasM - isM) > 1e-6;
    });
    return moved;
  }

  #lanesOf(level: boolean): Lane[] {
    return this.#own
      .flatMap((own, wire) => {
        const legs = own.legs.filter((leg) => leg.level === level);
        return legs.map((leg) => laneOf(this.#board, own, wire, leg));
      })
      .toSorted((a, b) => a.leg.rank - b.leg.rank || a.wire - b.wire || a.leg.nth - b.leg.nth);
  }

  #aparts(lanes: readonly Lane[]): Apart[] {
    const found: Apart[] = [];
    lanes.forEach((a, low) => {
      for (let high = low + 1; high < lanes.length; high += 1) {
        const b = lanes[high];
        const byM = b ? this.#apartM(a, b) : 0;
        if (byM > 0) found.push({ low, high, byM });
      }
    });
    return found;
  }

  /** How far a lane lies above another (m); 0: any distance. */
  #apartM(a: Lane, b: Lane): number {
    if (!Number.isNaN(a.leg.fixedM) && !Number.isNaN(b.leg.fixedM)) return 0;
    const [one, two] = [this.#own[a.wire], this.#own[b.wire]];
    if (!one || !two) return 0;
    if (one === two && Math.abs(a.leg.nth - b.leg.nth) === 2) return 2 * one.share * one.wire.bendRadiusM;
    const byM = (one.wire.diameterM + two.wire.diameterM) / 2;
    return a.span[0] < b.span[1] + byM && b.span[0] < a.span[1] + byM ? byM : 0;
  }

  /** Each lane is drawn to those that its wire runs in next, so that what joins them gets short. */
  #pulls(lanes: readonly Lane[], level: boolean): Pull[] {
    const places = new Map(lanes.map(({ wire, leg }, at) => [keyOf({ wire, nth: leg.nth }), at]));
    return lanes.flatMap(({ wire, leg: { nth } }, place): Pull[] => {
      const own = this.#own[wire];
      if (!own) return [];
      const { from, to } = own.wire;
      const next = places.get(keyOf({ wire, nth: nth + 2 }));
      const endM = () =>
        'exitSide' in to
          ? exitLineM(this.#board.walls, to.exitSide, own.atM[nth + 1] ?? 0)
          : across(to, level);
      return [
        ...(next === undefined ? [] : [{ place, to: next, lineM: 0, weight: 1 }]),
        ...(nth === 1 ? [{ place, to: -1, lineM: across(from, level), weight: 1 }] : []),
        ...(nth === own.legs.length - 2 ? [{ place, to: -1, lineM: endM(), weight: 1 }] : []),
      ];
    });
  }
}
