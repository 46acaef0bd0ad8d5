import type { Box } from '../shape/point.ts';
import { standsFree } from './free-spots.ts';
import { bodyOf, turnedSize } from './item.ts';
import type { Site } from './lattice.ts';
import type { Stand } from './layout-moves.ts';
import {
  isRaised,
  type Judged,
  LayoutJudge,
  placedAll,
  placementAt,
  type Setting,
} from './layout-setting.ts';
import { cautionWeight } from './layout-starts.ts';
import { outOfLineM } from './score/tidiness.ts';

/** A layout brought into line, and the layouts that were scored for it. */
export interface Tidied {
  readonly sites: Stand;
  readonly evaluations: number;
}

type Axis = 'x' | 'y';
const axes: readonly Axis[] = ['x', 'y'];

/** Parts are brought into line with what is no further off, metres. */
const reachM = 0.2;

/** Layouts that may be scored for each item. */
const evaluationsEach = 150;

/**
 * Brings the parts of a layout into line: each is moved to an edge or a middle of another, to the margin or the middle
 * of the board, or to the middle between its neighbours, and those that stand in line already are moved together, on the
 * lattice that a tape shows, for as long as the score gets better. Nothing that a rule asks for is given up for it.
 */
export function tidied(setting: Setting, start: Stand): Tidied {
  return new Tidying(setting, start).run();
}

class Tidying {
  readonly #setting: Setting;
  readonly #judge: LayoutJudge;
  #sites: Stand;
  #now: Judged;
  #evaluations = 1;

  constructor(setting: Setting, start: Stand) {
    this.#setting = setting;
    this.#judge = new LayoutJudge(setting);
    this.#sites = start;
    this.#now = this.#judge.judge(start);
    this.#judge.take();
  }

  run(): Tidied {
    const most = evaluationsEach * this.#sites.length;
    for (let better = true; better && this.#evaluations < most; ) {
      better = false;
      for (const at of this.#sites.keys())
        for (const axis of axes) {
          if (this.#tryBest(this.#aligned(at, axis))) better = true;
          if (this.#tryBest(this.#together(at, axis))) better = true;
        }
      if (this.#tryBest(this.#allMoved())) better = true;
    }
    return { sites: this.#sites, evaluations: this.#evaluations };
  }

  /** Takes the best of some layouts where it is better than the present one. */
  #tryBest(candidates: Iterable<Stand>): boolean {
    let [best, least]: [Stand | null, number] = [null, costOf(this.#now) - 1e-9];
    for (const next of candidates) {
      this.#evaluations += 1;
      const judged = this.#judge.judge(next);
      if (judged.broken > this.#now.broken + 1e-9 || judged.cautions > this.#now.cautions) continue;
      const cost = costOf(judged);
      if (cost < least) [best, least] = [next, cost];
    }
    if (!best) return false;
    this.#sites = best;
    this.#now = this.#judge.judge(best);
    this.#judge.take();
    return true;
  }

  /** A layout with one item in line with something along an axis. */
  *#aligned(at: number, axis: Axis): Generator<Stand> {
    const site = this.#sites[at];
    if (!site) return;
    const from = axis === 'x' ? site.xM : site.yM;
    const tried = new Set<number>();
    for (const toM of this.#lines(at, axis)) {
      const snapM = this.#onTape(toM);
      if (tried.has(snapM) || Math.abs(snapM - from) > reachM || Math.abs(snapM - from) < 1e-9) continue;
      tried.add(snapM);
      const moved = this.#moved(at, axis === 'x' ? snapM - from : 0, axis === 'y' ? snapM - from : 0);
      if (moved) yield replaced(this.#sites, [[at, moved]]);
    }
  }

  /** An item with all that are in line with it, moved along the other axis or across. */
  *#together(at: number, axis: Axis): Generator<Stand> {
    const own = this.#bodyAt(at);
    const { tapeM, stepM } = this.#setting.rules.house;
    const group = [...this.#sites.keys()].filter((other) => {
      const body = this.#bodyAt(other);
      return own && body && (other === at || outOfLineM(own, body, axis) <= tapeM / 2 + 1e-9);
    });
    if (group.length < 2 || group.length === this.#sites.length || group[0] !== at) return;
    for (const byM of [
      stepM,
      -stepM,
      2 * stepM,
      -2 * stepM,
      4 * stepM,
      -4 * stepM,
      ...this.#toMargins(group, axis),
    ])
      yield* this.#groupMoved(group, axis, byM);
  }

  /** All items, moved to the middle of the board along either axis. */
  *#allMoved(): Generator<Stand> {
    if (this.#setting.fixed.length > 0) return;
    const all = [...this.#sites.keys()];
    for (const axis of axes)
      for (const byM of this.#toMargins(all, axis)) yield* this.#groupMoved(all, axis, byM);
  }

  *#groupMoved(group: readonly number[], axis: Axis, byM: number): Generator<Stand> {
    const snapM = this.#onTape(byM);
    if (Math.abs(snapM) < 1e-9) return;
    const moved = group.map((at) => this.#moved(at, axis === 'x' ? snapM : 0, axis === 'y' ? snapM : 0));
    const pairs = moved.flatMap((site, index) => {
      const at = group[index];
      return site && at !== undefined ? [[at, site] as const] : [];
    });
    if (pairs.length === group.length) yield replaced(this.#sites, pairs);
  }

  /** How far a group has to move to the margins of the board, or to its middle. */
  #toMargins(group: readonly number[], axis: Axis): number[] {
    const bodies = group.flatMap((at) => this.#bodyAt(at) ?? []);
    const [low, high] = rangeOf(bodies, axis);
    const [from, to] = rangeOf([this.#setting.boardLines.box], axis);
    const { marginM } = this.#setting.rules.house;
    return [from + marginM - low, to - marginM - high, (from + to - low - high) / 2];
  }

  /** Where the lower edge of an item would be in line with something along an axis. */
  #lines(at: number, axis: Axis): number[] {
    const own = this.#bodyAt(at);
    if (!own) return [];
    const [low, high] = rangeOf([own], axis);
    const size = high - low;
    const { boardLines, rules } = this.#setting;
    const [from, to] = rangeOf([boardLines.box], axis);
    const { marginM } = rules.house;
    const lines = [from + marginM, to - marginM - size, (from + to - size) / 2];
    let [before, after] = [-Infinity, Infinity];
    for (const other of placedAll(this.#setting, this.#sites)) {
      if (other.id === this.#setting.open[at]?.item.id) continue;
      const [otherLow, otherHigh] = rangeOf([other.body], axis);
      lines.push(otherLow, otherHigh - size, (otherLow + otherHigh - size) / 2);
      for (const gapM of [rules.partGapM, 2 * rules.partGapM, other.reachM])
        lines.push(otherHigh + gapM, otherLow - gapM - size);
      const [mine, theirs] = [rangeOf([own], across(axis)), rangeOf([other.body], across(axis))];
      if (mine[0] >= theirs[1] || theirs[0] >= mine[1]) continue;
      if (otherHigh <= low + 1e-9) before = Math.max(before, otherHigh);
      if (otherLow >= high - 1e-9) after = Math.min(after, otherLow);
    }
    if (before > -Infinity && after < Infinity) lines.push((before + after - size) / 2);
    return lines;
  }

  #bodyAt(at: number): Box | null {
    const [one, site] = [this.#setting.open[at], this.#sites[at]];
    return one && site ? bodyOf(one.item, placementAt(one, site)) : null;
  }

  /** The site of an item so far to the side; null where it does not stand on board there. */
  #moved(at: number, byXM: number, byYM: number): Site | null {
    const [one, site] = [this.#setting.open[at], this.#sites[at]];
    if (!one || !site) return null;
    const size = turnedSize(one.item, site.turnDeg);
    const [xM, yM] = [site.xM + byXM, site.yM + byYM];
    const box = { minX: xM, minY: yM, maxX: xM + size.xM, maxY: yM + size.yM };
    const isUp = site.heightM > 0 && !isRaised(one, site);
    return standsFree(this.#setting.boardLines, box, isUp) ? { ...site, xM, yM } : null;
  }

  #onTape(valueM: number): number {
    const { tapeM } = this.#setting.rules.house;
    return Math.round(valueM / tapeM) * tapeM;
  }
}

function costOf({ cost, broken, cautions }: Judged): number {
  return cost + cautionWeight * cautions + 1000 * Math.max(0, broken);
}

function across(axis: Axis): Axis {
  return axis === 'x' ? 'y' : 'x';
}

function rangeOf(boxes: readonly Box[], axis: Axis): readonly [number, number] {
  const lows = boxes.map(({ minX, minY }) => (axis === 'x' ? minX : minY));
  const highs = boxes.map(({ maxX, maxY }) => (axis === 'x' ? maxX : maxY));
  return [Math.min(...lows), Math.max(...highs)];
}

function replaced(sites: Stand, changes: readonly (readonly [at: number, site: Site])[]): Stand {
  const next = [...sites];
  for (const [at, site] of changes) next[at] = site;
  return next;
}
