import type { ShelfUnit } from '../vocabulary.ts';

/** One length that a job cuts, under what it is cut for: a wire, a cable, a run, an end. */
export interface CutTaken {
  readonly of: string;
  readonly part: string;
  readonly lengthM: number;
}

/** What a pick list cuts from one length on the shelf. */
export interface LengthTaken {
  readonly part: string;
  /** The off-cut of a reel by its name; null for the reel itself. */
  readonly offCut: string | null;
  /** What was on it. */
  readonly lengthM: number;
  readonly cutsM: readonly number[];
}

/** Off-cuts of sheet that a job takes. */
export interface SheetTaken {
  readonly sheet: string;
  readonly offCut: string;
  readonly quantity: number;
}

/** Pieces that are known by what they are for: a device, a fuse, the end of a wire, all that is cut from a sheet. */
export interface PieceTaken {
  readonly of: string;
  readonly part: string;
  readonly count: number;
  /** How it is made: where that is the same in a later revision, the piece is in place already. */
  readonly as: string;
}

/** What one plan takes from the shelf. */
export interface ShelfTakes {
  /** Pieces by part; of a sheet, whole ones. */
  readonly pieces: Readonly<Record<string, number>>;
  /** Those of them that are known by what they are for. */
  readonly known: readonly PieceTaken[];
  readonly cuts: readonly CutTaken[];
  /** The revision that is built in beyond which `pieces` goes; left out where they are all that it takes. */
  readonly beyond?: string;
  /** Where its pick list says that cuts come from; none of a plan that was frozen before the list said it. */
  readonly lengths: readonly LengthTaken[];
  readonly sheets: readonly SheetTaken[];
}

/**
 * A released revision that is not built in yet, with what it takes from the shelf. What its pieces are for is asked among its
 * own revisions alone: other jobs are read anew for what they are handed, and are handed no more than they ask.
 */
export interface PromisedTo extends Omit<ShelfTakes, 'known'> {
  readonly job: string;
  readonly revision: string;
}

/** So much of a part is promised to a released revision: pieces, or metres. */
export interface PartPromisedTo {
  readonly job: string;
  /** Empty where it is not told which job it is. */
  readonly revision: string;
  readonly quantity: number;
}

/** What of one part is promised. */
export interface PartPromise {
  readonly unit: ShelfUnit;
  readonly to: readonly PartPromisedTo[];
  /** Pieces, or metres, that are promised and not there: of a length, what no single length covers. */
  readonly over: number;
  /** Lengths of it that no single length on the shelf covers (m). */
  readonly uncutM: readonly number[];
  /** Pieces of it that are there; of a sheet, whole ones. */
  readonly pieces: number;
  /** Metres of each of its reels, in the order of the shop file. */
  readonly reelsM: readonly number[];
  /** Metres of its off-cuts of a reel, by their names. */
  readonly offCutsM: Readonly<Record<string, number>>;
  /** Pieces of its off-cuts of a sheet, by their names. */
  readonly sheets: Readonly<Record<string, number>>;
}

/** What is promised of the parts of a shop, by part. */
export type PromisedShelf = Readonly<Record<string, PartPromise>>;

/** How far a job is, as its file says. */
export interface JobStanding {
  /** The revision that it is at. */
  readonly revision: string;
  /** Null where the file can't be read so far. */
  readonly status: string | null;
  /** The revisions that it lists, the newest last; true for one that is built in. */
  readonly revisions: readonly { readonly revision: string; readonly isInstalled: boolean }[];
}

/** A released revision as far as the shelf is concerned. */
export interface ReleasedTakes {
  readonly revision: string;
  readonly issuedOn: string;
  readonly takes: ShelfTakes;
}
