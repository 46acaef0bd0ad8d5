import { segmentsApart, segmentToSegment } from '../shape/point.ts';
import { type Link, type WireAhead, wireAhead } from './links.ts';
import { type PairCost, pairCost } from './pair-cost.ts';
import type { PlacedItem } from './placed.ts';
import {
  type AloneCost,
  addAlone,
  addPair,
  addWire,
  aloneCost,
  type JudgedScore,
  noSums,
  type ScoreBoard,
  type ScoreRules,
  type Sums,
  weighed,
} from './score.ts';

/** What was judged last and differs from what the ledger holds. */
interface Entry {
  readonly placed: readonly (PlacedItem | undefined)[];
  readonly sums: Sums;
  readonly alone: readonly (readonly [at: number, cost: AloneCost | undefined])[];
  readonly pairs: readonly (readonly [at: number, cost: PairCost | undefined])[];
  readonly wires: readonly (readonly [link: number, wire: WireAhead | null])[];
  readonly close: readonly (readonly [at: number, shortM: number])[];
}

/**
 * Scores one layout after another, each by what differs from the one that was taken last: a search moves a part or two
 * at a time. Items are known by their place in the list, which stays the same; one without a place is undefined.
 */
export class ScoreLedger {
  readonly #board: ScoreBoard;
  readonly #links: readonly Link[];
  readonly #rules: ScoreRules;
  #placed: readonly (PlacedItem | undefined)[] = [];
  #sums: Sums = { ...noSums };
  /** The place of each item in the list. */
  readonly #placeOf = new Map<string, number>();
  readonly #alone = new Map<number, AloneCost | undefined>();
  readonly #pairs = new Map<number, PairCost | undefined>();
  readonly #wires = new Map<number, WireAhead | null>();
  /** What each signal wire lacks to each power wire. */
  readonly #close = new Map<number, number>();
  #last: Entry | null = null;

  constructor(board: ScoreBoard, links: readonly Link[], rules: ScoreRules) {
    this.#board = board;
    this.#links = links;
    this.#rules = rules;
  }

  /** The score of a layout; `aloneOf`: what each item costs by itself, where that is known already. */
  judge(
    placed: readonly (PlacedItem | undefined)[],
    aloneOf: (at: number, item: PlacedItem) => AloneCost = (_, item) =>
      aloneCost(this.#board, item, this.#rules.house),
  ): JudgedScore {
    const sums = { ...this.#sums };
    const changed: number[] = [];
    for (let at = 0; at < placed.length; at += 1) if (placed[at] !== this.#placed[at]) changed.push(at);
    const wires = this.#changedWires(placed, changed, sums);
    this.#last = {
      placed,
      sums,
      alone: this.#changedAlone(placed, changed, sums, aloneOf),
      pairs: this.#changedPairs(placed, changed, sums),
      wires,
      close: this.#changedClose(new Map(wires), sums),
    };
    return weighed(this.#board, placed.filter((one) => one !== undefined), sums, this.#rules);
  }

  /** Takes the layout that was judged last as the one that the next are held against. */
  take(): void {
    if (!this.#last) return;
    const { placed, sums, alone, pairs, wires, close } = this.#last;
    this.#placed = placed;
    this.#sums = sums;
    for (const [at, cost] of alone) this.#alone.set(at, cost);
    for (const [at, cost] of pairs) this.#pairs.set(at, cost);
    for (const [at, wire] of wires) this.#wires.set(at, wire);
    for (const [at, shortM] of close) this.#close.set(at, shortM);
    this.#last = null;
  }

  #changedAlone(
    placed: readonly (PlacedItem | undefined)[],
    changed: readonly number[],
    sums: Sums,
    aloneOf: (at: number, item: PlacedItem) => AloneCost,
  ): Entry['alone'] {
    return changed.map((at) => {
      const [old, item] = [this.#alone.get(at), placed[at]];
      const now = item && aloneOf(at, item);
      if (old) addAlone(sums, old, -1);
      if (now) addAlone(sums, now, 1);
      return [at, now];
    });
  }

  #changedPairs(
    placed: readonly (PlacedItem | undefined)[],
    changed: readonly number[],
    sums: Sums,
  ): Entry['pairs'] {
    const pairs: (readonly [number, PairCost | undefined])[] = [];
    for (const at of changed)
      for (let other = 0; other < placed.length; other += 1) {
        if (other === at || (other < at && changed.includes(other))) continue;
        const key = pairKey(at, other);
        const [old, a, b] = [this.#pairs.get(key), placed[at], placed[other]];
        const now = a && b ? pairCost(a, b) : undefined;
        if (old) addPair(sums, old, -1);
        if (now) addPair(sums, now, 1);
        pairs.push([key, now]);
      }
    return pairs;
  }

  #changedWires(
    placed: readonly (PlacedItem | undefined)[],
    changed: readonly number[],
    sums: Sums,
  ): Entry['wires'] {
    const moved = new Set<string>();
    for (const at of changed) {
      const id = placed[at]?.id ?? this.#placed[at]?.id;
      if (id === undefined) continue;
      moved.add(id);
      this.#placeOf.set(id, at);
    }
    const ownerOf = (id: string) => placed[this.#placeOf.get(id) ?? -1];
    const wires: (readonly [number, WireAhead | null])[] = [];
    for (const [at, link] of this.#links.entries()) {
      const touched =
        ('item' in link.from && moved.has(link.from.item)) || ('item' in link.to && moved.has(link.to.item));
      if (!touched) continue;
      const [old, now] = [this.#wires.get(at), wireAhead(this.#board.around.box, link, ownerOf)];
      if (old) addWire(sums, old, -1);
      if (now) addWire(sums, now, 1);
      wires.push([at, now]);
    }
    return wires;
  }

  #changedClose(wires: ReadonlyMap<number, WireAhead | null>, sums: Sums): Entry['close'] {
    const close: (readonly [number, number])[] = [];
    const neededM = this.#rules.powerToSignalM;
    const count = this.#links.length;
    for (const [at, wire] of wires) {
      const layer = this.#links[at]?.layer;
      const against = layer === 'signal' ? 'power' : layer === 'power' ? 'signal' : null;
      if (!against) continue;
      for (let other = 0; other < count; other += 1) {
        if (this.#links[other]?.layer !== against || (layer === 'power' && wires.has(other))) continue;
        const key = pairKey(at, other);
        const otherWire = wires.has(other) ? wires.get(other) : this.#wires.get(other);
        const shortM = wire && otherWire ? closeBy(wire, otherWire, neededM) : 0;
        sums.closeM += shortM - (this.#close.get(key) ?? 0);
        close.push([key, shortM]);
      }
    }
    return close;
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
