import type {
  LengthTaken,
  PartPromise,
  PartPromisedTo,
  PromisedShelf,
  PromisedTo,
} from '../model/content/promised.ts';
import type { Shop, Stock } from '../model/content/shop.ts';
import { isQuantity, type Quantity } from '../model/quantity/quantity.ts';
import { cutLengths } from './cut-lengths.ts';
import { type ShelfLength, sameLengthM, shelfLengths } from './shelf-lengths.ts';

/** A shelf with what is promised of it taken out, and what that is. */
export interface OfferedStock {
  readonly stock: Shop['stock'];
  readonly promised: PromisedShelf;
}

/**
 * What a shelf offers beside what is promised of it. A length is promised of the reel that the pick list of its job names,
 * as long as one of that length is there; other cuts are shared out as a pick list would. An off-cut of sheet that is not
 * there any more counts as a whole sheet.
 */
export function offeredStock(stock: Shop['stock'], promises: readonly PromisedTo[]): OfferedStock {
  const parts = new Set(
    promises.flatMap(({ pieces, cuts, sheets }) => [
      ...Object.keys(pieces),
      ...cuts.map(({ part }) => part),
      ...sheets.map(({ sheet }) => sheet),
    ]),
  );
  const offered: [string, Stock][] = [];
  const promised: [string, PartPromise][] = [];
  for (const part of [...parts].sort()) {
    const own = stock[part];
    const isOnReel = promises.some(({ cuts }) => cuts.some((cut) => cut.part === part));
    const promise = isOnReel ? lengthsPromised(part, own, promises) : piecesPromised(part, own, promises);
    promised.push([part, promise]);
    if (own) offered.push([part, without(own, promise)]);
  }
  return {
    stock: { ...stock, ...Object.fromEntries(offered) },
    promised: Object.fromEntries(promised),
  };
}

function piecesPromised(
  part: string,
  stock: Stock | undefined,
  promises: readonly PromisedTo[],
): PartPromise {
  const left = stock && 'pieces' in stock ? stock.pieces : 0;
  const offCuts = stock && 'pieces' in stock ? stock['off-cuts'] : {};
  const sheets: Record<string, number> = {};
  let whole = 0;
  const to = promises.flatMap(({ job, revision, ...takes }): PartPromisedTo[] => {
    const own = takes.pieces[part] ?? 0;
    const cut = takes.sheets.filter(({ sheet }) => sheet === part);
    whole += own;
    for (const { offCut, quantity } of cut) {
      const known = sheets[offCut] ?? 0;
      const there = Math.min(quantity, Math.max(0, (offCuts[offCut]?.pieces ?? 0) - known));
      if (there > 0) sheets[offCut] = known + there;
      whole += quantity - there;
    }
    const quantity = own + cut.reduce((sum, one) => sum + one.quantity, 0);
    return quantity > 0 ? [{ job, revision, quantity }] : [];
  });
  const over = Math.max(0, whole - left);
  return { unit: 'piece', to, over, uncutM: [], pieces: whole - over, reelsM: [], offCutsM: {}, sheets };
}

/** A pick list tells a length to the millimetre, so that what it names is within half of one (m). */
const toldWithinM = 0.0005 + sameLengthM;

/** A length on the shelf while promises are taken from it. */
interface OpenLength extends ShelfLength {
  leftM: number;
}

function lengthsPromised(
  part: string,
  stock: Stock | undefined,
  promises: readonly PromisedTo[],
): PartPromise {
  const shelf = shelfLengths(stock).map((one): OpenLength => ({ ...one, leftM: one.freeM }));
  const open = promises.map(({ job, revision, cuts, lengths }) => {
    const cutsM = cuts.filter((cut) => cut.part === part).map(({ lengthM }) => lengthM);
    const told = lengths.filter((one) => one.part === part);
    return { job, revision, totalM: sumOf(cutsM), restM: fromTold(shelf, told, cutsM) };
  });
  const uncutM: number[] = [];
  for (const { restM } of open) {
    const free = shelf.map((one) => ({ offCut: one.offCut, freeM: one.leftM, one }));
    const { lengths, uncut } = cutLengths(free, restM);
    for (const { from, cutsM } of lengths) from.one.leftM = Math.max(0, from.freeM - sumOf(cutsM));
    uncutM.push(...uncut);
  }
  const takenM = ({ freeM, leftM }: OpenLength) => rounded(freeM - leftM);
  return {
    unit: 'm',
    to: open.flatMap(({ job, revision, totalM }) =>
      totalM > 0 ? [{ job, revision, quantity: rounded(totalM) }] : [],
    ),
    over: rounded(sumOf(uncutM)),
    uncutM,
    pieces: 0,
    reelsM: shelf.filter(({ offCut }) => offCut === null).map(takenM),
    offCutsM: Object.fromEntries(
      shelf.flatMap((one) => (one.offCut === null ? [] : [[one.offCut, takenM(one)] as const])),
    ),
    sheets: {},
  };
}

/** Takes cuts from the lengths that a pick list names, as far as these are there; gives the other cuts. */
function fromTold(
  shelf: readonly OpenLength[],
  told: readonly LengthTaken[],
  cutsM: readonly number[],
): readonly number[] {
  const rest = [...cutsM];
  const used = new Set<OpenLength>();
  for (const { offCut, lengthM, cutsM: own } of told) {
    const still = own.filter((cut) => takeOut(rest, cut));
    const takenM = sumOf(still);
    const found = shelf.find(
      (one) =>
        !used.has(one) &&
        one.offCut === offCut &&
        Math.abs(one.freeM - lengthM) <= toldWithinM &&
        one.leftM >= takenM - sameLengthM,
    );
    if (!found) rest.push(...still);
    else {
      used.add(found);
      found.leftM = Math.max(0, found.leftM - takenM);
    }
  }
  return rest;
}

/** Takes a length out of a list; false where it is not in it. */
function takeOut(list: number[], lengthM: number): boolean {
  const at = list.findIndex((one) => Math.abs(one - lengthM) <= sameLengthM);
  if (at >= 0) list.splice(at, 1);
  return at >= 0;
}

/** What is left of the stock of a part; a reel that is promised to its end stays in its place, with nothing on it. */
function without(stock: Stock, promise: PartPromise): Stock {
  if ('pieces' in stock) {
    const offCuts = Object.entries(stock['off-cuts']).map(([name, cut]) => {
      return [name, { ...cut, pieces: cut.pieces - (promise.sheets[name] ?? 0) }] as const;
    });
    return { pieces: stock.pieces - promise.pieces, 'off-cuts': Object.fromEntries(offCuts) };
  }
  const offCuts = Object.entries(stock['off-cuts']).map(([name, lengthM]) => {
    return [name, less(lengthM, promise.offCutsM[name] ?? 0)] as const;
  });
  return {
    reels: stock.reels.map((lengthM, at) => less(lengthM, promise.reelsM[at] ?? 0)),
    'off-cuts': Object.fromEntries(offCuts),
  };
}

function less(lengthM: Quantity<'m'>, byM: number): Quantity<'m'> {
  const left = Math.max(0, lengthM - byM);
  return isQuantity<'m'>(left) ? left : lengthM;
}

function sumOf(lengths: readonly number[]): number {
  return lengths.reduce((sum, lengthM) => sum + lengthM, 0);
}

/** To a micrometre: sums of lengths carry noise in their last digits. */
function rounded(lengthM: number): number {
  return Number(lengthM.toFixed(6));
}
