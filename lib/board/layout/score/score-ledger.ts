import { segmentsApart, segmentToSegment } from '../../shape/point.ts';
import type { PlacedItem } from '../placed.ts';
import { lengthWeight } from './layout-house.ts';
import { type Link, type WireAhead, wireAhead } from './links.ts';
import { type PairCost, pairCost } from './pair-cost.ts';
import {
  type AloneCost,
  addAlone,
  addPair,
  addWire,
  aloneCost,
  copySums,
  type JudgedScore,
  noSums,
  type ScoreBoard,
  type ScoreRules,
  type Sums,
  weighed,
} from './score.ts';

/** Items as they stand, each by its place in the list; one without a place is undefined. */
export type Standing = readonly (PlacedItem | undefined)[];

/** What differs in the layout that was judged last; lists that belong together are as long as each other. */
interface Entry {
  placed: Standing;
  readonly sums: Sums;
  readonly changed: number[];
  readonly alone: (AloneCost | undefined)[];
  readonly pairs: number[];
  readonly pairCosts: (Readonly<PairCost> | undefined)[];
  readonly wires: number[];
  readonly waysAhead: (WireAhead | null)[];
  readonly close: number[];
  readonly closeM: number[];
}

/**
 * Scores one layout after another, each by what differs from the one that was taken last: a search moves a part or two
 * at a time. Searches call it very often: it makes few objects.
 */
export class ScoreLedger {
  readonly #board: ScoreBoard;
  readonly #links: readonly Link[];
  /** What each metre of a link counts for. */
  readonly #weights: readonly number[];
  readonly #rules: ScoreRules;
  /** The links of each item, and its place in the list. */
  readonly #linksOf = new Map<string, number[]>();
  readonly #placeOf = new Map<string, number>();
  #placed: Standing = [];
  readonly #sums: Sums = { ...noSums };
  readonly #alone: (AloneCost | undefined)[] = [];
  readonly #pairs = new Map<number, Readonly<PairCost> | undefined>();
  readonly #wires: (WireAhead | null)[] = [];
  /** What each signal wire lacks to each power wire. */
  readonly #close = new Map<number, number>();
  readonly #last: Entry = {
    placed: [],
    sums: { ...noSums },
    changed: [],
    alone: [],
    pairs: [],
    pairCosts: [],
    wires: [],
    waysAhead: [],
    close: [],
    closeM: [],
  };

  /** True where no more than the pairs of the last layout have been judged. */
  #isFresh = false;
  readonly #ownerOf = (id: string): PlacedItem | undefined => this.#last.placed[this.#placeOf.get(id) ?? -1];

  constructor(board: ScoreBoard, links: readonly Link[], rules: ScoreRules) {
    this.#board = board;
    this.#links = links;
    this.#weights = links.map(({ diameterM = 0 }) => lengthWeight(diameterM, rules.house));
    this.#rules = rules;
    for (const [at, { from, to }] of links.entries())
      for (const end of [from, to]) {
        if ('exit' in end) continue;
        const own = this.#linksOf.get(end.item) ?? [];
        if (!own.includes(at)) own.push(at);
        this.#linksOf.set(end.item, own);
      }
  }

  /** The score of a layout; `aloneOf`: what each item costs by itself, where that is known already. */
  judge(placed: Standing, aloneOf?: (at: number) => AloneCost | undefined): JudgedScore {
    this.brokenM(placed);
    this.#isFresh = false;
    this.#judgeAlone(aloneOf);
    this.#judgeWires();
    this.#judgeClose();
    return weighed(this.#board, placed, this.#last.sums, this.#rules);
  }

  /** How far the items of a layout stand in each other or cover what has to be reached, metres: far less to tell. */
  brokenM(placed: Standing): number {
    const last = this.#last;
    if (last.placed === placed && this.#isFresh) return last.sums.broken;
    this.#isFresh = true;
    last.placed = placed;
    copySums(this.#sums, last.sums);
    last.changed.length = 0;
    for (let at = 0; at < placed.length; at += 1)
      if (placed[at] !== this.#placed[at]) {
        last.changed.push(at);
        const id = placed[at]?.id;
        if (id !== undefined) this.#placeOf.set(id, at);
      }
    this.#judgePairs();
    return last.sums.broken;
  }

  /** Takes the layout that was judged last as the one that the next are held against. */
  take(): void {
    const { placed, sums, changed, alone, pairs, pairCosts, wires, waysAhead, close, closeM } = this.#last;
    this.#placed = placed;
    copySums(sums, this.#sums);
    for (const [index, at] of changed.entries()) this.#alone[at] = alone[index];
    for (const [index, key] of pairs.entries()) this.#pairs.set(key, pairCosts[index]);
    for (const [index, at] of wires.entries()) this.#wires[at] = waysAhead[index] ?? null;
    for (const [index, key] of close.entries()) this.#close.set(key, closeM[index] ?? 0);
  }

  #judgeAlone(aloneOf?: (at: number) => AloneCost | undefined): void {
    const { placed, changed, sums, alone } = this.#last;
    alone.length = 0;
    for (const at of changed) {
      const old = this.#alone[at];
      const item = placed[at];
      const now = item && (aloneOf?.(at) ?? aloneCost(this.#board, item, this.#rules.house));
      if (old) addAlone(sums, old, -1);
      if (now) addAlone(sums, now, 1);
      alone.push(now);
    }
  }

  #judgePairs(): void {
    const { placed, changed, sums, pairs, pairCosts } = this.#last;
    pairs.length = 0;
    pairCosts.length = 0;
    for (const at of changed)
      for (let other = 0; other < placed.length; other += 1) {
        if (other === at || (other < at && changed.includes(other))) continue;
        const key = pairKey(at, other);
        const old = this.#pairs.get(key);
        const a = placed[at];
        const b = placed[other];
        const now = a && b ? pairCost(a, b) : undefined;
        if (old) addPair(sums, old, -1);
        if (now) addPair(sums, now, 1);
        pairs.push(key);
        pairCosts.push(now);
      }
  }

  #judgeWires(): void {
    const { placed, changed, sums, wires, waysAhead } = this.#last;
    wires.length = 0;
    waysAhead.length = 0;
    for (const place of changed) {
      const id = placed[place]?.id ?? this.#placed[place]?.id ?? '';
      for (const at of this.#linksOf.get(id) ?? []) {
        const link = this.#links[at];
        if (!link || wires.includes(at)) continue;
        const old = this.#wires[at];
        const now = wireAhead(this.#board.around.box, link, this.#ownerOf);
        const weight = this.#weights[at] ?? 1;
        if (old) addWire(sums, old, weight, -1);
        if (now) addWire(sums, now, weight, 1);
        wires.push(at);
        waysAhead.push(now);
      }
    }
  }

  #judgeClose(): void {
    const { sums, wires, waysAhead, close, closeM } = this.#last;
    close.length = 0;
    closeM.length = 0;
    const neededM = this.#rules.powerToSignalM;
    for (const [index, at] of wires.entries()) {
      const layer = this.#links[at]?.layer;
      if (layer !== 'signal' && layer !== 'power') continue;
      const against = layer === 'signal' ? 'power' : 'signal';
      const wire = waysAhead[index];
      for (let other = 0; other < this.#links.length; other += 1) {
        if (this.#links[other]?.layer !== against) continue;
        const changed = wires.indexOf(other);
        if (changed >= 0 && layer === 'power') continue;
        const otherWire = changed >= 0 ? waysAhead[changed] : this.#wires[other];
        const shortM = wire && otherWire ? closeBy(wire, otherWire, neededM) : 0;
        const key = pairKey(at, other);
        const oldM = this.#close.get(key) ?? 0;
        if (shortM === 0 && oldM === 0) continue;
        sums.closeM += shortM - oldM;
        close.push(key);
        closeM.push(shortM);
      }
    }
  }
}

/** What one wire lacks to another, as the crow flies, metres. */
function closeBy(a: WireAhead, b: WireAhead, neededM: number): number {
  if (segmentsApart(a.from, a.to, b.from, b.to, neededM)) return 0;
  return Math.max(0, neededM - segmentToSegment(a.from, a.to, b.from, b.to));
}

/** More than the items or wires of any board. */
const most = 1 << 16;

function pairKey(a: number, b: number): number {
  return a < b ? a * most + b : b * most + a;
}

/** Scores placed items. */
export function scoreLayout(
  board: ScoreBoard,
  placed: readonly PlacedItem[],
  links: readonly Link[],
  rules: ScoreRules,
): JudgedScore {
  return new ScoreLedger(board, links, rules).judge(placed);
}
