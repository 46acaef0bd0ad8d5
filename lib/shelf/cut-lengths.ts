import { type ShelfLength, sameLengthM } from './shelf-lengths.ts';

/** A length on the shelf, and what is cut from it. */
export interface CutLength<L> {
  readonly from: L;
  readonly cutsM: readonly number[];
}

/** Cuts shared out: by each length on the shelf, in its order, and those that none has left in one. */
export interface SharedCuts<L> {
  readonly lengths: readonly CutLength<L>[];
  readonly uncut: readonly number[];
}

type Free = Pick<ShelfLength, 'offCut' | 'freeM'>;

/**
 * Shares cuts (m) out over the lengths on the shelf: longest first, each from an off-cut where one reaches, else from a
 * reel, and of these from the shortest that still gives it, so that long ones stay long. Two ends of 8 ft are not 14 ft.
 */
export function cutLengths<L extends Free>(shelf: readonly L[], cuts: readonly number[]): SharedCuts<L> {
  const lengths = shelf.map((from) => ({ from, leftM: from.freeM, cutsM: [] as number[] }));
  const uncut = cuts
    .toSorted((a, b) => b - a)
    .filter((cut) => {
      const [best] = lengths
        .filter(({ leftM }) => leftM >= cut - sameLengthM)
        .toSorted((a, b) => isReel(a.from) - isReel(b.from) || a.leftM - b.leftM);
      if (!best) return true;
      best.leftM = Math.max(0, best.leftM - cut);
      best.cutsM.push(cut);
      return false;
    });
  return { lengths: lengths.map(({ from, cutsM }) => ({ from, cutsM })), uncut };
}

function isReel({ offCut }: Free): number {
  return offCut === null ? 1 : 0;
}
