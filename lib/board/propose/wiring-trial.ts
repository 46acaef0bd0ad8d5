import { computeAnew, type Keep } from '../../model/keep.ts';
import type { Item } from '../layout/item.ts';
import { isLedRound } from '../route/led-round.ts';
import type { Route } from '../route/route.ts';
import { onDraft, type RoutingRules, routeWires } from '../route/routing.ts';
import type { RoutingHouse } from '../route/routing-house.ts';
import type { Barrier } from '../route/track-grid.ts';
import type { BoardShape } from '../shape/outline.ts';
import { barriersInPlace, type InPlace, type WireOnBoard, wiresInPlace } from './wires-in-place.ts';

/** What is wired on a board, wherever its parts stand. */
export interface WiringTask {
  readonly shape: BoardShape;
  /** The parts that wires go round and end at. */
  readonly items: readonly Item[];
  /** What stays where it is: ribs, heads of fixings. */
  readonly barriers: readonly Barrier[];
  readonly wires: readonly WireOnBoard[];
  readonly house: RoutingHouse;
}

/** How a layout can be wired, as the router lays it. */
export interface Trial {
  /** Wires that found no way, with what is in the way of each. */
  readonly noWay: readonly (readonly string[])[];
  /** Wires that are made to a length and do not reach, and by how much in all, metres. */
  readonly short: readonly string[];
  readonly shortM: number;
  /** Wires with a bend that is tighter than they take. */
  readonly tight: readonly string[];
  readonly crossings: number;
  readonly bends: number;
  /** Wires that are led far round, or round something. */
  readonly far: number;
  /** By wire: metres. */
  readonly lengthsM: Readonly<Record<string, number>>;
  readonly routes: readonly Route[];
}

/** Share of a made length that the way of a wire laid once may take: when it is laid for good it may go round another. */
const shareOnce = 0.9;

/** One laying of all wires tells most layouts from each other. */
const once = {
  searchesEach: 0,
  beginsOnTracks: false,
  pointsOfFew: 0,
  pointsOfMany: 0,
  passes: 1,
} as const;

/** Between the best, what the wires of each come to as they are laid for good decides. */
const forGood = { ...onDraft, pointsOfFew: 60_000, pointsOfMany: 0 } as const;

/** How wires are laid on trial: once each, or dressed a little, which takes several times as long. */
export type HowLaid = 'once' | 'for-good';

const rulesFor: Readonly<Record<HowLaid, Partial<RoutingRules>>> = { once, 'for-good': forGood };

/**
 * Lays the wires of a layout on trial. `before`: the ways of another layout, little different, of which those that still
 * can be are begun with.
 */
export function tryWiring(
  { shape, items, barriers, wires, house }: WiringTask,
  { box, placements }: Omit<InPlace, 'items'>,
  how: HowLaid,
  before: readonly Route[],
  keep: Keep = computeAnew,
): Trial {
  const inPlace = { box, items, placements };
  const task = {
    shape,
    barriers: [...barriersInPlace(inPlace), ...barriers],
    wires: wiresInPlace(inPlace, wires),
    before,
  };
  const { routes, crossings, faults } = routeWires(task, { ...house, ...rulesFor[how] }, keep);
  const short = routes.flatMap(({ wire, lengthM }) => {
    const longestM =
      (how === 'once' ? shareOnce : 1) * (wires.find(({ id }) => id === wire)?.longestM ?? Infinity);
    return lengthM > longestM ? [{ wire, byM: lengthM - longestM }] : [];
  });
  const of = (rule: string) => faults.filter((fault) => fault.rule === rule).map((fault) => fault.of);
  return {
    noWay: of('wire-without-way'),
    short: short.map(({ wire }) => wire),
    shortM: short.reduce((sum, { byM }) => sum + byM, 0),
    tight: of('bend-too-tight').flatMap(([wire]) => wire ?? []),
    crossings: crossings.length,
    bends: routes.reduce((sum, { bends }) => sum + bends, 0),
    far: routes.filter(isLedRound).length,
    routes,
    lengthsM: Object.fromEntries(routes.map(({ wire, lengthM }) => [wire, lengthM])),
  };
}
