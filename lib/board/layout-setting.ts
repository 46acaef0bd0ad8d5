import type { Item, Placement } from './item.ts';
import { groundsOf, raisedSites, type Site, type Sites, sitesOf } from './lattice.ts';
import { boardCentroid } from './measure.ts';
import { type PlacedItem, place } from './placed.ts';
import type { LayoutBoard, LayoutRules } from './placement.ts';
import { type Link, type Score, type ScoreBoard, scoreLayout } from './score.ts';

/** What is to be laid out. */
export interface LayoutTask {
  readonly board: LayoutBoard;
  readonly items: readonly Item[];
  /** Placements that stay as they are. */
  readonly given: readonly Placement[];
  /** Height of the underside of open items over the board, metres; left out: 0. */
  readonly heightsM?: Readonly<Record<string, number>>;
  /** Heights that the search may raise an open item to, metres; it raises as many as it is told. Left out: none. */
  readonly raisableM?: Readonly<Record<string, readonly number[]>>;
  /** Whether the stock gives the rails of raised items; left out: always. */
  readonly railsInStock?: (raised: readonly Placement[]) => boolean;
  readonly links: readonly Link[];
}

/** A layout that keeps every hard rule. */
export interface Proposal {
  readonly placements: readonly Placement[];
  readonly score: Score;
}

/** An item to find a place for. */
export interface Open {
  readonly item: Item;
  /** Where it stands unraised. */
  readonly sites: Sites;
  /** The same and, after it, where it stands raised, each height for itself. */
  readonly levels: readonly Sites[];
  readonly cache: Map<Site, PlacedItem>;
}

/** What a search works on. */
export interface Setting {
  readonly board: ScoreBoard;
  readonly fixed: readonly PlacedItem[];
  readonly open: readonly Open[];
  readonly links: readonly Link[];
  readonly rules: LayoutRules;
  /** What the given placements break by themselves: no search can mend it. */
  readonly brokenAlready: number;
  readonly railsInStock: (raised: readonly Placement[]) => boolean;
}

/** What a search works on: sites of every open item, and what stands already. */
export function settingOf(task: LayoutTask, rules: LayoutRules, stepM: number): Setting {
  const grounds = groundsOf(task.board.shape);
  const givenItems = new Set(task.given.map(({ item }) => item));
  const fixed = task.given.flatMap((at) => {
    const item = task.items.find(({ id }) => id === at.item);
    return item ? [place(item, at, rules.partGapM)] : [];
  });
  const open = task.items
    .filter(({ id }) => !givenItems.has(id))
    .map((item) => {
      const sites = sitesOf(grounds, item, task.heightsM?.[item.id] ?? 0, stepM);
      // The rails of a part that the search raises need the board below them: it stands where it would unraised.
      const raised = (task.raisableM?.[item.id] ?? []).map((heightM) => raisedSites(sites, heightM));
      return { item, sites, levels: [sites, ...raised], cache: new Map() };
    });
  const board = { ...task.board, box: grounds.box, centroid: boardCentroid(task.board.shape) };
  const brokenAlready = scoreLayout(board, fixed, [], rules).broken;
  const { links, railsInStock = () => true } = task;
  return { board, fixed, open, links, rules, brokenAlready, railsInStock };
}

/** True where the search has raised an item. */
export function isRaised({ sites }: Open, { heightM }: Site): boolean {
  return heightM !== sites.heightM;
}

/** The items that the search has raised, where they stand. */
export function raisedOf({ open }: Setting, sites: readonly Site[]): Placement[] {
  return open.flatMap((one, at) => {
    const site = sites[at];
    return site && isRaised(one, site) ? [placementAt(one, site)] : [];
  });
}

function placementAt({ item }: Open, { xM, yM, turnDeg, heightM }: Site): Placement {
  return { item: item.id, xM, yM, turnDeg, heightM };
}

function placedAt(open: Open, site: Site, rules: LayoutRules): PlacedItem {
  const known = open.cache.get(site);
  if (known) return known;
  const placed = place(open.item, placementAt(open, site), rules.partGapM);
  open.cache.set(site, placed);
  return placed;
}

/** Everything that stands when the open items stand on these sites; one without a site is left out. */
export function placedAll(
  { fixed, open, rules }: Setting,
  sites: readonly (Site | undefined)[],
): PlacedItem[] {
  const placed = open.flatMap((one, at) => {
    const site = sites[at];
    return site ? [placedAt(one, site, rules)] : [];
  });
  return [...fixed, ...placed];
}

/** The layout that some sites make. */
export function proposal(setting: Setting, sites: readonly Site[]): Proposal {
  const { total, parts } = scoreLayout(
    setting.board,
    placedAll(setting, sites),
    setting.links,
    setting.rules,
  );
  const placements = setting.open.flatMap((open, at) => {
    const site = sites[at];
    return site ? [placementAt(open, site)] : [];
  });
  return { placements, score: { total, parts } };
}
