import { type Random, seeded } from '../random.ts';
import type { BoardRemark } from '../remark.ts';
import { BestLayouts, compareFound, type Found } from './best-layouts.ts';
import { boardLinesOf } from './board-lines.ts';
import { tooLargeByM } from './lattice.ts';
import { blockedIn, noClearPlace, noRoom } from './layout-faults.ts';
import { LayoutMoves, type Stand } from './layout-moves.ts';
import {
  type Judged,
  judgeLayout,
  LayoutJudge,
  type LayoutTask,
  type Proposal,
  proposal,
  raisedOf,
  type Setting,
  settingOf,
} from './layout-setting.ts';
import { brokenWeight, cautionWeight, LayoutStarts } from './layout-starts.ts';
import type { ScoreRules } from './score/score.ts';

/** How hard to search. The same task and options give the same layouts. */
export interface SearchOptions {
  readonly seed: number;
  /** Layouts that may be scored. */
  readonly evaluations: number;
  /** Items stand on a lattice of this step, metres. */
  readonly stepM: number;
  /** Fresh starts that the evaluations are shared by. */
  readonly starts: number;
  readonly rules: ScoreRules;
  /** How many of the items that may be raised are; no layout with more or fewer is proposed. */
  readonly raised: number;
  /** Whether a layout may break something on the way at little cost: slower, and better where there is hardly room. */
  readonly soft: boolean;
}

/** The house's figures, and what is to be otherwise than by `searchDefaults`. */
export type SearchGiven = Pick<SearchOptions, 'rules'> & Partial<SearchOptions>;

/** What is searched with where nothing else is said. */
export const searchDefaults: Omit<SearchOptions, 'rules' | 'stepM'> = {
  seed: 1,
  evaluations: 16000,
  starts: 4,
  raised: 0,
  soft: false,
};

/** So many are enough for each open item, where they are few: one alone has hardly more places than that. */
const evaluationsEach = 8000;

/** Up to three layouts that differ, best first; or what does not fit, and by how much. */
export interface SearchResult {
  readonly proposals: readonly Proposal[];
  /** Layouts that were scored. */
  readonly evaluations: number;
  readonly faults: readonly BoardRemark[];
  /** How far the nearest thing to a lawful layout is from one, metres; 0 where one was found, infinite where none was tried. */
  readonly brokenM: number;
}

/** Share of the evaluations of a start that it is annealed with; the rest is for the descent. */
const annealShare = 0.85;
const softShare = 0.7;

/** What breaking anything costs besides: more than cautions that a lawful layout may have to have. */
const brokenStep = 100;

/** Layouts that a search gives, at most. */
const keptLayouts = 3;

/** What it costs at first in a soft search. */
const softWeight = 5;

/**
 * Proposes placements for the items that have none: simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983)
 * from several starts on a lattice, each followed by a descent, bounded by the number of layouts scored. A
 * proposal overlaps nothing, stays on the board and off heads of fixings, and covers no control. Of such layouts those
 * that the rules fault least often are proposed: for mounting holes too near to an edge or a corner, rooms that parts
 * take from each other or that the walls of the space leave too small, and ends that face away from where wires come from. Everything else is in its score.
 */
export function searchLayouts(task: LayoutTask, given: SearchGiven): SearchResult {
  const stepM = given.stepM ?? given.rules.house.stepM;
  const setting = settingOf(task, given.rules, stepM);
  const evaluations = Math.min(searchDefaults.evaluations, evaluationsEach * setting.open.length);
  const options: SearchOptions = { ...searchDefaults, evaluations, stepM, ...given };
  const homeless = setting.open.filter(({ sites }) => sites.list.length === 0);
  if (homeless.length > 0)
    return {
      proposals: [],
      evaluations: 0,
      brokenM: Infinity,
      faults: homeless.map(({ item }) => {
        const byM = tooLargeByM(boardLinesOf(task.board.shape), item, options.stepM);
        return byM > 1e-9 ? noRoom(item.id, byM) : noClearPlace(item.id);
      }),
    };
  const search = new Search(setting, options);
  search.run();
  const proposals = search.chosen().map((sites) => proposal(setting, sites));
  const faults = proposals.length > 0 ? [] : search.blocked();
  const brokenM = proposals.length > 0 ? 0 : search.brokenM;
  return { proposals, evaluations: search.evaluations, faults, brokenM };
}

/** Those of a list with the least of something. */
function fewest<T>(list: readonly T[], countOf: (one: T) => number): T[] {
  const counts = list.map(countOf);
  const least = Math.min(...counts);
  return list.filter((_, at) => counts[at] === least);
}

/** One run of the search: what has been tried so far. */
class Search {
  evaluations = 0;
  readonly best = new BestLayouts(keptLayouts);
  /** The best layout of each start: they differ more than the best of one do. */
  readonly #bestOfStarts = new BestLayouts(keptLayouts);
  #bestOfStart: Found | null = null;
  readonly #setting: Setting;
  readonly #options: SearchOptions;
  readonly #random: Random;
  readonly #moves: LayoutMoves;
  readonly #starts: LayoutStarts;
  readonly #judge: LayoutJudge;
  readonly #inStock = new Map<string, boolean>();
  #leastBroken: { readonly broken: number; readonly sites: Stand } = { broken: Infinity, sites: [] };

  constructor(setting: Setting, options: SearchOptions) {
    this.#setting = setting;
    this.#options = options;
    this.#random = seeded(options.seed);
    this.#judge = new LayoutJudge(setting);
    this.#moves = new LayoutMoves(setting, this.#random);
    this.#starts = new LayoutStarts(setting, options.raised, this.#moves, this.#random);
  }

  run(): void {
    const { starts, evaluations, soft } = this.#options;
    for (let start = 0; start < starts; start += 1) {
      const until = Math.floor((evaluations * (start + 1)) / starts);
      const cool =
        this.evaluations + Math.floor((until - this.evaluations) * (soft ? softShare : annealShare));
      const { sites: first, evaluations: tried } = this.#starts.first(start);
      this.evaluations += tried;
      const cooled = soft ? this.#annealSoftly(first, cool) : this.#anneal(first, cool);
      this.#descend(cooled, until);
      if (this.#bestOfStart) this.#bestOfStarts.offer(this.#bestOfStart);
      this.#bestOfStart = null;
    }
  }

  /** How far the least broken layout is from one that is lawful, metres. */
  get brokenM(): number {
    return this.#leastBroken.broken;
  }

  /** What is in the way in the least broken layout. */
  blocked(): BoardRemark[] {
    return blockedIn(this.#setting, this.#leastBroken.sites);
  }

  #cost(sites: Stand): number {
    const { cost, broken } = this.#judged(sites);
    return cost + (broken > 1e-9 ? brokenStep + brokenWeight * broken : 0);
  }

  /** The same, infinite where a layout breaks something and one that costs so much does not: nothing makes up for that. */
  #costBelow(sites: Stand, cost: number): number {
    if (cost >= brokenStep || !this.#judge.isBroken(sites)) return this.#cost(sites);
    this.evaluations += 1;
    return Infinity;
  }

  /** The same, and the next are held against it. */
  #taken(sites: Stand): number {
    const cost = this.#cost(sites);
    this.#judge.take();
    return cost;
  }

  /** What a layout costs with its cautions, and how much it breaks; a lawful one is kept where it is good. */
  #judged(sites: Stand): Pick<Judged, 'cost' | 'broken'> {
    this.evaluations += 1;
    const { cost, broken, cautions } = this.#judge.judge(sites);
    if (broken <= 1e-9 && this.#isInStock(sites)) this.#offer({ cost, cautions, sites });
    if (broken < this.#leastBroken.broken) this.#leastBroken = { broken, sites };
    return { cost: cost + cautionWeight * cautions, broken };
  }

  #offer(found: Found): void {
    this.best.offer(found);
    if (!this.#bestOfStart || compareFound(found, this.#bestOfStart) < 0) this.#bestOfStart = found;
  }

  /** What the stock gives depends on which items are raised, how far and how long their rails are: asked once for each. */
  #isInStock(sites: Stand): boolean {
    if (this.#options.raised === 0) return true;
    const raised = raisedOf(this.#setting, sites);
    const key = raised.map(({ item, turnDeg, heightM }) => `${item} ${turnDeg % 180} ${heightM}`).join(';');
    const known = this.#inStock.get(key) ?? this.#setting.railsInStock(raised);
    this.#inStock.set(key, known);
    return known;
  }

  /** The best layouts, what is raised in vain set down; of them those with the fewest raised, then the fewest cautions. */
  chosen(): Stand[] {
    const found = new BestLayouts(keptLayouts);
    for (const one of this.#bestOfStarts.list) found.offer(one);
    for (const one of this.best.list) if (found.list.length < keptLayouts) found.offer(one);
    const setDown = found.list.map(({ sites }) => this.#setDown(sites));
    const raised = (sites: Stand): number => raisedOf(this.#setting, sites).length;
    const cautions = (sites: Stand): number => judgeLayout(this.#setting, sites).cautions;
    return fewest(fewest(setDown, raised), cautions);
  }

  #setDown(sites: Stand): Stand {
    const { open } = this.#setting;
    let kept = sites;
    for (const [at, site] of sites.entries()) {
      const low = open[at]?.sites.at(site.turnDeg, site.column, site.row);
      if (!low || low.heightM === site.heightM) continue;
      const lower = kept.map((old, index) => (index === at ? low : old));
      if (judgeLayout(this.#setting, lower).broken <= 1e-9) kept = lower;
    }
    return kept;
  }

  #anneal(start: Stand, until: number): Stand {
    let [sites, cost] = [start, this.#taken(start)];
    let [bestSites, bestCost] = [sites, cost];
    const begun = this.evaluations;
    // Hot enough to lose a share of what the layout costs, so that small boards cool like large ones.
    const hot = Math.min(0.4, 0.15 * cost);
    while (this.evaluations < until) {
      const heat = hot * 0.003 ** ((this.evaluations - begun) / Math.max(1, until - begun));
      const next = this.#moves.changed(sites);
      const nextCost = this.#costBelow(next, cost);
      if (nextCost < cost || this.#random() < Math.exp((cost - nextCost) / heat)) {
        [sites, cost] = [next, nextCost];
        this.#judge.take();
      }
      if (cost < bestCost) [bestSites, bestCost] = [sites, cost];
    }
    return bestSites;
  }

  /**
   * The same where hardly anything changes place without breaking something on the way, as raised items do: at first
   * that costs little, and more and more as it cools.
   */
  #annealSoftly(start: Stand, until: number): Stand {
    let [sites, now] = [start, this.#judged(start)];
    this.#judge.take();
    let best = { sites, cost: Infinity };
    const begun = this.evaluations;
    while (this.evaluations < until) {
      const done = (this.evaluations - begun) / Math.max(1, until - begun);
      const weight = softWeight * (brokenWeight / softWeight) ** done;
      const heat = 0.4 * 0.01 ** done;
      const next = this.#moves.changed(sites);
      const then = this.#judged(next);
      const worse = then.cost - now.cost + weight * (then.broken - now.broken);
      if (worse < 0 || this.#random() < Math.exp(-worse / heat)) {
        [sites, now] = [next, then];
        this.#judge.take();
      }
      const cost = now.cost + brokenWeight * now.broken;
      if (cost < best.cost) best = { sites, cost };
    }
    return best.sites;
  }

  /** Takes what helps of the near changes of each item, then of its other sites, until nothing does. */
  #descend(start: Stand, until: number): void {
    let [sites, cost] = [start, this.#taken(start)];
    const tryAll = (candidates: Iterable<Stand>): boolean => {
      let better = false;
      for (const next of candidates) {
        if (this.evaluations >= until) return false;
        const nextCost = this.#costBelow(next, cost);
        if (nextCost >= cost - 1e-9) continue;
        [sites, cost, better] = [next, nextCost, true];
        this.#judge.take();
      }
      return better;
    };
    const each = (candidates: (at: number) => Iterable<Stand>) =>
      sites.map((_, at) => tryAll(candidates(at))).some((better) => better);
    while (
      each((at) => this.#moves.near(sites, at)) ||
      each((at) => this.#moves.anywhere(sites, at, until - this.evaluations))
    );
  }
}
