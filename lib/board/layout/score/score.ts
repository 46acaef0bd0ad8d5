import type { Box, Point } from '../../shape/point.ts';
import type { LayoutBoard, LayoutRules } from '../check-placements.ts';
import { quartersOff } from '../facing.ts';
import { freeToSideM, type PlacedItem } from '../placed.ts';
import type { LayoutHouse } from './layout-house.ts';
import { terminalKey, type WireAhead } from './links.ts';
import type { PairCost } from './pair-cost.ts';
import { closedEnds, headsBefore, marginShortM, type Surroundings } from './surroundings.ts';
import { type Tidiness, tidiness } from './tidiness.ts';

/** What a layout costs, all in metres of wire: less is better. */
export interface ScoreParts extends Tidiness {
  /** Length of all wires, of thick ones more: as they would run past the parts that they end at, or as they are laid. */
  readonly length: number;
  /** Bends of all wires, the same. */
  readonly bends: number;
  /** Wires that cross, as they are laid; 0 before. */
  readonly crossings: number;
  /** Wires that are led far round, as they are laid; 0 before. */
  readonly far: number;
  /** What wires lack that are made to a length. */
  readonly reach: number;
  /** What wires are longer than the house wants them, such as ground leads. */
  readonly wanted: number;
  /** Signal too near to power, and ends that face away from the side that signal or power comes from. */
  readonly signalToPower: number;
  /** Ends that face away from the side that their own wire leaves by. */
  readonly facing: number;
  /** Room for plugs and bends that is missing, up to other parts and to the edge of the board. */
  readonly access: number;
  /** Room for air and between parts that is missing. */
  readonly air: number;
  /** Distance of the centre of gravity from the middle of the board. */
  readonly balance: number;
  /** Free margin that is missing round the parts. */
  readonly margin: number;
  /** Heads of fixings before panels. */
  readonly heads: number;
}

/** A score with its parts. */
export interface Score {
  readonly total: number;
  readonly parts: ScoreParts;
}

/** What a score needs to know of the board, worked out once. */
export interface ScoreBoard extends LayoutBoard {
  readonly around: Surroundings;
  readonly centroid: Point;
  /** Terminals that a wire joins to another part of the board, as `terminalKey` has them: they face that, and no side. */
  readonly joined: ReadonlySet<string>;
}

/** What a score goes by. */
export interface ScoreRules extends LayoutRules {
  readonly house: LayoutHouse;
}

/** A score, and how far the layout is from one that a rule does not fault. */
export interface JudgedScore extends Score {
  /** Above zero where an item overlaps another or covers a control or a face, metres. */
  readonly broken: number;
  /** Rooms that an item asks for and another takes: each is a caution, as `checkPlacements` tells them. */
  readonly roomsShort: number;
  /** Wires made to a length that hardly reaches, or does not. */
  readonly wiresShort: number;
}

/** What a score is made up of before it is weighed. */
export interface Sums {
  /** Each length by what it counts for. */
  lengthM: number;
  bends: number;
  quarters: number;
  wiresShort: number;
  /** What wires lack that are made to a length, metres. */
  shortM: number;
  /** What wires are longer than they are wanted, metres. */
  overM: number;
  /** What signal lacks to power, as the crow flies, metres. */
  closeM: number;
  accessM: number;
  airM: number;
  broken: number;
  roomsShort: number;
  /** Quarter turns of ends off the sides of the board that signal and power come from. */
  quartersWrong: number;
  marginM: number;
  heads: number;
}

export const noSums: Readonly<Sums> = {
  lengthM: 0,
  bends: 0,
  quarters: 0,
  wiresShort: 0,
  shortM: 0,
  overM: 0,
  closeM: 0,
  accessM: 0,
  airM: 0,
  broken: 0,
  roomsShort: 0,
  quartersWrong: 0,
  marginM: 0,
  heads: 0,
};

/** Writes sums over others, field by field: searches do it very often. */
export function copySums(from: Sums, to: Sums): void {
  to.lengthM = from.lengthM;
  to.bends = from.bends;
  to.quarters = from.quarters;
  to.wiresShort = from.wiresShort;
  to.shortM = from.shortM;
  to.overM = from.overM;
  to.closeM = from.closeM;
  to.accessM = from.accessM;
  to.airM = from.airM;
  to.broken = from.broken;
  to.roomsShort = from.roomsShort;
  to.quartersWrong = from.quartersWrong;
  to.marginM = from.marginM;
  to.heads = from.heads;
}

/** What an item costs where it stands, whatever stands beside it. */
export interface AloneCost {
  readonly mouthM: number;
  readonly quartersWrong: number;
  readonly marginM: number;
  readonly heads: number;
  /** Terminals that the head of a fixing closes. */
  readonly closed: number;
}

/** What an item costs where it stands by itself. */
export function aloneCost(board: ScoreBoard, placed: PlacedItem, { marginM }: LayoutHouse): AloneCost {
  return {
    mouthM: mouthShortM(board.around.box, placed),
    quartersWrong: quartersWrong(board, placed),
    marginM: marginShortM(board.around, placed.body, marginM),
    heads: headsBefore(board.around, placed),
    closed: closedEnds(board.around, placed),
  };
}

/** Room for plugs and bends that is missing between an item's terminals and the edge of the board, metres. */
function mouthShortM(box: Box, { body, mouths }: PlacedItem): number {
  let sum = 0;
  for (const { side, neededM } of mouths) sum += Math.max(0, neededM - freeToSideM(body, side, box));
  return sum;
}

function quartersWrong({ signalSide, powerSide, joined }: ScoreBoard, { id, terminals }: PlacedItem): number {
  if (!signalSide && !powerSide) return 0;
  let sum = 0;
  for (const [terminal, { faces, layer }] of terminals) {
    if (joined.has(terminalKey(id, terminal))) continue;
    if (layer === 'signal') sum += quartersOff(faces, signalSide);
    else if (layer !== 'speaker') sum += quartersOff(faces, powerSide);
  }
  return sum;
}

/** Adds what an item costs by itself to sums, or takes it away. */
export function addAlone(
  sums: Sums,
  { mouthM, quartersWrong: wrong, marginM, heads }: AloneCost,
  sign: 1 | -1,
): void {
  sums.accessM += sign * mouthM;
  sums.quartersWrong += sign * wrong;
  sums.marginM += sign * marginM;
  sums.heads += sign * heads;
}

/** The same of two items. */
export function addPair(
  sums: Sums,
  { accessM, airM, broken, short }: Readonly<PairCost>,
  sign: 1 | -1,
): void {
  sums.accessM += sign * accessM;
  sums.airM += sign * airM;
  sums.broken += sign * broken;
  sums.roomsShort += sign * short;
}

/** The same of a wire, of which each metre counts for so much. */
export function addWire(
  sums: Sums,
  { lengthM, bends, quarters, shortM, overM }: WireAhead,
  weight: number,
  sign: 1 | -1,
): void {
  sums.lengthM += sign * weight * lengthM;
  sums.bends += sign * bends;
  sums.quarters += sign * quarters;
  sums.overM += sign * overM;
  if (shortM <= 0) return;
  sums.wiresShort += sign;
  sums.shortM += sign * shortM;
}

/** The score that sums come to. */
export function weighed(
  board: ScoreBoard,
  placed: readonly (PlacedItem | undefined)[],
  sums: Sums,
  { house }: ScoreRules,
): JudgedScore {
  const { alignment, gaps, pairs, companions } = tidiness(board.around.box, placed, house);
  const parts: ScoreParts = {
    length: sums.lengthM,
    bends: house.bendM * sums.bends,
    crossings: 0,
    far: 0,
    reach: house.reach * sums.shortM,
    wanted: house.over * sums.overM,
    signalToPower: house.nearSignal * sums.closeM + house.quarterM * sums.quartersWrong,
    facing: house.quarterM * sums.quarters,
    access: house.access * sums.accessM,
    air: house.air * sums.airM,
    balance: house.balance * imbalance(board.centroid, placed),
    margin: house.margin * sums.marginM,
    heads: house.headM * sums.heads,
    alignment,
    gaps,
    pairs,
    companions,
  };
  const { broken, roomsShort, wiresShort } = sums;
  return { total: totalOf(parts), parts, broken, roomsShort, wiresShort };
}

/** The sum of the parts of a score. */
export function totalOf(parts: ScoreParts): number {
  const lengths = parts.length + parts.reach + parts.wanted;
  const wires = lengths + parts.bends + parts.crossings + parts.far + parts.signalToPower;
  const rooms = parts.facing + parts.access + parts.air + parts.balance + parts.margin + parts.heads;
  return wires + rooms + parts.alignment + parts.gaps + parts.pairs + parts.companions;
}

/** Distance of the centre of gravity of all items from the middle of the board; 0 where nothing weighs anything. */
function imbalance(centroid: Point, placed: readonly (PlacedItem | undefined)[]): number {
  let [massKg, xKgM, yKgM] = [0, 0, 0];
  for (const one of placed) {
    if (!one) continue;
    massKg += one.massKg;
    xKgM += (one.massKg * (one.body.minX + one.body.maxX)) / 2;
    yKgM += (one.massKg * (one.body.minY + one.body.maxY)) / 2;
  }
  return massKg > 0 ? Math.hypot(xKgM / massKg - centroid.xM, yKgM / massKg - centroid.yM) : 0;
}
