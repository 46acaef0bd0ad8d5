import { BestLayouts } from './best-layouts.ts';
import { boardDefaults } from './defaults.ts';
import type { BoardFault } from './fault.ts';
import { groundsOf, type Site, tooLargeByM } from './lattice.ts';
import { noRails, noRoom } from './layout-faults.ts';
import { LayoutMoves, type Stand } from './layout-moves.ts';
import {
  type LayoutTask,
  type Proposal,
  placedAll,
  proposal,
  raisedOf,
  type Setting,
  settingOf,
} from './layout-setting.ts';
import type { LayoutRules } from './placement.ts';
import { type Random, seeded } from './random.ts';
import { scoreLayout } from './score.ts';

/** How hard to search. The same task and options give the same layouts. */
export interface SearchOptions {
  readonly seed: number;
  /** Layouts that may be scored. */
  readonly evaluations: number;
  /** Items stand on a lattice of this step, metres. */
  readonly stepM: number;
  /** Fresh starts that the evaluations are shared by. */
  readonly starts: number;
  readonly rules: LayoutRules;
  /** How many of the items that may be raised are; no layout with more or fewer is proposed. */
  readonly raised: number;
  /** Whether a layout may break something on the way at little cost: slower, and better where there is hardly room. */
  readonly soft: boolean;
}

/** What is searched with where nothing else is said. */
export const searchDefaults: SearchOptions = {
  seed: 1,
  evaluations: 16000,
  stepM: 0.0127,
  starts: 4,
  rules: boardDefaults,
  raised: 0,
  soft: false,
};

/** Up to three layouts that differ, best first; or what does not fit, and by how much. */
export interface SearchResult {
  readonly proposals: readonly Proposal[];
  /** Layouts that were scored. */
  readonly evaluations: number;
  readonly faults: readonly BoardFault[];
  /** How far the nearest thing to a lawful layout is from one, metres; 0 where one was found, infinite where none was tried. */
  readonly brokenM: number;
}

/** What one metre of overlap costs while searching: more than any wire can save. */
const brokenWeight = 1000;

/** What it costs at first in a soft search. */
const softWeight = 5;

/** What a metre of height costs: it decides between layouts that are else alike, and shows in no score. */
const lowWeight = 1e-4;

/**
 * Proposes placements for the items that have none: simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983)
 * from several starts on a lattice, each followed by a descent, bounded by the number of layouts scored. A
 * proposal overlaps nothing, stays on the board and covers no control; everything else is in its score.
 */
export function searchLayouts(task: LayoutTask, given: Partial<SearchOptions> = {}): SearchResult {
  const options = { ...searchDefaults, ...given };
  const setting = settingOf(task, options.rules, options.stepM);
  const homeless = setting.open.filter(({ sites }) => sites.list.length === 0);
  if (homeless.length > 0)
    return {
      proposals: [],
      evaluations: 0,
      brokenM: Infinity,
      faults: homeless.map(({ item }) =>
        noRoom(item.id, tooLargeByM(groundsOf(task.board.shape), item, options.stepM)),
      ),
    };
  const search = new Search(setting, options);
  search.run();
  const proposals = search.leastRaised().map((sites) => proposal(setting, sites));
  const faults = proposals.length > 0 ? [] : search.blocked();
  const brokenM = proposals.length > 0 ? 0 : search.brokenM;
  return { proposals, evaluations: search.evaluations, faults, brokenM };
}

/** One run of the search: what has been tried so far. */
class Search {
  evaluations = 0;
  readonly best = new BestLayouts(3);
  readonly #setting: Setting;
  readonly #options: SearchOptions;
  readonly #random: Random;
  readonly #moves: LayoutMoves;
  readonly #inStock = new Map<string, boolean>();
  #leastBroken: { readonly broken: number; readonly sites: Stand } = { broken: Infinity, sites: [] };

  constructor(setting: Setting, options: SearchOptions) {
    this.#setting = setting;
    this.#options = options;
    this.#random = seeded(options.seed);
    this.#moves = new LayoutMoves(setting, this.#random);
  }

  run(): void {
    const { starts, evaluations, soft } = this.#options;
    for (let start = 0; start < starts; start += 1) {
      const until = Math.floor((evaluations * (start + 1)) / starts);
      const cool = this.evaluations + Math.floor((until - this.evaluations) * 0.7);
      const first = this.#firstSites(this.#firstLevels(start));
      const cooled = soft ? this.#annealSoftly(first, cool) : this.#anneal(first, cool);
      this.#descend(cooled, until);
    }
  }

  /** How far the least broken layout is from one that is lawful, metres. */
  get brokenM(): number {
    return this.#leastBroken.broken;
  }

  /** The item that stands in others most in the least broken layout, with whom, and by how much. */
  blocked(): BoardFault[] {
    const { sites } = this.#leastBroken;
    const { board, rules, open } = this.#setting;
    const placed = placedAll(this.#setting, sites);
    const brokenOf = (some: typeof placed): number => scoreLayout(board, some, [], rules).broken;
    const all = brokenOf(placed);
    const amounts = open.map(({ item }) => {
      const without = placed.filter(({ id }) => id !== item.id);
      return { id: item.id, without, broken: all - brokenOf(without) };
    });
    const [worst] = amounts.toSorted((a, b) => b.broken - a.broken);
    if (!worst) return [];
    if (worst.broken <= 1e-9) return [noRails(raisedOf(this.#setting, sites).map(({ item }) => item))];
    const left = brokenOf(worst.without);
    const beside = worst.without.filter(({ id }) => {
      const withoutBoth = worst.without.filter((one) => one.id !== id);
      const withoutOther = placed.filter((one) => one.id !== id);
      // What goes when either leaves is between the two.
      return all - brokenOf(withoutOther) - (left - brokenOf(withoutBoth)) > 1e-9;
    });
    const ids = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);
    const raised = raisedOf(this.#setting, sites).map(({ item }) => item);
    return [noRoom(worst.id, worst.broken, ids(beside), raised)];
  }

  #cost(sites: Stand): number {
    const { cost, broken } = this.#judged(sites);
    return cost + (broken > 1e-9 ? 5 + brokenWeight * broken : 0);
  }

  /** What a layout costs but for what it breaks, and how much it breaks; a lawful one is kept where it is good. */
  #judged(sites: Stand): { readonly cost: number; readonly broken: number } {
    this.evaluations += 1;
    const { board, links, rules, brokenAlready } = this.#setting;
    const score = scoreLayout(board, placedAll(this.#setting, sites), links, rules);
    const broken = score.broken - brokenAlready;
    // Of two layouts that are else alike the lower is built: too little to stand before anything in the score.
    const cost = score.total + lowWeight * sites.reduce((sum, { heightM }) => sum + heightM, 0);
    if (broken <= 1e-9 && this.#isInStock(sites)) this.best.offer({ cost, sites });
    if (broken < this.#leastBroken.broken) this.#leastBroken = { broken, sites };
    return { cost, broken };
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

  /** The best layouts, what is raised in vain set down; of them those with the fewest raised. */
  leastRaised(): Stand[] {
    const setDown = this.best.list.map(({ sites }) => this.#setDown(sites));
    const raised = (sites: Stand): number => raisedOf(this.#setting, sites).length;
    const least = Math.min(...setDown.map(raised));
    return setDown.filter((sites) => raised(sites) === least);
  }

  #setDown(sites: Stand): Stand {
    const { board, links, rules, brokenAlready, open } = this.#setting;
    let kept = sites;
    for (const [at, site] of sites.entries()) {
      const low = open[at]?.sites.at(site.turnDeg, site.column, site.row);
      if (!low || low.heightM === site.heightM) continue;
      const lower = kept.map((old, index) => (index === at ? low : old));
      const { broken } = scoreLayout(board, placedAll(this.#setting, lower), links, rules);
      if (broken - brokenAlready <= 1e-9) kept = lower;
    }
    return kept;
  }

  /** The level of each item to begin with: the largest that may be raised are, or others by chance. */
  #firstLevels(start: number): readonly number[] {
    const { open } = this.#setting;
    const { raised } = this.#options;
    if (raised === 0) return open.map(() => 0);
    const order = open
      .map(({ item, levels }, at) => ({ at, levels, areaM2: item.widthM * item.depthM }))
      .filter(({ levels }) => levels.length > 1)
      .map((one) => ({ ...one, rank: start === 0 ? -one.areaM2 : this.#random() }))
      .toSorted((a, b) => a.rank - b.rank);
    const chosen = new Set(order.slice(0, raised).map(({ at }) => at));
    return open.map(({ levels }, at) => {
      if (!chosen.has(at)) return 0;
      return start === 0 ? 1 : 1 + Math.floor(this.#random() * (levels.length - 1));
    });
  }

  /** Largest items first, each at the best of some random sites beside those that stand already. */
  #firstSites(levels: readonly number[]): Stand {
    const { open, board, links, rules } = this.#setting;
    const sites = new Array<Site | undefined>(open.length).fill(undefined);
    const areasM2 = open.map(({ item }) => item.widthM * item.depthM);
    const order = open.map((_, at) => at).toSorted((a, b) => (areasM2[b] ?? 0) - (areasM2[a] ?? 0));
    for (const at of order) {
      let least = Infinity;
      for (let tries = 0; tries < 30; tries += 1) {
        const site = this.#moves.pick(open[at]?.levels[levels[at] ?? 0]?.list ?? []);
        const placed = placedAll(
          this.#setting,
          sites.map((old, index) => (index === at ? site : old)),
        );
        const { total, broken } = scoreLayout(board, placed, links, rules);
        this.evaluations += 1;
        const cost = total + brokenWeight * broken;
        if (cost < least) [least, sites[at]] = [cost, site];
      }
    }
    return sites.flatMap((site) => site ?? []);
  }

  #anneal(start: Stand, until: number): Stand {
    let [sites, cost] = [start, this.#cost(start)];
    let [bestSites, bestCost] = [sites, cost];
    const begun = this.evaluations;
    // Hot enough to lose a share of what the layout costs, so that small boards cool like large ones.
    const hot = Math.min(0.4, 0.15 * cost);
    while (this.evaluations < until) {
      const heat = hot * 0.003 ** ((this.evaluations - begun) / Math.max(1, until - begun));
      const next = this.#moves.changed(sites);
      const nextCost = this.#cost(next);
      if (nextCost < cost || this.#random() < Math.exp((cost - nextCost) / heat))
        [sites, cost] = [next, nextCost];
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
    let best = { sites, cost: Infinity };
    const begun = this.evaluations;
    while (this.evaluations < until) {
      const done = (this.evaluations - begun) / Math.max(1, until - begun);
      const weight = softWeight * (brokenWeight / softWeight) ** done;
      const heat = 0.4 * 0.01 ** done;
      const next = this.#moves.changed(sites);
      const then = this.#judged(next);
      const worse = then.cost - now.cost + weight * (then.broken - now.broken);
      if (worse < 0 || this.#random() < Math.exp(-worse / heat)) [sites, now] = [next, then];
      const cost = now.cost + brokenWeight * now.broken;
      if (cost < best.cost) best = { sites, cost };
    }
    return best.sites;
  }

  /** Takes what helps of the near changes of each item, then of its other sites, until nothing does. */
  #descend(start: Stand, until: number): void {
    let [sites, cost] = [start, this.#cost(start)];
    const tryAll = (candidates: Iterable<Stand>): boolean => {
      let better = false;
      for (const next of candidates) {
        if (this.evaluations >= until) return false;
        const nextCost = this.#cost(next);
        if (nextCost >= cost - 1e-9) continue;
        [sites, cost, better] = [next, nextCost, true];
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
