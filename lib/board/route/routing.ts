import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { boxOf } from '../shape/point.ts';
import { blockedWire, touches } from './blocked-wire.ts';
import { fewerCrossings, fewWires } from './fewer-crossings.ts';
import { crossingsAmong, Layer, type LayingRules, layingOrder } from './laying.ts';
import { anyWayM } from './relaying.ts';
import { type Crossing, crossings, isPoint, type Route, type RouteWire, tightestBend } from './route.ts';
import { type Barrier, type TrackGrid, trackGrid } from './track-grid.ts';
import type { Laid } from './tracks.ts';
import { withinReach } from './within-reach.ts';

/** What is routed: a board, what stands on it, and its wires. */
export interface RoutingTask {
  readonly shape: BoardShape;
  /** Items that stand on the board, and heads of fixings. Raised items that wires pass under are left out. */
  readonly barriers: readonly Barrier[];
  readonly wires: readonly RouteWire[];
}

/** House figures and costs of routing. */
export interface RoutingRules extends LayingRules {
  /** Distance of the lines that wires are laid on, metres. */
  readonly pitchM: number;
  /** How often every wire is taken up and laid again. */
  readonly passes: number;
  /**
   * How long fewer crossings are looked for, in points of the grid that path searches may visit for each wire: on a
   * board of few wires (up to eight), and of many. It is looked for no longer once nothing crosses.
   */
  readonly pointsOfFew: number;
  readonly pointsOfMany: number;
}

/** What whoever routes must say: the house's figures. */
export type RoutingHouse = Pick<RoutingRules, 'powerToSignalM'>;
/** The house's figures, and what is to be otherwise than by `routingDefaults`. */
export type RoutingGiven = RoutingHouse & Partial<RoutingRules>;

/** What is routed with where nothing else is said; costs are house judgement, no source. */
export const routingDefaults: Omit<RoutingRules, keyof RoutingHouse> = {
  pitchM: 0.00635,
  clearanceM: 0.0015,
  bendM: 0.02,
  crossingM: 0.15,
  nearness: 2,
  passes: 2,
  pointsOfFew: 1_000_000,
  pointsOfMany: 216_000,
};

/** The routes in the order of the wires; crossings; and the wires that found no way. */
export interface Routing {
  readonly routes: readonly Route[];
  readonly crossings: readonly Crossing[];
  /** Crossings of the first laying that had as many wires, before the search for fewer. */
  readonly firstCrossings: number;
  /** True where no order of laying the wires, each where it crosses least, has fewer crossings. */
  readonly everyOrder: boolean;
  /** Path searches made. */
  readonly searches: number;
  readonly faults: readonly BoardRemark[];
}

/**
 * Lays wires on a board, straight along x and y, round parts and fixings: each by the cheapest path past those
 * that lie already (length, bends, crossings, nearness of power to signal). Then other orders and ways are tried
 * for as long as the path searches last, and those with the fewest crossings kept; of up to eight wires every order is
 * looked at or ruled out. Last, each wire is taken up and laid again while that costs no more, and one that is made to a
 * length and does not reach goes the shortest way. Wires cross at right angles only, and leave the board straight over their side.
 */
export function routeWires(task: RoutingTask, given: RoutingGiven): Routing {
  const rules: RoutingRules = { ...routingDefaults, ...given };
  const { shape, barriers, wires } = task;
  const terminals = wires.flatMap(({ from, to }) => [from, to].filter(isPoint));
  const layer = new Layer(trackGrid(shape, barriers, terminals, pitchFor(shape, rules.pitchM)), rules, wires);
  const order = layingOrder(wires);
  const first = layAll(layer, order);
  const most = mostSearches(layer.grid, wires.length, rules);
  const fewer = fewerCrossings(layer, order, layer.layAgain(order, first), most);
  let { laid } = fewer;
  for (let pass = 1; pass < rules.passes; pass += 1) laid = layer.layAgain(order, laid, anyWayM);
  laid = withinReach(layer, laid);
  const routes = wires.flatMap(({ id }) => laid.find(({ wire }) => wire.id === id)?.route ?? []);
  return {
    routes,
    crossings: crossings(routes),
    firstCrossings: first.length < fewer.laid.length ? fewer.first : crossingsAmong(first),
    everyOrder: fewer.everyOrder,
    searches: layer.searches,
    faults: wires.flatMap((wire) => {
      const own = laid.find((one) => one.wire === wire);
      return own ? tightBend(own) : [blockedWire(layer, wire, laid, barriers)];
    }),
  };
}

/** Path searches for each wire on the smallest of boards. */
const mostEach = 400;

/** Path searches that fewer crossings may take. */
function mostSearches(
  { xs, ys }: TrackGrid,
  wires: number,
  { pointsOfFew, pointsOfMany }: RoutingRules,
): number {
  const each = (wires > fewWires ? pointsOfMany : pointsOfFew) / (xs.length * ys.length);
  return Math.ceil(wires * Math.min(each, mostEach));
}

/** Points that a grid may have before its lines go further apart: the cost of a search grows with them. */
const mostPoints = 9000;

/** The pitch of the lines: the house's, or wider on a board so large that it would have too many points. */
function pitchFor({ outline }: BoardShape, pitchM: number): number {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  return Math.max(pitchM, Math.sqrt(((maxX - minX) * (maxY - minY)) / mostPoints));
}

/** Lays every wire it can; one that is shut in takes up what stands in its way first. */
function layAll(layer: Layer, order: readonly RouteWire[]): readonly Laid[] {
  let laid: readonly Laid[] = [];
  for (const wire of order) {
    const route = layer.lay(wire, laid);
    laid = route ? [...laid, { wire, route }] : wayMade(layer, wire, laid);
  }
  return laid;
}

/** Takes up the wires that stand in the way, lays the blocked one, then those; as it was where that fails. */
function wayMade(layer: Layer, wire: RouteWire, laid: readonly Laid[]): readonly Laid[] {
  const direct = layer.lay(wire, []);
  if (!direct) return laid;
  const inWay = laid.filter((one) => touches(direct, one, wire.diameterM));
  const rest = laid.filter((one) => !inWay.includes(one));
  const made = layer.layInOrder([wire, ...inWay.map((one) => one.wire)], rest);
  return made.length > laid.length ? made : laid;
}

function tightBend({ wire, route }: Laid): BoardRemark[] {
  const needM = wire.bendRadiusM ?? 0;
  const tight = tightestBend(route, needM);
  if (!tight) return [];
  return [
    {
      rule: 'bend-too-tight',
      level: 'caution',
      of: [wire.id],
      message: phrase`${wire.id} has room for a bend of ${length('room-free', tight.radiusM)} radius at ${length('position', tight.at.xM)}, ${length('position', tight.at.yM)}; ${length('room-asked', needM)} is the least`,
      value: tight.radiusM,
      limit: needM,
      unit: 'm',
      remedy:
        'move the part that it runs to, turn its terminal, or take a thinner or finer-stranded conductor',
    },
  ];
}
