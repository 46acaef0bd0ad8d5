import { boardCentroid } from '../area-and-mass.ts';
import {
  asDrilled,
  type Drilling,
  type HoleGround,
  type HolesShort,
  holeGround,
  holesShort,
} from '../cut/holes-short.ts';
import { type BoardLines, boardLinesOf } from './board-lines.ts';
import type { LayoutBoard } from './check-placements.ts';
import { endsAway } from './facing.ts';
import { type Item, type Placement, placeM } from './item.ts';
import { raisedSites, type Site, type Sites, sitesOf } from './lattice.ts';
import { type PlacedItem, place } from './placed.ts';
import { joinedTerminals, type Link } from './score/links.ts';
import {
  type AloneCost,
  aloneCost,
  type JudgedScore,
  type Score,
  type ScoreBoard,
  type ScoreRules,
} from './score/score.ts';
import { ScoreLedger, scoreLayout } from './score/score-ledger.ts';
import { surroundingsOf } from './score/surroundings.ts';
import { type Wall, type WallsShort, wallsShort } from './walls.ts';

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
  /** What mounting holes keep away from; left out: nothing. */
  readonly drilling?: Drilling;
  /** What stands before the sides of parts once the board is in its space; left out: nothing. */
  readonly walls?: readonly Wall[];
}

/** A layout that keeps every hard rule. */
export interface Proposal {
  readonly placements: readonly Placement[];
  readonly score: Score;
  /** How it could be wired on trial, which goes before its score; left out where it was not tried. */
  readonly wired?: WiredCounts;
}

/** What keeps a layout from being wired, and what is doubtful in it. */
export interface WiredCounts {
  readonly wiresWithoutWay: number;
  readonly wiresTooShort: number;
  readonly cautions: number;
}

/** An item to find a place for. */
export interface Open {
  readonly item: Item;
  /** Where it stands unraised. */
  readonly sites: Sites;
  /** The same and, after it, where it stands raised, each height for itself. */
  readonly levels: readonly Sites[];
  /** Holes as they are drilled; null where nothing is asked of them. */
  readonly drilled: { readonly item: Item; readonly ground: HoleGround } | null;
  readonly cache: Map<Site, Stood>;
}

/** An item on a site; what it costs there by itself is worked out once that is asked for. */
interface Stood {
  readonly placed: PlacedItem;
  faults: FaultsAlone | null;
}

/** What an item costs on a site, and what the rules fault of it there, whatever stands beside it. */
interface FaultsAlone {
  readonly alone: AloneCost;
  readonly holes: HolesShort;
  readonly endsAway: number;
  readonly walls: WallsShort;
}

/** What a search works on. */
export interface Setting {
  readonly boardLines: BoardLines;
  readonly board: ScoreBoard;
  readonly fixed: readonly PlacedItem[];
  readonly open: readonly Open[];
  readonly links: readonly Link[];
  readonly rules: ScoreRules;
  readonly walls: readonly Wall[];
  /** What the given placements break by themselves: no search can mend it. */
  readonly brokenAlready: number;
  /** Rooms that they take from each other: no search can mend that either. */
  readonly shortAlready: number;
  readonly railsInStock: (raised: readonly Placement[]) => boolean;
}

/** What a search works on: sites of every open item, and what stands already. */
export function settingOf(task: LayoutTask, rules: ScoreRules, stepM: number): Setting {
  const boardLines = boardLinesOf(task.board.shape, task.board.heads);
  const ground = task.drilling ? holeGround(task.board.shape, task.drilling) : null;
  const givenItems = new Set(task.given.map(({ item }) => item));
  const fixed = task.given.flatMap((at) => {
    const item = task.items.find(({ id }) => id === at.item);
    return item ? [place(item, at, rules.partGapM)] : [];
  });
  const open = task.items
    .filter(({ id }) => !givenItems.has(id))
    .map((item) => {
      const sites = sitesOf(boardLines, item, task.heightsM?.[item.id] ?? 0, stepM);
      // The rails of a part that the search raises need the board below them: it stands where it would unraised.
      const raised = (task.raisableM?.[item.id] ?? []).map((heightM) => raisedSites(sites, heightM));
      const drilled = ground && { item: asDrilled(item, ground.drilling), ground };
      return { item, sites, levels: [sites, ...raised], drilled, cache: new Map() };
    });
  const around = surroundingsOf(boardLines, task.board.heads ?? []);
  const centroid = boardCentroid(task.board.shape);
  const board = { ...task.board, around, centroid, joined: joinedTerminals(task.links) };
  const { broken: brokenAlready, roomsShort: shortAlready } = scoreLayout(board, fixed, [], rules);
  const { links, walls = [], railsInStock = () => true } = task;
  return { boardLines, board, fixed, open, links, rules, walls, brokenAlready, shortAlready, railsInStock };
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

export function placementAt({ item }: Open, { xM, yM, turnDeg, heightM }: Site): Placement {
  return { item: item.id, xM, yM, turnDeg, heightM };
}

/** The same as it is proposed: as it would be read from a job that says so. */
export function proposedAt(open: Open, site: Site): Placement {
  const { xM, yM, ...at } = placementAt(open, site);
  return { ...at, xM: placeM(xM), yM: placeM(yM) };
}

function stoodAt(open: Open, site: Site, { rules }: Setting): Stood {
  const known = open.cache.get(site);
  if (known) return known;
  const stood = { placed: place(open.item, placementAt(open, site), rules.partGapM), faults: null };
  open.cache.set(site, stood);
  return stood;
}

function faultsAt(open: Open, site: Site, stood: Stood, { board, rules, walls }: Setting): FaultsAlone {
  stood.faults ??= {
    alone: aloneCost(board, stood.placed, rules.house),
    holes: open.drilled
      ? holesShort(open.drilled.item, placementAt(open, site), open.drilled.ground)
      : noHolesShort,
    endsAway: endsAway(board, stood.placed).length,
    walls: wallsShort(stood.placed, walls),
  };
  return stood.faults;
}

const noHolesShort: HolesShort = { count: 0, shortM: 0 };

/** Everything that stands when the open items stand on these sites. */
export function placedAll(setting: Setting, sites: readonly Site[]): PlacedItem[] {
  const placed = setting.open.flatMap((one, at) => {
    const site = sites[at];
    return site ? [stoodAt(one, site, setting).placed] : [];
  });
  return [...setting.fixed, ...placed];
}

/** What a search goes by: what a layout costs, how much it breaks, and how often a rule would fault it. */
export interface Judged {
  readonly cost: number;
  /** Overlaps and what is covered, metres; what the given placements break by themselves left out. */
  readonly broken: number;
  /** What the rules fault and another layout might not have: holes, rooms, walls, ends that face away, wires too short. */
  readonly cautions: number;
  readonly score: JudgedScore;
}

/** What it costs for each metre that holes lack to edges and corners, and rooms to walls, where they have to lack some. */
const holeWeight = 10;

/** What a metre of height costs: it decides between layouts that are else alike, and shows in no score. */
const lowWeight = 1e-4;

/** Judges layouts one after another, each by what differs from the one that was taken last. */
export class LayoutJudge {
  readonly #setting: Setting;
  readonly #ledger: ScoreLedger;
  #taken: Judging;
  #last: Judging;

  constructor(setting: Setting) {
    this.#setting = setting;
    this.#ledger = new ScoreLedger(setting.board, setting.links, setting.rules);
    this.#taken = { sites: [], stood: [], placed: setting.fixed };
    this.#last = this.#taken;
  }

  /** True where a layout breaks more than the given placements do by themselves: far less to tell than to judge it. */
  isBroken(sites: readonly (Site | undefined)[]): boolean {
    return this.#ledger.brokenM(this.#stand(sites).placed) - this.#setting.brokenAlready > 1e-9;
  }

  #stand(sites: readonly (Site | undefined)[]): Judging {
    if (this.#last.sites === sites) return this.#last;
    const { fixed, open } = this.#setting;
    const stood = this.#taken.stood.slice();
    const placed = this.#taken.placed.slice();
    for (let at = 0; at < open.length; at += 1) {
      const site = sites[at];
      const one = open[at];
      if (!one || (site === this.#taken.sites[at] && at < stood.length)) continue;
      stood[at] = site && stoodAt(one, site, this.#setting);
      placed[fixed.length + at] = stood[at]?.placed;
    }
    this.#last = { sites, stood, placed };
    return this.#last;
  }

  /** Judges a layout; an open item without a site is left out. */
  judge(sites: readonly (Site | undefined)[]): Judged {
    const { fixed, open, brokenAlready, shortAlready } = this.#setting;
    const { stood, placed } = this.#stand(sites);
    let [cost, cautions] = [0, -shortAlready];
    for (let at = 0; at < stood.length; at += 1) {
      const now = stood[at];
      const site = sites[at];
      const one = open[at];
      if (!now || !site || !one) continue;
      const { holes, walls, endsAway: away, alone } = faultsAt(one, site, now, this.#setting);
      // Of two layouts that are else alike the lower is built: too little to stand before anything in the score.
      cost += holeWeight * (holes.shortM + walls.shortM) + lowWeight * site.heightM;
      cautions += holes.count + away + walls.count + alone.closed;
    }
    const score = this.#ledger.judge(placed, (at) => stood[at - fixed.length]?.faults?.alone);
    return {
      cost: cost + score.total,
      broken: score.broken - brokenAlready,
      cautions: cautions + score.roomsShort + score.wiresShort,
      score,
    };
  }

  /** Takes the layout that was judged last as the one that the next are held against. */
  take(): void {
    this.#taken = this.#last;
    this.#ledger.take();
  }
}

/** A layout as it was judged. */
interface Judging {
  readonly sites: readonly (Site | undefined)[];
  readonly stood: readonly (Stood | undefined)[];
  readonly placed: readonly (PlacedItem | undefined)[];
}

/** Judges one layout; an open item without a site is left out. */
export function judgeLayout(setting: Setting, sites: readonly (Site | undefined)[]): Judged {
  return new LayoutJudge(setting).judge(sites);
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
    return site ? [proposedAt(open, site)] : [];
  });
  return { placements, score: { total, parts } };
}
