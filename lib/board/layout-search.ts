import { BestLayouts } from './best-layouts.ts';
import { boardDefaults } from './defaults.ts';
import { type BoardFault, geometry, mmText } from './fault.ts';
import { groundsOf, type Site, tooLargeByM } from './lattice.ts';
import {
  type LayoutTask,
  type Open,
  type Proposal,
  placedAll,
  proposal,
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
}

/** What is searched with where nothing else is said. */
export const searchDefaults: SearchOptions = {
  seed: 1,
  evaluations: 16000,
  stepM: 0.0127,
  starts: 4,
  rules: boardDefaults,
};

/** Up to three layouts that differ, best first; or what does not fit, and by how much. */
export interface SearchResult {
  readonly proposals: readonly Proposal[];
  /** Layouts that were scored. */
  readonly evaluations: number;
  readonly faults: readonly BoardFault[];
}

/** What one metre of overlap costs while searching: more than any wire can save. */
const brokenWeight = 1000;

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
      faults: homeless.map(({ item }) =>
        noRoom(item.id, tooLargeByM(groundsOf(task.board.shape), item, options.stepM)),
      ),
    };
  const search = new Search(setting, options);
  search.run();
  const proposals = search.best.list.map(({ sites }) => proposal(setting, sites)).slice(0, 3);
  const faults = proposals.length > 0 ? [] : search.blocked();
  return { proposals, evaluations: search.evaluations, faults };
}

function noRoom(item: string, byM: number): BoardFault {
  return {
    rule: 'item-does-not-fit',
    level: 'stop',
    of: [item],
    message: `${item} does not fit on the board: it is too large by ${mmText(byM)} where it fits best`,
    value: byM,
    limit: 0,
    unit: 'm',
    remedy: `make the board larger by ${mmText(byM)} there, raise or stack the item, or leave it out`,
    ...geometry,
  };
}

/** One run of the search: what has been tried so far. */
class Search {
  evaluations = 0;
  readonly best = new BestLayouts(3);
  readonly #setting: Setting;
  readonly #options: SearchOptions;
  readonly #random: Random;
  #leastBroken = { broken: Infinity, sites: [] as Site[] };

  constructor(setting: Setting, options: SearchOptions) {
    this.#setting = setting;
    this.#options = options;
    this.#random = seeded(options.seed);
  }

  run(): void {
    const { starts, evaluations } = this.#options;
    for (let start = 0; start < starts; start += 1) {
      const until = Math.floor((evaluations * (start + 1)) / starts);
      const cool = this.evaluations + Math.floor((until - this.evaluations) * 0.7);
      this.#descend(this.#anneal(this.#firstSites(), cool), until);
    }
  }

  /** The item that stands in others most in the least broken layout, and by how much. */
  blocked(): BoardFault[] {
    const { sites } = this.#leastBroken;
    const placed = placedAll(this.#setting, sites);
    const amounts = this.#setting.open.map(({ item }) => {
      const without = placed.filter(({ id }) => id !== item.id);
      const { board, rules } = this.#setting;
      const broken =
        scoreLayout(board, placed, [], rules).broken - scoreLayout(board, without, [], rules).broken;
      return { id: item.id, broken };
    });
    const [worst] = amounts.toSorted((a, b) => b.broken - a.broken);
    return worst && worst.broken > 1e-9 ? [noRoom(worst.id, worst.broken)] : [];
  }

  #cost(sites: readonly Site[]): number {
    this.evaluations += 1;
    const { board, links, rules, brokenAlready } = this.#setting;
    const score = scoreLayout(board, placedAll(this.#setting, sites), links, rules);
    const broken = score.broken - brokenAlready;
    if (broken <= 1e-9) this.best.offer({ cost: score.total, sites });
    if (broken < this.#leastBroken.broken) this.#leastBroken = { broken, sites: [...sites] };
    return score.total + (broken > 1e-9 ? 5 + brokenWeight * broken : 0);
  }

  #pick<T>(list: readonly T[]): T | undefined {
    return list[Math.floor(this.#random() * list.length)];
  }

  /** Largest items first, each at the best of some random sites beside those that stand already. */
  #firstSites(): Site[] {
    const { open, board, links, rules } = this.#setting;
    const sites = new Array<Site | undefined>(open.length).fill(undefined);
    const area = ({ item }: Open) => item.widthM * item.depthM;
    const order = open.map((_, at) => at).toSorted((a, b) => areaOf(open[b], area) - areaOf(open[a], area));
    for (const at of order) {
      let least = Infinity;
      for (let tries = 0; tries < 30; tries += 1) {
        const site = this.#pick(open[at]?.sites.list ?? []);
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

  #anneal(start: Site[], until: number): Site[] {
    let [sites, cost] = [start, this.#cost(start)];
    let [bestSites, bestCost] = [sites, cost];
    const begun = this.evaluations;
    // Hot enough to lose a share of what the layout costs, so that small boards cool like large ones.
    const hot = Math.min(0.4, 0.15 * cost);
    while (this.evaluations < until) {
      const heat = hot * 0.003 ** ((this.evaluations - begun) / Math.max(1, until - begun));
      const next = this.#changed(sites);
      const nextCost = this.#cost(next);
      if (nextCost < cost || this.#random() < Math.exp((cost - nextCost) / heat))
        [sites, cost] = [next, nextCost];
      if (cost < bestCost) [bestSites, bestCost] = [sites, cost];
    }
    return bestSites;
  }

  /** A neighbour of a layout: one item shifted, turned in place or moved anywhere, or two exchanged. */
  #changed(sites: readonly Site[]): Site[] {
    const { open } = this.#setting;
    const at = Math.floor(this.#random() * open.length);
    const [one, site] = [open[at], sites[at]];
    if (!one || !site) return [...sites];
    const kind = this.#random();
    if (kind < 0.12 && open.length > 1) return this.#exchanged(sites, at);
    if (kind < 0.24 && open.length > 1) return this.#together(sites, at);
    const next =
      kind < 0.6
        ? one.sites.at(site.turnDeg, site.column + this.#shift(), site.row + this.#shift())
        : kind < 0.75
          ? one.sites.at(this.#pick([0, 90, 180, 270] as const) ?? 0, site.column, site.row)
          : this.#pick(one.sites.list);
    return next ? sites.map((old, index) => (index === at ? next : old)) : [...sites];
  }

  /** An item and another shifted by the same step, as two that a wire joins want to be. */
  #together(sites: readonly Site[], at: number): Site[] {
    const [columns, rows] = [this.#shift(), this.#shift()];
    const other = Math.floor(this.#random() * sites.length);
    const one = this.#shifted(sites, at, columns, rows);
    return (one && (other === at ? one : this.#shifted(one, other, columns, rows))) ?? [...sites];
  }

  #shift(): number {
    return Math.floor(this.#random() * 7) - 3;
  }

  #exchanged(sites: readonly Site[], at: number): Site[] {
    const { open } = this.#setting;
    const other = Math.floor(this.#random() * open.length);
    const [mine, theirs] = [sites[at], sites[other]];
    if (!mine || !theirs || other === at) return [...sites];
    const swap = (from: number, to: Site, turn: Site) =>
      open[from]?.sites.at(turn.turnDeg, to.column, to.row);
    const [a, b] = [swap(at, theirs, mine), swap(other, mine, theirs)];
    if (!a || !b) return [...sites];
    return sites.map((old, index) => (index === at ? a : index === other ? b : old));
  }

  /** Takes what helps of the near changes of each item, then of its other sites, until nothing does. */
  #descend(start: Site[], until: number): void {
    let [sites, cost] = [start, this.#cost(start)];
    const tryAll = (candidates: Iterable<Site[]>): boolean => {
      let better = false;
      for (const next of candidates) {
        if (this.evaluations >= until) return false;
        const nextCost = this.#cost(next);
        if (nextCost >= cost - 1e-9) continue;
        [sites, cost, better] = [next, nextCost, true];
      }
      return better;
    };
    const each = (candidates: (at: number) => Iterable<Site[]>) =>
      sites.map((_, at) => tryAll(candidates(at))).some((better) => better);
    while (each((at) => this.#near(sites, at)) || each((at) => this.#anywhere(sites, at, until)));
  }

  /** An item a little to each side, turned in place, or a little to each side together with another. */
  *#near(sites: readonly Site[], at: number): Generator<Site[]> {
    for (const by of [1, 2, 5])
      for (const [x, y] of [
        [by, 0],
        [-by, 0],
        [0, by],
        [0, -by],
      ] as const) {
        const one = this.#shifted(sites, at, x, y);
        if (one) yield one;
        for (let other = at + 1; other < sites.length && by === 1; other += 1) {
          const both = one && this.#shifted(one, other, x, y);
          if (both) yield both;
        }
      }
    for (const turnDeg of [0, 90, 180, 270] as const) {
      const [site, open] = [sites[at], this.#setting.open[at]];
      const turned = site && open?.sites.at(turnDeg, site.column, site.row);
      if (turned && turned !== site) yield sites.map((old, index) => (index === at ? turned : old));
    }
  }

  /** Sites of an item spread over the board: all, or as many as its share of what may still be scored. */
  *#anywhere(sites: readonly Site[], at: number, until: number): Generator<Site[]> {
    const list = this.#setting.open[at]?.sites.list ?? [];
    const share = Math.max(1, Math.floor((until - this.evaluations) / (sites.length - at)));
    const stride = Math.max(1, Math.ceil(list.length / share));
    for (let index = at % stride; index < list.length; index += stride) {
      const next = list[index];
      if (next) yield sites.map((old, place) => (place === at ? next : old));
    }
  }

  #shifted(sites: readonly Site[], at: number, columns: number, rows: number): Site[] | null {
    const [site, open] = [sites[at], this.#setting.open[at]];
    const next = site && open?.sites.at(site.turnDeg, site.column + columns, site.row + rows);
    return next ? sites.map((old, index) => (index === at ? next : old)) : null;
  }
}

function areaOf(open: Open | undefined, area: (open: Open) => number): number {
  return open ? area(open) : 0;
}
