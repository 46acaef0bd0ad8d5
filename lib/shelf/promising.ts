import type {
  CutTaken,
  JobStanding,
  PieceTaken,
  PromisedTo,
  ReleasedTakes,
  ShelfTakes,
} from '../model/content/promised.ts';
import { sameLengthM } from './shelf-lengths.ts';

/** A promise with the day by which it has its turn. */
export interface DatedPromise extends PromisedTo {
  readonly issuedOn: string;
}

/**
 * What a job is promised from the shelf: what its last released revision takes, until that is built in. An earlier one
 * is replaced by it; where an earlier one is built in, only what goes beyond that is still to be taken. Null where nothing
 * is: nothing is released, the job is built in, or another stands in its place.
 *
 * @param released Its released revisions, oldest first.
 */
export function promiseOf(
  job: string,
  released: readonly ReleasedTakes[],
  standing: JobStanding,
): DatedPromise | null {
  const [last, before] = promisingRevisions(released, standing) ?? [];
  if (!last) return null;
  const { known: _, ...takes } = before ? takesBeyond(last.takes, before.takes) : last.takes;
  return { job, revision: last.revision, issuedOn: last.issuedOn, ...takes };
}

/**
 * The released revision that takes from the shelf, and behind it the earlier one that is built in, if any; null where
 * none takes anything any more.
 *
 * @param released Its released revisions, oldest first.
 */
export function promisingRevisions<T extends { readonly revision: string }>(
  released: readonly T[],
  { status, revisions }: JobStanding,
): readonly [T] | readonly [T, T] | null {
  const last = released.at(-1);
  if (!last || status === 'installed' || status === 'superseded') return null;
  const at = revisions.findIndex(({ revision }) => revision === last.revision);
  const isInstalled = (revision: string) =>
    revisions.some((one) => one.revision === revision && one.isInstalled);
  // A later revision that is built in took its place, released or not.
  if (at >= 0 && revisions.slice(at).some((one) => one.isInstalled)) return null;
  const before = released.slice(0, -1).findLast(({ revision }) => isInstalled(revision));
  return before ? [last, before] : [last];
}

/** Promises in their turn: by the day of issue, those of one day by job. */
export function inTurn(promises: readonly DatedPromise[]): readonly DatedPromise[] {
  return promises.toSorted((a, b) => (turnOf(a) < turnOf(b) ? -1 : 1));
}

function turnOf({ issuedOn, job }: Pick<DatedPromise, 'issuedOn' | 'job'>): string {
  return `${issuedOn} ${job}`;
}

/**
 * The promises that stand before a job: those of all other jobs. Its own does not stand in its way, since its next
 * revision takes the place of the released one; and where the revision that it has is the released one, only what had
 * its turn before.
 *
 * @param promises In their turn.
 * @param issuedOn The day of issue of its own frozen plan; null where its revision is not released.
 */
export function promisedBefore(
  promises: readonly DatedPromise[],
  job: string,
  issuedOn: string | null,
): readonly PromisedTo[] {
  return promises
    .filter((one) => one.job !== job && (issuedOn === null || turnOf(one) < turnOf({ issuedOn, job })))
    .map(({ issuedOn: _, ...one }) => one);
}

/** What a plan takes beside what another, already built in, has in place: what is known to be as it was there is not taken. */
export function takesBeyond(takes: ShelfTakes, built: ShelfTakes): ShelfTakes {
  // A list that was made beside what is in place has none of it.
  const isBeside = takes.beyond !== undefined;
  const inPlace = takes.known.filter((one) => built.known.some((before) => isSamePiece(one, before)));
  const pieces = Object.entries(takes.pieces)
    .map(([part, count]) => [part, isBeside ? count : count - countOf(inPlace, part)] as const)
    .filter(([, count]) => count > 0);
  const there = new Map(built.cuts.map((cut) => [cut.of, cut]));
  const isThere = ({ of, part, lengthM }: CutTaken): boolean => {
    const own = there.get(of);
    return own?.part === part && own.lengthM >= lengthM - sameLengthM;
  };
  const sheets = new Set(inPlace.map(({ of }) => of));
  return {
    ...takes,
    pieces: Object.fromEntries(pieces),
    cuts: takes.cuts.filter((cut) => !isThere(cut)),
    sheets: takes.sheets.filter(({ sheet }) => !sheets.has(sheetSubject(sheet))),
  };
}

/** What all that is cut from a sheet is known by among the pieces that are taken. */
export function sheetSubject(sheet: string): string {
  return `sheet ${sheet}`;
}

/** True where a piece is there as it was: made the same, for the same. */
export function isSamePiece(a: PieceTaken, b: PieceTaken): boolean {
  return a.of === b.of && a.part === b.part && a.as === b.as;
}

/** How many pieces of a part are known by what they are for. */
export function countOf(pieces: readonly PieceTaken[], part: string): number {
  return pieces.reduce((sum, one) => sum + (one.part === part ? one.count : 0), 0);
}
