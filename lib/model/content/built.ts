import type { OutlinePoint } from '../plan/board.ts';
import type { ShelfTakes } from './promised.ts';
import type { Proposal } from './proposal.ts';

/** Where a device stands on its board, as it was built. */
export interface BuiltPlace {
  readonly board: string;
  readonly xM: number;
  readonly yM: number;
  readonly turnDeg: number;
  readonly raisedM: number;
}

/** A board as it was cut and fixed. */
export interface BuiltBoard {
  readonly space: string;
  readonly sheet: string;
  /** Where its datum corner stands in the space. */
  readonly xM: number;
  readonly yM: number;
  readonly outline: readonly OutlinePoint[];
}

/** A wire as it was cut and joined. */
export interface BuiltWire {
  readonly label: string;
  readonly from: string;
  readonly to: string;
  /** The reel that it was cut from; null where it is in a cable. */
  readonly part: string | null;
  readonly lengthM: number;
  /** The route through the vehicle. */
  readonly route: string | null;
}

/** What of a device tells whether it is still the one that was built in. */
export interface BuiltItem {
  readonly part: string | null;
  readonly board: string | null;
  readonly seat: string | null;
}

/** A released revision as far as a later one is built on it: plain data, from its frozen plan. */
export interface BuiltJob {
  readonly revision: string;
  readonly items: Readonly<Record<string, BuiltItem>>;
  readonly places: Readonly<Record<string, BuiltPlace>>;
  readonly boards: Readonly<Record<string, BuiltBoard>>;
  /** By wire: conductors of a pair have one each. */
  readonly wires: Readonly<Record<string, BuiltWire>>;
  readonly proposals: readonly Proposal[];
}

/** What released revisions of a job fixed. */
export interface ReleasedFacts {
  /** Labels by wire, of the latest revision that has it. */
  readonly labels: Readonly<Record<string, string>>;
  /** Every released revision, oldest first. */
  readonly built: readonly BuiltJob[];
  /** What each of them takes from the shelf, by revision. */
  readonly takes?: Readonly<Record<string, ShelfTakes>>;
}

/** What is in the vehicle already: the revision that is built in, with what it took from the shelf. */
export interface InPlace {
  readonly revision: string;
  readonly takes: ShelfTakes;
}

/**
 * What is in place when a revision is built: the last released one before it that is built in (`installed`); null where
 * none is.
 */
export function inPlaceBefore(
  { built, takes = {} }: ReleasedFacts,
  revision: string,
  installed: ReadonlySet<string>,
): InPlace | null {
  const own = built.findIndex((one) => one.revision === revision);
  const before = own < 0 ? built : built.slice(0, own);
  const last = before.findLast((one) => installed.has(one.revision))?.revision;
  const taken = last === undefined ? undefined : takes[last];
  return last !== undefined && taken ? { revision: last, takes: taken } : null;
}

/** A job of which nothing is released. */
export const nothingReleased: ReleasedFacts = { labels: {}, built: [] };

/** What a revision is built on: the one that was released before it; null for a first one. */
export function builtBefore({ built }: Pick<ReleasedFacts, 'built'>, revision: string): BuiltJob | null {
  const own = built.findIndex((one) => one.revision === revision);
  return built[own < 0 ? built.length - 1 : own - 1] ?? null;
}

/** What of a job is taken from the revision that it is built on: ids of devices and of wires. */
export interface HeldValues {
  readonly revision: string;
  readonly places: readonly string[];
  readonly reels: readonly string[];
  readonly lengths: readonly string[];
}
