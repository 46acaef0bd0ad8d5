import { type Rectangle, withoutRectangle } from './free-rectangles.ts';
import { areaOf, offCutsOf } from './sheet-off-cuts.ts';

/** How a piece may lie on its sheet. */
export type PieceLies = 'as-written' | 'turned' | 'either';

/** A piece to cut, by the smallest upright rectangle round it. */
export interface NestPiece {
  readonly id: string;
  /** The sheet material that it is cut from. */
  readonly sheet: string;
  readonly widthM: number;
  readonly heightM: number;
  /** How many of it. Default 1. */
  readonly count?: number;
  /** Where the grain or a print asks for it: as written, or a quarter turn round. Default: either. */
  readonly lies?: PieceLies;
}

/** Stock to cut from: whole sheets, or off-cuts from the shelf. */
export interface StockSheet {
  readonly id: string;
  readonly sheet: string;
  readonly widthM: number;
  readonly heightM: number;
  /** How many there are; null for as many as are needed. */
  readonly quantity: number | null;
  /** Of an off-cut: its name on the shelf. Its size is what is good of it, so that no border is taken off. */
  readonly offCut?: string;
}

export interface NestRules {
  /** Width of the cut, lost between neighbours. */
  readonly kerfM: number;
  /** Bare border of a sheet that is not used. */
  readonly trimM: number;
  /** Off-cuts with a side shorter than this are waste. */
  readonly offCutM: number;
}

export interface NestedPiece extends Rectangle {
  readonly id: string;
  /** Which of several alike, from 1. */
  readonly copy: number;
  /** True where it lies a quarter turn round. */
  readonly turned: boolean;
}

export interface NestedSheet {
  readonly stock: StockSheet;
  /** Which of several alike, from 1. */
  readonly copy: number;
  readonly pieces: readonly NestedPiece[];
  /** What is left and worth keeping, the largest first; none overlaps another. */
  readonly offCuts: readonly Rectangle[];
  /** Share of its area that is in pieces. */
  readonly used: number;
}

export interface Nesting {
  readonly sheets: readonly NestedSheet[];
  /** Pieces that fit on no stock sheet of their material. */
  readonly unplaced: readonly { readonly id: string; readonly copy: number }[];
}

interface Single {
  readonly id: string;
  readonly copy: number;
  readonly sheet: string;
  readonly widthM: number;
  readonly heightM: number;
  readonly lies: PieceLies;
}

interface OpenSheet {
  readonly stock: StockSheet;
  readonly copy: number;
  free: Rectangle[];
  readonly pieces: NestedPiece[];
}

/** Orders in which pieces are tried; the best outcome is kept. */
const orders: readonly ((piece: Single) => number)[] = [
  ({ widthM, heightM }) => Math.max(widthM, heightM),
  ({ widthM, heightM }) => widthM * heightM,
  ({ widthM, heightM }) => Math.min(widthM, heightM),
  ({ widthM, heightM }) => widthM + heightM,
];

/**
 * Lays pieces, of one job or of several, on stock sheets of their material: maximal rectangles, the place where the
 * shorter side fits most closely, over four orders of the pieces and several choices of off-cuts from the shelf.
 * Off-cuts come first, the smallest that takes the piece, then whole sheets. Kept is what opens least area of whole
 * sheets, never more than without off-cuts; then what cuts most from off-cuts, opens least of them, and leaves the
 * largest one. The same input gives the same sheets, whatever the order in which it is written.
 */
export function nestPieces(
  pieces: readonly NestPiece[],
  stock: readonly StockSheet[],
  rules: NestRules,
): Nesting {
  const singles = pieces.flatMap(copiesOf);
  const attempts = stockChoices(stock).flatMap((some) =>
    orders.map((size) => nestInOrder(inOrder(singles, size), some, rules)),
  );
  const [best = { sheets: [], unplaced: [] }] = attempts.toSorted(compareNestings);
  return best;
}

/** Off-cuts that are tried as the only one; each takes four more attempts. */
const mostAlone = 24;

/** Whole sheets alone, with all off-cuts, and with each off-cut alone: one that takes everything is better than several. */
function stockChoices(stock: readonly StockSheet[]): StockSheet[][] {
  const whole = stock.filter(({ offCut }) => offCut === undefined);
  const offCuts = stock.filter(({ offCut }) => offCut !== undefined).toSorted(smallerFirst);
  if (offCuts.length === 0) return [whole];
  const alone = offCuts.length > 1 ? offCuts.slice(0, mostAlone).map((one) => [...whole, one]) : [];
  return [whole, [...whole, ...offCuts], ...alone];
}

function smallerFirst(a: StockSheet, b: StockSheet): number {
  return areaOf(a) - areaOf(b) || (a.id < b.id ? -1 : 1);
}

function copiesOf({ id, sheet, widthM, heightM, count = 1, lies = 'either' }: NestPiece): Single[] {
  return Array.from({ length: count }, (_, at) => ({ id, copy: at + 1, sheet, widthM, heightM, lies }));
}

function inOrder(singles: readonly Single[], size: (piece: Single) => number): Single[] {
  return singles.toSorted(
    (a, b) => size(b) - size(a) || (a.id === b.id ? a.copy - b.copy : a.id < b.id ? -1 : 1),
  );
}

function compareNestings(a: Nesting, b: Nesting): number {
  return (
    a.unplaced.length - b.unplaced.length ||
    openedM2(a, isWhole) - openedM2(b, isWhole) ||
    less(piecesOnM2(a, isWhole), piecesOnM2(b, isWhole)) ||
    openedM2(a, isOffCut) - openedM2(b, isOffCut) ||
    largestOffCutM2(b) - largestOffCutM2(a)
  );
}

/** Sums of the same areas in another order differ by a hair. */
function less(aM2: number, bM2: number): number {
  return Math.abs(aM2 - bM2) < 1e-9 ? 0 : aM2 - bM2;
}

type OfStock = (stock: StockSheet) => boolean;
const isOffCut: OfStock = ({ offCut }) => offCut !== undefined;
const isWhole: OfStock = (stock) => !isOffCut(stock);

function openedM2({ sheets }: Nesting, counts: OfStock): number {
  return sheets.reduce((sum, { stock }) => sum + (counts(stock) ? areaOf(stock) : 0), 0);
}

function piecesOnM2({ sheets }: Nesting, counts: OfStock): number {
  const on = sheets.filter(({ stock }) => counts(stock)).flatMap(({ pieces }) => pieces);
  return on.reduce((sum, piece) => sum + areaOf(piece), 0);
}

function largestOffCutM2({ sheets }: Nesting): number {
  return Math.max(0, ...sheets.flatMap(({ offCuts }) => offCuts.map(areaOf)));
}

function nestInOrder(singles: readonly Single[], stock: readonly StockSheet[], rules: NestRules): Nesting {
  const open: OpenSheet[] = [];
  const unplaced: { id: string; copy: number }[] = [];
  for (const single of singles) {
    const fit = fitOn(open, stock, isOffCut, single, rules) ?? fitOn(open, stock, isWhole, single, rules);
    if (fit) place(fit, single, rules);
    else unplaced.push({ id: single.id, copy: single.copy });
  }
  return { sheets: open.map((sheet) => finished(sheet, rules)), unplaced };
}

/** Where a piece goes on stock of one sort: the best place on what is open, else on the next that is opened. */
function fitOn(
  open: OpenSheet[],
  stock: readonly StockSheet[],
  counts: OfStock,
  single: Single,
  rules: NestRules,
): Fit | null {
  const begun = open.filter((sheet) => counts(sheet.stock));
  return bestFit(begun, single, rules) ?? openFor(open, stock.filter(counts), single, rules);
}

interface Fit {
  readonly on: OpenSheet;
  readonly xM: number;
  readonly yM: number;
  readonly turned: boolean;
  /** What is left over along the shorter and the longer side of the room. */
  readonly shortM: number;
  readonly longM: number;
}

const turnsOf: { readonly [K in PieceLies]: readonly boolean[] } = {
  'as-written': [false],
  turned: [true],
  either: [false, true],
};

function bestFit(open: readonly OpenSheet[], single: Single, rules: NestRules): Fit | null {
  let best: Fit | null = null;
  for (const on of open) {
    if (on.stock.sheet !== single.sheet) continue;
    for (const room of on.free)
      for (const turned of turnsOf[single.lies]) {
        const fit = fitIn(on, room, single, turned, rules);
        if (fit && (!best || closer(fit, best))) best = fit;
      }
  }
  return best;
}

/** Rooms reach a kerf past the sheet's end, so that a piece with its cut fits where the piece alone would. */
function fitIn(
  on: OpenSheet,
  room: Rectangle,
  single: Single,
  turned: boolean,
  { kerfM }: NestRules,
): Fit | null {
  const [widthM, heightM] = turned ? [single.heightM, single.widthM] : [single.widthM, single.heightM];
  const overX = room.widthM - widthM - kerfM;
  const overY = room.heightM - heightM - kerfM;
  if (overX < -1e-7 || overY < -1e-7) return null;
  return {
    on,
    xM: room.xM,
    yM: room.yM,
    turned,
    shortM: Math.min(overX, overY),
    longM: Math.max(overX, overY),
  };
}

function closer(a: Fit, b: Fit): boolean {
  const order = a.shortM - b.shortM || a.longM - b.longM || a.yM - b.yM || a.xM - b.xM;
  return order < -1e-9;
}

/** Opens the smallest stock sheet that takes the piece and is not used up. */
function openFor(
  open: OpenSheet[],
  stock: readonly StockSheet[],
  single: Single,
  rules: NestRules,
): Fit | null {
  const candidates = stock.filter(({ sheet }) => sheet === single.sheet).toSorted(smallerFirst);
  for (const one of candidates) {
    const copy = open.filter((sheet) => sheet.stock.id === one.id).length + 1;
    if (one.quantity !== null && copy > one.quantity) continue;
    const { kerfM } = rules;
    const trimM = isOffCut(one) ? 0 : rules.trimM;
    const room = {
      xM: trimM,
      yM: trimM,
      widthM: one.widthM - 2 * trimM + kerfM,
      heightM: one.heightM - 2 * trimM + kerfM,
    };
    const sheet: OpenSheet = { stock: one, copy, free: [room], pieces: [] };
    const fit = bestFit([sheet], single, rules);
    if (!fit) continue;
    open.push(sheet);
    return fit;
  }
  return null;
}

function place({ on, xM, yM, turned }: Fit, single: Single, { kerfM }: NestRules): void {
  const [widthM, heightM] = turned ? [single.heightM, single.widthM] : [single.widthM, single.heightM];
  on.pieces.push({ id: single.id, copy: single.copy, xM, yM, widthM, heightM, turned });
  on.free = withoutRectangle(on.free, { xM, yM, widthM: widthM + kerfM, heightM: heightM + kerfM });
}

function finished({ stock, copy, free, pieces }: OpenSheet, rules: NestRules): NestedSheet {
  const used = pieces.reduce((sum, piece) => sum + areaOf(piece), 0) / areaOf(stock);
  return { stock, copy, pieces, offCuts: offCutsOf(free, rules), used };
}
