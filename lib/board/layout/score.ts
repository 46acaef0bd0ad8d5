import { centreOfMass } from '../measure.ts';
import {
  type Box,
  distance,
  type Point,
  segmentsApart,
  segmentsCross,
  segmentToSegment,
} from '../shape/point.ts';
import { quartersOff } from './facing.ts';
import { overlapM, type PlacedTerminal, type Side, type WireLayer } from './item.ts';
import { faceCoveredM, freeToSideM, gapShortfall, type PlacedItem, planGapM, shortfalls } from './placed.ts';
import type { LayoutBoard, LayoutRules } from './placement.ts';
import { controlsOverheadM, missingAirOver, stackBlockedM } from './stacking.ts';

/** One end of a wire on a board: a terminal of an item, or the side that it leaves the board by. */
export type LinkEnd = { readonly item: string; readonly terminal: string } | { readonly exit: Side };

/** A wire to be laid on the board. */
export interface Link {
  readonly id: string;
  readonly from: LinkEnd;
  readonly to: LinkEnd;
  readonly layer: WireLayer;
  /** How long it is where it is made to a length, metres; left out: as long as its way. */
  readonly longestM?: number;
}

/** What a layout costs, all in metres of wire: less is better. */
export interface ScoreParts {
  /** Length of all wires, straight along x and y. */
  readonly length: number;
  /** Wires that cross as the crow flies. */
  readonly crossings: number;
  /** Signal too near to power, and ends that face the wrong side. */
  readonly signalToPower: number;
  /** Room for plugs and bends that is missing, up to other parts and to the edge of the board. */
  readonly access: number;
  /** Room for air and between parts that is missing. */
  readonly air: number;
  /** Distance of the centre of gravity from the middle of the board. */
  readonly balance: number;
}

/** A score with its parts. */
export interface Score {
  readonly total: number;
  readonly parts: ScoreParts;
}

/** What each thing costs in metres of wire (house judgement, no source). */
export const scoreWeights = {
  crossing: 0.25,
  signalToPowerM: 1,
  quarterOff: 0.05,
  accessM: 10,
  airM: 10,
  balanceM: 0.5,
} as const;

/** What a score needs to know of the board, worked out once. */
export interface ScoreBoard extends LayoutBoard {
  readonly box: Box;
  readonly centroid: Point;
}

/** Share of a made length that the straight way of a wire may take: the rest goes round what is in the way (house judgement). */
const straightShare = 0.8;

interface Wire {
  readonly from: Point;
  readonly to: Point;
  readonly layer: WireLayer;
  readonly longestM: number;
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

/** Scores placed items. */
export function scoreLayout(
  board: ScoreBoard,
  placed: readonly PlacedItem[],
  links: readonly Link[],
  rules: LayoutRules,
): JudgedScore {
  const wires = wiresOf(board.box, placed, links);
  const rooms = roomCosts(placed);
  const mouthM = placed.reduce((sum, one) => sum + mouthShortM(board.box, one), 0);
  const parts: ScoreParts = {
    length: wires.reduce((sum, { from, to }) => sum + gridDistance(from, to), 0),
    crossings: scoreWeights.crossing * countCrossings(wires),
    signalToPower:
      scoreWeights.signalToPowerM * closeness(wires, rules.powerToSignalM) +
      scoreWeights.quarterOff * quartersWrong(board, placed),
    access: scoreWeights.accessM * (rooms.accessM + mouthM),
    air: scoreWeights.airM * rooms.airM,
    balance: scoreWeights.balanceM * imbalance(board.centroid, placed),
  };
  const total =
    parts.length + parts.crossings + parts.signalToPower + parts.access + parts.air + parts.balance;
  return { total, parts, broken: rooms.broken, roomsShort: rooms.short, wiresShort: countShort(wires) };
}

/** Room for plugs and bends that is missing between an item's terminals and the edge of the board, metres. */
function mouthShortM(box: Box, { body, mouths }: PlacedItem): number {
  let sum = 0;
  for (const { side, neededM } of mouths) sum += Math.max(0, neededM - freeToSideM(body, side, box));
  return sum;
}

/** Distance along x and then y, metres. */
function gridDistance(a: Point, b: Point): number {
  return Math.abs(a.xM - b.xM) + Math.abs(a.yM - b.yM);
}

/** The point where a wire straight out of a terminal leaves the box by a side. */
function exitPoint(box: Box, side: Side, from: Point): Point {
  if (side === 'right' || side === 'left') return { xM: side === 'right' ? box.maxX : box.minX, yM: from.yM };
  return { xM: from.xM, yM: side === 'top' ? box.maxY : box.minY };
}

/** Both ends of every wire whose items are placed. */
function wiresOf(box: Box, placed: readonly PlacedItem[], links: readonly Link[]): Wire[] {
  if (links.length === 0) return [];
  const byId = new Map<string, PlacedItem>();
  for (const one of placed) byId.set(one.id, one);
  const wires: Wire[] = [];
  for (const { from, to, layer, longestM = Infinity } of links) {
    const [a, b] = [terminalOf(byId, from), terminalOf(byId, to)];
    const start = a ?? (b && 'exit' in from ? exitPoint(box, from.exit, b) : undefined);
    const end = b ?? (a && 'exit' in to ? exitPoint(box, to.exit, a) : undefined);
    if (start && end) wires.push({ from: start, to: end, layer, longestM });
  }
  return wires;
}

function terminalOf(byId: ReadonlyMap<string, PlacedItem>, end: LinkEnd): PlacedTerminal | undefined {
  return 'exit' in end ? undefined : byId.get(end.item)?.terminals.get(end.terminal);
}

function countShort(wires: readonly Wire[]): number {
  let count = 0;
  for (const { from, to, longestM } of wires)
    if (longestM < Infinity && gridDistance(from, to) > straightShare * longestM) count += 1;
  return count;
}

function countCrossings(wires: readonly Wire[]): number {
  let count = 0;
  for (let at = 0; at < wires.length; at += 1)
    for (let other = at + 1; other < wires.length; other += 1) {
      const [a, b] = [wires[at], wires[other]];
      if (a && b && segmentsCross(a.from, a.to, b.from, b.to)) count += 1;
    }
  return count;
}

/** Sum of what is missing to the house distance between each signal wire and each power wire, metres. */
function closeness(wires: readonly Wire[], neededM: number): number {
  let sum = 0;
  for (const a of wires) {
    if (a.layer !== 'signal') continue;
    for (const b of wires) {
      if (b.layer !== 'power' || segmentsApart(a.from, a.to, b.from, b.to, neededM)) continue;
      sum += Math.max(0, neededM - segmentToSegment(a.from, a.to, b.from, b.to));
    }
  }
  return sum;
}

function quartersWrong({ signalSide, powerSide }: LayoutBoard, placed: readonly PlacedItem[]): number {
  if (!signalSide && !powerSide) return 0;
  let sum = 0;
  for (const { terminals } of placed)
    for (const { faces, layer } of terminals.values()) {
      if (layer === 'signal') sum += quartersOff(faces, signalSide);
      else if (layer !== 'speaker') sum += quartersOff(faces, powerSide);
    }
  return sum;
}

function imbalance(centroid: Point, placed: readonly PlacedItem[]): number {
  const masses = placed.map(({ body, massKg }) => ({
    massKg,
    xM: (body.minX + body.maxX) / 2,
    yM: (body.minY + body.maxY) / 2,
  }));
  return masses.some(({ massKg }) => massKg > 0) ? distance(centroid, centreOfMass(masses)) : 0;
}

interface RoomCosts {
  accessM: number;
  airM: number;
  broken: number;
  /** Rooms and gaps that are missing in `accessM` and `airM`. */
  short: number;
}

function roomCosts(placed: readonly PlacedItem[]): RoomCosts {
  const costs = { accessM: 0, airM: 0, broken: 0, short: 0 };
  for (let at = 0; at < placed.length; at += 1)
    for (let other = at + 1; other < placed.length; other += 1) {
      const [a, b] = [placed[at], placed[other]];
      if (a && b) addPair(costs, a, b);
    }
  return costs;
}

function addPair(costs: RoomCosts, a: PlacedItem, b: PlacedItem): void {
  if (planGapM(a.body, b.body) > Math.max(a.reachM, b.reachM)) return;
  const inEachOther = overlapM(a.body, b.body);
  if (inEachOther > 1e-9) costs.broken += inEachOther;
  costs.broken += faceCoveredM(a, b) + faceCoveredM(b, a) + stackBlockedM(a, b) + stackBlockedM(b, a);
  const gap = gapShortfall(a, b);
  if (gap) addAir(costs, gap.neededM - gap.freeM);
  for (const list of [shortfalls(a, b), shortfalls(b, a)])
    for (const { kind, freeM, neededM } of list) {
      if (kind === 'accessM' || kind === 'toolM') costs.broken += neededM - freeM;
      else if (kind === 'bendM') addAccess(costs, neededM - freeM);
      else addAir(costs, neededM - freeM);
    }
  addOverhead(costs, a, b);
  addOverhead(costs, b, a);
}

/** What a part takes of a lower one; of one that the search raises, `broken` counts it. */
function addOverhead(costs: RoomCosts, lower: PlacedItem, upper: PlacedItem): void {
  if (upper.raising || upper.body.minZ <= lower.body.minZ) return;
  const coveredM = controlsOverheadM(lower, upper);
  if (coveredM > 1e-9) addAccess(costs, coveredM);
  const air = missingAirOver(lower, upper);
  if (air) addAir(costs, air.neededM - air.freeM);
}

function addAccess(costs: RoomCosts, byM: number): void {
  costs.accessM += byM;
  costs.short += 1;
}

function addAir(costs: RoomCosts, byM: number): void {
  costs.airM += byM;
  costs.short += 1;
}
