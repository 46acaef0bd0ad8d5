import type { GrainWay } from '../../model/outline.ts';
import type { OutlinePoint, PlanBoard, PlanOffCut, PlanRiserPiece } from '../../model/plan/board.ts';
import { type RulesOfPlan, ruleOf } from '../../model/plan/plan-rules.ts';
import { boxOf, type Point } from '../shape/point.ts';
import {
  type NestedPiece,
  type NestedSheet,
  type Nesting,
  type NestPiece,
  type NestRules,
  nestPieces,
  type PieceLies,
  type StockSheet,
} from './nesting.ts';

/** A piece of a job, with what it is called, the lines that it is cut along and the holes in it. */
export interface SheetPiece extends NestPiece {
  readonly title: string;
  readonly loops: readonly (readonly OutlinePoint[])[];
  readonly holes: readonly PieceHole[];
  /** The lower left corner of the rectangle round it, in the axes of its lines. */
  readonly corner: Point;
}

/** A hole of a piece, metres. */
export interface PieceHole extends Point {
  readonly diameterM: number;
}

/** A point of a piece as the piece lies on its stock sheet, metres from the sheet's lower left corner. */
export function laidPoint<T extends Point>(piece: NestedPiece, corner: Point, point: T): T {
  const [x, y] = [point.xM - corner.xM, point.yM - corner.yM];
  // A quarter turn counter-clockwise within the rectangle that it then takes.
  return piece.turned
    ? { ...point, xM: piece.xM + piece.widthM - y, yM: piece.yM + x }
    : { ...point, xM: piece.xM + x, yM: piece.yM + y };
}

/** What is known of the stock sheet that a board or a rib is cut from. */
export type CutSheet = Pick<PlanBoard, 'sheetGrain' | 'sheetWidthM' | 'sheetHeightM'>;

/** A board as it is cut, with the pieces and ribs that are cut for it. */
export type CutBoard = CutSheet &
  Pick<PlanBoard, 'id' | 'title' | 'sheet' | 'material' | 'grain' | 'outline' | 'cutouts'> &
  Pick<PlanBoard, 'holes' | 'pieces' | 'ribs'>;

/** The sheets that a board and its ribs are cut from. */
export type CutStock = CutSheet & Pick<PlanBoard, 'sheet' | 'material' | 'ribs'>;

/** What sheets are nested for: the boards of a job, the house rules that its plan was made by, and the off-cuts it knew. */
export interface NestedJob {
  readonly job: { readonly id: string };
  readonly boards: readonly CutBoard[];
  readonly rules: RulesOfPlan['rules'];
  /** Left out: whole sheets alone. */
  readonly offCuts?: readonly PlanOffCut[];
}

/** Every piece of some jobs on stock sheets. */
export interface JobNesting extends Nesting {
  readonly pieces: readonly SheetPiece[];
  readonly rules: NestRules;
}

/** Lays every piece that is cut from sheet for some jobs on off-cuts and whole sheets, by the house rules of the first. */
export function nestJobs(jobs: readonly NestedJob[]): JobNesting {
  const pieces = sheetPieces(jobs);
  const rules = nestRules({ rules: jobs[0]?.rules ?? [] });
  return { ...nestPieces(pieces, sheetStock(jobs), rules), pieces, rules };
}

/** The figures to nest by, as plans keep them. */
export function nestRules(plan: RulesOfPlan): NestRules {
  return {
    kerfM: ruleOf(plan, 'kerf'),
    trimM: ruleOf(plan, 'sheet-trim'),
    offCutM: ruleOf(plan, 'off-cut-least'),
  };
}

/** Every piece that is cut from sheet for some jobs: boards, rails, pads, ribs. With several jobs, ids begin with the job's. */
export function sheetPieces(jobs: readonly NestedJob[]): SheetPiece[] {
  return jobs.flatMap(({ job, boards }) => {
    const of = jobs.length > 1 ? { prefix: `${job.id}.`, before: `${job.id}: ` } : { prefix: '', before: '' };
    return boards.flatMap((board) => [
      boardPiece(board, of),
      ...raisingPieces(board, of),
      ...ribPieces(board, of),
    ]);
  });
}

interface Called {
  readonly prefix: string;
  readonly before: string;
}

function boardPiece(board: CutBoard, { prefix, before }: Called): SheetPiece {
  const { id, title, sheet, outline, cutouts, holes } = board;
  const box = boxOf(outline);
  const corner = { xM: box.minX, yM: box.minY };
  const size = { widthM: box.maxX - box.minX, heightM: box.maxY - box.minY };
  const named = { id: `${prefix}${id}`, title: `${before}${title}` };
  const lines = { loops: [outline, ...cutouts], holes, corner };
  return { ...named, ...size, sheet, lies: liesOf(board), ...lines };
}

/** Whether a piece has to be turned so that its grain runs as it asks. */
export function liesOf(board: CutSheet & Pick<PlanBoard, 'grain'>): PieceLies {
  const runs = stockGrain(board);
  if (board.grain === null || runs === null) return 'either';
  return runs === board.grain ? 'as-written' : 'turned';
}

/** Which way the grain runs on a stock sheet as it is nested, lying on its longer side; null for none. */
export function stockGrain({ sheetGrain, sheetWidthM, sheetHeightM }: CutSheet): GrainWay | null {
  if (sheetGrain === null) return null;
  return (sheetGrain === 'width') === sheetWidthM >= sheetHeightM ? 'level' : 'upright';
}

/** The way of the grain of a nested sheet, by the boards that are cut from its stock; null for none. */
export function nestedGrain(boards: Parameters<typeof cutFrom>[0], { stock }: NestedSheet): GrainWay | null {
  const from = cutFrom(boards).find(({ sheet }) => sheet === stock.sheet);
  return from ? stockGrain(from) : null;
}

const forms: { readonly [K in PlanRiserPiece['form']]: string } = {
  rail: 'rail',
  'edge-rail': 'rail on edge',
  pad: 'pad',
};

/** Pieces of one form, size and hole are one entry, however many things they carry. */
function raisingPieces({ id: board, title, sheet, pieces }: CutBoard, called: Called): SheetPiece[] {
  const alike = new Map<string, SheetPiece & { readonly count: number }>();
  for (const { form, count, widthM, lengthM, holeM } of pieces) {
    if (count === 0) continue;
    const size = [widthM, lengthM].map(mmNumber).join('x');
    const id = `${called.prefix}${board}.${form}-${size}${holeM === null ? '' : `-hole-${mmNumber(holeM)}`}`;
    const before = alike.get(id)?.count ?? 0;
    alike.set(id, {
      id,
      title: `${called.before}${forms[form]} of ${title}`,
      sheet,
      widthM,
      heightM: lengthM,
      count: before + count,
      loops: [rectangle(widthM, lengthM)],
      holes: holeM === null ? [] : [{ xM: widthM / 2, yM: lengthM / 2, diameterM: holeM }],
      corner: { xM: 0, yM: 0 },
    });
  }
  return [...alike.values()];
}

/** The strips of each rib, cut along the grain: a rib bends along its length. */
function ribPieces({ id: board, title, ribs }: CutBoard, { prefix, before }: Called): SheetPiece[] {
  return ribs
    .filter(({ strips }) => strips > 0)
    .map((rib): SheetPiece => {
      const { id, sheet, cutWidthM, lengthM, strips } = rib;
      const named = { id: `${prefix}${board}.rib-${id}`, title: `${before}rib ${id} of ${title}` };
      const lies = liesOf({ ...rib, grain: 'upright' });
      const lines = { loops: [rectangle(cutWidthM, lengthM)], holes: [], corner: { xM: 0, yM: 0 } };
      return { ...named, sheet, widthM: cutWidthM, heightM: lengthM, count: strips, lies, ...lines };
    });
}

function mmNumber(lengthM: number): number {
  return Number((lengthM * 1000).toFixed(1));
}

function rectangle(widthM: number, heightM: number): OutlinePoint[] {
  const at = (xM: number, yM: number): OutlinePoint => ({ xM, yM, bulge: 0 });
  return [at(0, 0), at(widthM, 0), at(widthM, heightM), at(0, heightM)];
}

/** Everything that is cut from stock sheets for some boards, with the sheet of each: the boards and their ribs. */
export function cutFrom(boards: readonly CutStock[]): (CutSheet & Pick<PlanBoard, 'sheet' | 'material'>)[] {
  return boards.flatMap((board) => [board, ...board.ribs]);
}

/** What is cut from: `birch-18`, or `off-cut b3 of birch-18`. */
export function stockName({ sheet, offCut }: Pick<StockSheet, 'sheet' | 'offCut'>): string {
  return offCut === undefined ? sheet : `off-cut ${offCut} of ${sheet}`;
}

/** Which of the things cut from it is: `birch-18, sheet 2`, or `off-cut b3 of birch-18`, with its number where it has several. */
export function nestedName({ stock, copy }: Pick<NestedSheet, 'stock' | 'copy'>): string {
  if (stock.offCut === undefined) return `${stock.id}, sheet ${copy}`;
  return stock.quantity === 1 ? stockName(stock) : `${stockName(stock)}, number ${copy}`;
}

/** Sides of a thing that lies on a nested sheet, along the width and the height of the whole sheet as its part tells them. */
export function alongSheet<T extends { readonly widthM: number; readonly heightM: number }>(
  lying: T,
  { sheetWidthM, sheetHeightM }: CutSheet,
): T {
  if (sheetWidthM >= sheetHeightM) return lying;
  return { ...lying, widthM: lying.heightM, heightM: lying.widthM };
}

/**
 * Whole sheets of every material that the jobs ask for, as many as are needed, their longer side lying; and the
 * off-cuts of them, lying as they would in the whole sheet, so that their grain runs the same way.
 */
export function sheetStock(
  jobs: readonly (Pick<NestedJob, 'offCuts'> & { readonly boards: readonly CutStock[] })[],
): StockSheet[] {
  const stock = new Map<string, StockSheet>();
  for (const { sheet, sheetWidthM, sheetHeightM } of cutFrom(jobs.flatMap(({ boards }) => boards)))
    stock.set(sheet, {
      id: sheet,
      sheet,
      widthM: Math.max(sheetWidthM, sheetHeightM),
      heightM: Math.min(sheetWidthM, sheetHeightM),
      quantity: null,
    });
  for (const offCut of jobs.flatMap(({ offCuts = [] }) => offCuts)) {
    const { name, sheet, widthM, heightM, quantity } = offCut;
    const whole = cutFrom(jobs.flatMap(({ boards }) => boards)).find((each) => each.sheet === sheet);
    const id = `${sheet}-off-cut-${name}`;
    if (!whole || stock.has(id)) continue;
    // A quarter turn there is a quarter turn back.
    stock.set(id, { id, sheet, offCut: name, ...alongSheet({ widthM, heightM }, whole), quantity });
  }
  return [...stock.values()].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}
