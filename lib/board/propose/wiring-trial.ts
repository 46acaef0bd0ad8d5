import type { Item } from '../layout/item.ts';
import { routeWires } from '../route/routing.ts';
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

/** How a layout can be wired: laid once by the router, without its search for fewer crossings. */
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
  /** By wire: metres. */
  readonly lengthsM: Readonly<Record<string, number>>;
}

/** Share of a made length that the way of a wire on trial may take: when it is laid for good it may go round another. */
const trialShare = 0.9;

/** One laying of all wires is enough to tell layouts from each other. */
const once = { dresses: false, pointsOfFew: 0, pointsOfMany: 0, passes: 1 } as const;

/** Lays the wires of a layout on trial. */
export function tryWiring(
  { shape, items, barriers, wires, house }: WiringTask,
  { box, placements }: Omit<InPlace, 'items'>,
): Trial {
  const inPlace = { box, items, placements };
  const task = {
    shape,
    barriers: [...barriersInPlace(inPlace), ...barriers],
    wires: wiresInPlace(inPlace, wires),
  };
  const { routes, crossings, faults } = routeWires(task, { ...house, ...once });
  const short = routes.flatMap(({ wire, lengthM }) => {
    const longestM = trialShare * (wires.find(({ id }) => id === wire)?.longestM ?? Infinity);
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
    lengthsM: Object.fromEntries(routes.map(({ wire, lengthM }) => [wire, lengthM])),
  };
}
