import { computeAnew, type Keep } from '../../model/keep.ts';
import { remembered } from '../../model/once-for.ts';
import { Layer } from './laying.ts';
import { exchanges, type PortAssignment, type PortCosts, searchPorts } from './port-search.ts';
import { crossingCount, isPoint, type Route, type RouteEnd, type RouteWire } from './route.ts';
import {
  onDraft,
  type Routing,
  type RoutingGiven,
  type RoutingRules,
  type RoutingTask,
  routeWires,
  routingDefaults,
} from './routing.ts';
import { trackGrid } from './track-grid.ts';
import type { Laid } from './tracks.ts';

/** A wire whose ports are open: every way in which it may be connected. */
export interface OpenWire {
  readonly id: string;
  /** Ports that it takes, and where it then begins and ends. */
  readonly options: readonly {
    readonly ports: readonly string[];
    readonly from: RouteEnd;
    readonly to: RouteEnd;
  }[];
  /** The option that it has for now. */
  readonly first: number;
}

/** The ports that were chosen. */
export interface PortChoice {
  /** The option of each open wire, by its id. */
  readonly options: Readonly<Record<string, number>>;
  /** Crossings on the whole board as routed, and with the first ports. */
  readonly crossings: number;
  readonly firstCrossings: number;
}

/**
 * Chooses the ports of wires that may take any of several like ones, so that the board has the fewest crossings,
 * counted on laid wires as the routing counts them. All other wires are laid first; then each open wire on top of
 * them at each of its ports, and beside each other open wire. Of what that search finds and the first ports, the
 * one that the whole board is routed with fewer blocked wires, then fewer crossings, then shorter, is taken, and wires
 * that still cross are tried at each other's ports.
 */
export function choosePorts(
  task: RoutingTask,
  open: readonly OpenWire[],
  house: RoutingGiven,
  keep: Keep = computeAnew,
): PortChoice {
  const given = { ...house, ...onDraft };
  const first = open.map((one) => one.first);
  const found = searchPorts(
    open.map(({ options }) => options.map(({ ports }) => ports)),
    first,
    portCosts(task, open, { ...routingDefaults, ...given }),
  );
  const asFirst = routeWires(task, given, keep);
  const same = found.every((option, at) => option === first[at]);
  const asFound = same ? asFirst : routeWires({ ...task, wires: wiresWith(task, open, found) }, given, keep);
  const better = routedCost(asFound, task) < routedCost(asFirst, task) - 1e-9;
  const begun = better ? { assignment: found, routing: asFound } : { assignment: first, routing: asFirst };
  const { assignment, routing } = exchanged(task, open, given, begun);
  return {
    options: Object.fromEntries(open.map(({ id }, at) => [id, assignment[at] ?? 0])),
    crossings: routing.crossings.length,
    firstCrossings: asFirst.crossings.length,
  };
}

/** Ports with the board as it is routed with them. */
interface RoutedPorts {
  readonly assignment: PortAssignment;
  readonly routing: Routing;
}

/** How often two wires are laid anew at each other's ports, at most. */
const mostExchanges = 24;

/**
 * Ports with those of two wires exchanged, such as cross each other first, for as long as the board is better for it:
 * the two are laid anew past all others, which lie as they did.
 */
function exchanged(
  task: RoutingTask,
  open: readonly OpenWire[],
  given: RoutingGiven,
  begun: RoutedPorts,
): RoutedPorts {
  const options = open.map((one) => one.options.map(({ ports }) => ports));
  let [best, tried] = [begun, 0];
  for (let better = true; better; ) {
    better = false;
    for (const assignment of exchanges(options, best.assignment)) {
      const apart = open.flatMap(({ id }, at) => (assignment[at] === best.assignment[at] ? [] : [id]));
      const [one, other] = best.routing.routes.filter((route) => apart.includes(route.wire));
      if (!one || !other || crossingCount(one, [other]) === 0) continue;
      if (tried >= mostExchanges) return best;
      tried += 1;
      const before = best.routing.routes.filter((route) => !apart.includes(route.wire));
      const next = { ...task, wires: wiresWith(task, open, assignment), before };
      const routing = routeWires(next, { ...given, searchesEach: 0, beginsOnTracks: false });
      if (routedCost(routing, task) >= routedCost(best.routing, task) - 1e-9) continue;
      [best, better] = [{ assignment, routing }, true];
      break;
    }
  }
  return best;
}

/** The wires of a board with the open ones at some of their ports. */
export function wiresWith(
  { wires }: RoutingTask,
  open: readonly OpenWire[],
  assignment: PortAssignment,
): RouteWire[] {
  return wires.map((wire) => {
    const at = open.findIndex(({ id }) => id === wire.id);
    const option = open[at]?.options[assignment[at] ?? 0];
    return option ? { ...wire, from: option.from, to: option.to } : wire;
  });
}

/** No board has so many crossings, nor so many metres of wire, that they outweigh what stands before them. */
const blockedWeight = 1e9;
const crossingWeight = 1e4;

function routedCost({ routes, crossings }: Routing, { wires }: RoutingTask): number {
  const lengthM = routes.reduce((sum, route) => sum + route.lengthM, 0);
  return (wires.length - routes.length) * blockedWeight + crossings.length * crossingWeight + lengthM;
}

/** What each open wire costs on top of all others: found once and kept; and how often two open ones cross as they lie so. */
function portCosts(task: RoutingTask, open: readonly OpenWire[], rules: RoutingRules): PortCosts {
  const { layer, fixed } = boardWithout(task, open, rules);
  const fixedRoutes = fixed.map(({ route }) => route);
  const wireAt = (at: number, option: number): RouteWire | undefined => {
    const own = open[at]?.options[option];
    const wire = task.wires.find(({ id }) => id === open[at]?.id);
    return wire && own && { ...wire, from: own.from, to: own.to };
  };
  const route = kept((at: number, option: number): Route | null => {
    const wire = wireAt(at, option);
    return wire ? layer.lay(wire, fixed, rules.crossingM) : null;
  });
  const alone = kept((at: number, option: number): number => {
    const own = route(at, option);
    if (!own) return blockedWeight;
    return crossingCount(own, fixedRoutes) * crossingWeight + own.lengthM;
  });
  const pair = (at: number, option: number, other: number, otherOption: number): number => {
    const [one, two] = [route(at, option), route(other, otherOption)];
    return one && two ? crossingCount(one, [two]) * crossingWeight : 0;
  };
  return { alone, pair };
}

/** The board with every wire laid that has no open port, and a grid with lines through every port. */
function boardWithout(
  { shape, barriers, wires }: RoutingTask,
  open: readonly OpenWire[],
  rules: RoutingRules,
): { readonly layer: Layer; readonly fixed: readonly Laid[] } {
  const closed = wires.filter(({ id }) => !open.some((one) => one.id === id));
  const ends = [...closed, ...open.flatMap(({ options }) => options)].flatMap(({ from, to }) => [from, to]);
  const layer = new Layer(trackGrid(shape, barriers, ends.filter(isPoint), rules.pitchM), rules);
  const { routes } = routeWires({ shape, barriers, wires: closed }, rules);
  const fixed = routes.flatMap((route): Laid[] => {
    const wire = closed.find(({ id }) => id === route.wire);
    return wire ? [{ wire, route }] : [];
  });
  return { layer, fixed };
}

/** A function that works each answer out once. */
function kept<A extends readonly number[], T>(work: (...given: A) => T): (...given: A) => T {
  const answers = new Map<string, T>();
  return (...given: A): T => remembered(answers, given.join(' '), () => work(...given));
}
