import { boardDefaults } from './defaults.ts';
import { type BoardFault, commonPractice, geometry, mmText } from './fault.ts';
import type { WireLayer } from './item.ts';
import type { BoardShape } from './outline.ts';
import { boxOf, type Point, pointToSegment } from './point.ts';
import {
  type Crossing,
  crossingCount,
  crossings,
  isPoint,
  type Route,
  type RouteEnd,
  type RouteWire,
  routeThrough,
  stretches,
  tightestBend,
} from './route.ts';
import { findRoute, type RouteCosts, type RouteTask } from './route-search.ts';
import { type Barrier, type TrackGrid, toBarrier, trackGrid } from './track-grid.ts';
import { type Laid, tracksFor } from './tracks.ts';

/** What is routed: a board, what stands on it, and its wires. */
export interface RoutingTask {
  readonly shape: BoardShape;
  /** Items that stand on the board, and heads of fixings. Raised items that wires pass under are left out. */
  readonly barriers: readonly Barrier[];
  readonly wires: readonly RouteWire[];
}

/** House figures and costs of routing. */
export interface RoutingRules extends RouteCosts {
  /** Distance of the lines that wires are laid on, metres. */
  readonly pitchM: number;
  /** Free room between a wire and a part, a fixing or an edge, metres. */
  readonly clearanceM: number;
  /** Power and signal side by side keep this apart where there is a way, metres. */
  readonly powerToSignalM: number;
  /** How often every wire is taken up and laid again. */
  readonly passes: number;
}

/** What is routed with where nothing else is said; costs are house judgement, no source. */
export const routingDefaults: RoutingRules = {
  pitchM: 0.00635,
  clearanceM: 0.0015,
  powerToSignalM: boardDefaults.powerToSignalM,
  bendM: 0.02,
  crossingM: 0.15,
  nearness: 2,
  passes: 2,
};

/** The routes in the order of the wires; crossings; and the wires that found no way. */
export interface Routing {
  readonly routes: readonly Route[];
  readonly crossings: readonly Crossing[];
  /** Crossings of the first complete laying, before any wire was laid again. */
  readonly firstCrossings: number;
  /** Path searches made. */
  readonly searches: number;
  readonly faults: readonly BoardFault[];
}

/** Thick and stiff first. */
const layerOrder: Readonly<Record<WireLayer, number>> = { power: 0, ground: 1, speaker: 2, signal: 3 };

/**
 * Lays wires on a board, straight along x and y, round parts and fixings: each by the cheapest path past those
 * that lie already (length, bends, crossings, nearness of power to signal), then each taken up and laid again
 * while that costs no more. Wires cross at right angles only, and leave the board straight over their side.
 */
export function routeWires(task: RoutingTask, given: Partial<RoutingRules> = {}): Routing {
  const rules = { ...routingDefaults, ...given };
  const laying = new Laying(task, rules);
  laying.layAll();
  const first = crossings(laying.routes).length;
  for (let pass = 0; pass < rules.passes; pass += 1) laying.layAgain();
  const found = crossings(laying.routes);
  return {
    routes: laying.routes,
    crossings: found,
    firstCrossings: first,
    searches: laying.searches,
    faults: laying.faults(),
  };
}

/** Points that a grid may have before its lines go further apart: the cost of a search grows with them. */
const mostPoints = 9000;

/** The pitch of the lines: the house's, or wider on a board so large that it would have too many points. */
function pitchFor({ outline }: BoardShape, pitchM: number): number {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  return Math.max(pitchM, Math.sqrt(((maxX - minX) * (maxY - minY)) / mostPoints));
}

function tightBend({ wire, route }: Laid): BoardFault[] {
  const needM = wire.bendRadiusM ?? 0;
  const tight = tightestBend(route, needM);
  if (!tight) return [];
  return [
    {
      rule: 'bend-too-tight',
      level: 'caution',
      of: [wire.id],
      message: `${wire.id} has room for a bend of ${mmText(tight.radiusM)} radius at ${mmText(tight.at.xM)}, ${mmText(tight.at.yM)}; ${mmText(needM)} is the least`,
      value: tight.radiusM,
      limit: needM,
      unit: 'm',
      remedy:
        'move the part that it runs to, turn its terminal, or take a thinner or finer-stranded conductor',
      ...commonPractice,
    },
  ];
}

class Laying {
  searches = 0;
  readonly #task: RoutingTask;
  readonly #rules: RoutingRules;
  readonly #grid: TrackGrid;
  readonly #order: readonly RouteWire[];
  #laid: readonly Laid[] = [];

  constructor(task: RoutingTask, rules: RoutingRules) {
    this.#task = task;
    this.#rules = rules;
    const terminals = task.wires.flatMap(({ from, to }) => [from, to].filter(isPoint));
    this.#grid = trackGrid(task.shape, task.barriers, terminals, pitchFor(task.shape, rules.pitchM));
    this.#order = task.wires.toSorted(
      (a, b) =>
        layerOrder[a.layer] - layerOrder[b.layer] ||
        b.diameterM - a.diameterM ||
        this.#spanM(a) - this.#spanM(b) ||
        (a.id < b.id ? -1 : 1),
    );
  }

  get routes(): Route[] {
    return this.#task.wires.flatMap(({ id }) => this.#laid.find(({ wire }) => wire.id === id)?.route ?? []);
  }

  layAll(): void {
    for (const wire of this.#order) {
      const route = this.#lay(wire, this.#laid);
      if (route) this.#laid = [...this.#laid, { wire, route }];
      else this.#makeWay(wire);
    }
  }

  /** Takes up each wire in turn and lays it by the cheapest path past all others; keeps what crosses less. */
  layAgain(): void {
    for (const wire of this.#order) {
      const others = this.#laid.filter((one) => one.wire !== wire);
      const old = this.#laid.find((one) => one.wire === wire);
      const route = this.#lay(wire, others);
      if (!route) continue;
      const routes = others.map((one) => one.route);
      if (!old || crossingCount(route, routes) <= crossingCount(old.route, routes))
        this.#laid = [...others, { wire, route }];
    }
  }

  faults(): BoardFault[] {
    return this.#task.wires.flatMap((wire) => {
      const laid = this.#laid.find((one) => one.wire === wire);
      return laid ? tightBend(laid) : [this.#blocked(wire)];
    });
  }

  /** Takes up the wires that stand in the way, lays the blocked one, then those; as it was where that fails. */
  #makeWay(wire: RouteWire): void {
    const direct = this.#lay(wire, []);
    if (!direct) return;
    const inWay = this.#laid.filter((one) => touches(direct, one, wire.diameterM));
    let laid: readonly Laid[] = this.#laid.filter((one) => !inWay.includes(one));
    for (const next of [wire, ...inWay.map((one) => one.wire)]) {
      const route = this.#lay(next, laid);
      if (!route) return;
      laid = [...laid, { wire: next, route }];
    }
    this.#laid = laid;
  }

  #lay(wire: RouteWire, others: readonly Laid[]): Route | null {
    const search = this.#search(wire, others, Infinity);
    // Where no way has room for its bends, a tight one is laid, and told.
    const tighter = [1, 0.5, 0].map((share) => share * search.bendRadiusM);
    for (const bendRadiusM of new Set(tighter)) {
      const points = findRoute({ ...search, bendRadiusM });
      if (points) return routeThrough(wire, points);
    }
    return null;
  }

  #search(wire: RouteWire, others: readonly Laid[], throughM: number): RouteTask {
    this.searches += 1;
    const { clearanceM, powerToSignalM } = this.#rules;
    // With half a step of room at each point, nothing can stand unseen between two points.
    const needM = Math.max(wire.diameterM / 2 + clearanceM, this.#grid.stepM / 2) - 1e-9;
    const tracks = tracksFor(this.#grid, wire, others, powerToSignalM);
    const bendRadiusM = throughM === Infinity ? (wire.bendRadiusM ?? 0) : 0;
    return { grid: this.#grid, wire, tracks, costs: this.#rules, needM, bendRadiusM, throughM };
  }

  #spanM({ from, to }: RouteWire): number {
    return isPoint(from) && isPoint(to) ? Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM) : 0;
  }

  /** What stands on the way that goes through the least of parts, fixings and other wires. */
  #blocked(wire: RouteWire): BoardFault {
    const points = findRoute(this.#search(wire, this.#laid, 1000));
    const route = points && routeThrough(wire, points);
    const inWay = route ? this.#standsOn(route, wire) : [];
    const what = inWay.length > 0 ? inWay.join(', ') : 'the outline of the board';
    return {
      rule: 'wire-without-way',
      level: 'stop',
      of: [wire.id, ...inWay],
      message: `${wire.id}: no way is left for ${mmText(wire.diameterM)} of wire; in the way: ${what}`,
      remedy: 'move what stands in the way, raise it on spacers, or bridge it',
      ...geometry,
    };
  }

  #standsOn(route: Route, wire: RouteWire): string[] {
    const reachM = wire.diameterM / 2 + this.#rules.clearanceM;
    const inner = samples(route, this.#rules.pitchM / 2).filter(
      (p) => !isNear(p, wire.from, reachM * 2) && !isNear(p, wire.to, reachM * 2),
    );
    const barriers = this.#task.barriers.filter((one) => inner.some((p) => toBarrier(p, one) < reachM));
    const wires = this.#laid.filter((one) => touches(route, one, wire.diameterM));
    return [...new Set([...barriers.map(({ id }) => id), ...wires.map((one) => one.wire.id)])];
  }
}

function isNear(p: Point, end: RouteEnd, reachM: number): boolean {
  return isPoint(end) && Math.hypot(p.xM - end.xM, p.yM - end.yM) < reachM;
}

function samples({ points }: Route, stepM: number): Point[] {
  return points.slice(1).flatMap((b, at) => {
    const a = points[at] ?? b;
    const pieces = Math.max(1, Math.ceil(Math.hypot(b.xM - a.xM, b.yM - a.yM) / stepM));
    return Array.from({ length: pieces + 1 }, (_, k) => ({
      xM: a.xM + (k / pieces) * (b.xM - a.xM),
      yM: a.yM + (k / pieces) * (b.yM - a.yM),
    }));
  });
}

/** True where a route runs in the track of a laid wire: side by side nearer than their radii, or through a bend of it. */
function touches(route: Route, { wire, route: other }: Laid, diameterM: number): boolean {
  const spacingM = (diameterM + wire.diameterM) / 2;
  const bends = other.points;
  return stretches(route).some((one) => {
    const ends = one.level
      ? ([
          { xM: one.from, yM: one.at },
          { xM: one.to, yM: one.at },
        ] as const)
      : ([
          { xM: one.at, yM: one.from },
          { xM: one.at, yM: one.to },
        ] as const);
    if (bends.some((p) => pointToSegment(p, ...ends) < spacingM - 1e-9)) return true;
    return stretches(other).some(
      (two) =>
        one.level === two.level &&
        Math.abs(one.at - two.at) < spacingM - 1e-9 &&
        one.from < two.to &&
        two.from < one.to,
    );
  });
}
