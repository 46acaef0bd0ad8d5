import { computeAnew, type Keep, type Step } from '../../model/keep.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { boxOf } from '../shape/point.ts';
import { kinkedBend, tightestBend } from './bends.ts';
import { blockedWire, touches } from './blocked-wire.ts';
import { ClearWays, stillClear } from './clear-way.ts';
import { DressRooms } from './dress/dress-room.ts';
import type { DressPrices } from './dress/dressed.ts';
import { Dresser } from './dress/dresser.ts';
import { dressed, layInTurn } from './dress/dressing.ts';
import { fewerCrossings, fewWires } from './fewer-crossings.ts';
import { crossingsAmong, Layer, type LayingRules } from './laying.ts';
import { anyWayM } from './relaying.ts';
import { type Crossing, crossings, isPoint, type Route, type RouteWire } from './route.ts';
import { routeOrder } from './route-order.ts';
import type { RoutingHouse } from './routing-house.ts';
import { type Barrier, type TrackGrid, trackGrid } from './track-grid.ts';
import type { Laid } from './tracks.ts';
import { withinReach } from './within-reach.ts';

/** What is routed: a board, what stands on it, and its wires. */
export interface RoutingTask {
  readonly shape: BoardShape;
  /** Items that stand on the board, and heads of fixings. Raised items that wires pass under are left out. */
  readonly barriers: readonly Barrier[];
  readonly wires: readonly RouteWire[];
  /** Ways that wires had before something changed: those that still can be are begun with. */
  readonly before?: readonly Route[];
}

/** House figures and costs of routing. */
export interface RoutingRules extends LayingRules {
  /** Distance of the lines that wires are laid on, metres. */
  readonly pitchM: number;
  /** What dressed wires are judged by, and the path searches for each of them. */
  readonly dressPrices: DressPrices;
  readonly searchesEach: number;
  /** True where wires that find no way, don't reach or are bent too tightly as they are dressed are begun on tracks. */
  readonly beginsOnTracks: boolean;
  /** What the lots of dressing are drawn from: another seed, another search. */
  readonly seed: number;
  /** How often every wire is taken up and laid again. */
  readonly passes: number;
  /**
   * How long fewer crossings on tracks are looked for, in points of the grid that path searches may visit for each wire:
   * on a board of few wires (up to eight), and of many of which one finds no way; where all of many lie, not at all,
   * since they are dressed. It is looked for no longer once nothing crosses.
   */
  readonly pointsOfFew: number;
  readonly pointsOfMany: number;
}

/** The house's figures, and what is to be otherwise than by `routingDefaults`. */
export type RoutingGiven = RoutingHouse & Partial<RoutingRules>;

/** Many wires whose lengths or crossings are only wanted for now are dressed so little. */
export const onDraft = { searchesEach: 1 } as const;

/** What is routed with where nothing else is said: how finely and for how long ways are looked for. */
export const routingDefaults: Omit<RoutingRules, keyof RoutingHouse> = {
  pitchM: 0.00635,
  clearanceM: 0.0015,
  searchesEach: 8,
  beginsOnTracks: true,
  seed: 1,
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
 * Lays wires on a board, straight along x and y, round parts and fixings, so that few cross. Up to eight wires each go
 * the cheapest path past those that lie already (length, bends, crossings, nearness of power to signal), then other
 * orders and ways are tried, and every order is looked at or ruled out. Of more, each goes along what it passes, as near
 * as it may, and some at a time are taken up and laid again.
 * Wires cross at right angles only, and leave the board straight over their side. `keep`: what remembers the parts of
 * this, which are asked for again with the same wires: on trial, for ports, drafted and for good.
 */
export function routeWires(task: RoutingTask, given: RoutingGiven, keep: Keep = computeAnew): Routing {
  const rules: RoutingRules = { ...routingDefaults, ...given };
  if (task.wires.length <= fewWires) return routeOnTracks(task, rules);
  const { beginsOnTracks, passes, pointsOfFew, pointsOfMany, ...dressing } = rules;
  const own = keep(dressedStep, { task, rules: dressing });
  if (!beginsOnTracks || own.faults.length + outOfReach(task, own) === 0) return own;
  const { searchesEach: _each, seed: _seed, dressPrices: _prices, ...laying } = dressing;
  const tracks = { ...laying, passes, pointsOfFew, pointsOfMany };
  const begun = laidBy(task, keep(onTracksStep, { task, rules: tracks }));
  const onTracks = routeDressed(task, dressing, begun);
  return isBetter(task, onTracks, own) ? onTracks : own;
}

/** What wires are dressed by, and what they are laid by on tracks: neither hangs on the rest of the rules. */
type DressingRules = Omit<RoutingRules, 'beginsOnTracks' | 'passes' | 'pointsOfFew' | 'pointsOfMany'>;
type TrackRules = Omit<RoutingRules, 'beginsOnTracks' | 'searchesEach' | 'seed' | 'dressPrices'>;

interface PartInput<Rules> {
  readonly task: RoutingTask;
  readonly rules: Rules;
}

/** Many wires dressed. */
const dressedStep: Step<PartInput<DressingRules>, Routing> = {
  id: 'dressed',
  compute: ({ task, rules }) => routeDressed(task, rules, null),
};

/** Many wires on tracks, for those that are dressed from there. */
const onTracksStep: Step<PartInput<TrackRules>, Routing> = {
  id: 'on-tracks',
  compute: ({ task, rules }) => routeOnTracks(task, rules),
};

/** More wires laid, then fewer that don't reach or are bent too tightly, then fewer crossings. */
function isBetter(task: RoutingTask, one: Routing, than: Routing): boolean {
  const byWires = one.routes.length - than.routes.length;
  const byReach = outOfReach(task, than) - outOfReach(task, one);
  const byFaults = than.faults.length - one.faults.length;
  return (byWires || byReach || byFaults || than.crossings.length - one.crossings.length) > 0;
}

/** How many wires that are made to a length don't reach along their way. */
function outOfReach({ wires }: RoutingTask, { routes }: Routing): number {
  return routes.filter(({ wire, lengthM }) => {
    return lengthM > (wires.find(({ id }) => id === wire)?.longestM ?? Infinity);
  }).length;
}

function laidBy({ wires }: RoutingTask, { routes }: Routing): Laid[] {
  return routes.flatMap((route): Laid[] => {
    const wire = wires.find(({ id }) => id === route.wire);
    return wire ? [{ wire, route }] : [];
  });
}

/** Wires laid in turn past those that lie already, then dressed together. */
function routeDressed(task: RoutingTask, rules: DressingRules, onTracks: readonly Laid[] | null): Routing {
  const { shape, barriers, wires } = task;
  const dresser = new Dresser(new DressRooms(shape, barriers, rules.clearanceM), rules.powerToSignalM);
  const ways = new ClearWays(shape, barriers, rules.clearanceM);
  const { dressPrices: prices, powerToSignalM: apartM, seed } = rules;
  const kit = { dresser, ways, prices, apartM, seed };
  const begun = onTracks ?? stillClear(task.wires, task.before ?? [], ways);
  const open = routeOrder(wires).filter((wire) => !begun.some((one) => one.wire === wire));
  const first = layInTurn(kit, open, begun);
  const laid = dressed(kit, first, rules.searchesEach * first.length);
  const found = {
    first: crossingsAmong(first),
    everyOrder: crossingsAmong(laid) === 0,
    searches: dresser.searches,
  };
  const layer = laid.length < wires.length ? layerFor(task, rules) : null;
  return routingOf(task, layer, laid, found);
}

/** A layer with tracks through every terminal. */
function layerFor(
  { shape, barriers, wires }: RoutingTask,
  rules: LayingRules & Pick<RoutingRules, 'pitchM'>,
): Layer {
  const terminals = wires.flatMap(({ from, to }) => [from, to].filter(isPoint));
  const grid = trackGrid(shape, barriers, terminals, pitchFor(shape, rules.pitchM));
  return new Layer(grid, rules, wires);
}

/** Wires on tracks alone: one after the other, then other orders and ways. */
function routeOnTracks(task: RoutingTask, rules: TrackRules): Routing {
  const layer = layerFor(task, rules);
  const order = routeOrder(task.wires);
  const first = layMissing(layer, order, []);
  const again = layer.layAgain(order, first);
  const isLaid = task.wires.length > fewWires && again.length === task.wires.length;
  const most = isLaid ? 0 : mostSearches(layer.grid, task.wires.length, rules);
  const fewer = fewerCrossings(layer, order, again, most);
  let { laid } = fewer;
  for (let pass = 1; pass < rules.passes; pass += 1) laid = layer.layAgain(order, laid, anyWayM);
  laid = withinReach(layer, laid);
  const firstCrossings = first.length < fewer.laid.length ? fewer.first : crossingsAmong(first);
  return routingOf(task, layer, laid, { first: firstCrossings, everyOrder: fewer.everyOrder, searches: 0 });
}

/** What a laying comes to, in the order of the wires. */
function routingOf(
  { wires, barriers }: RoutingTask,
  layer: Layer | null,
  laid: readonly Laid[],
  {
    first,
    everyOrder,
    searches,
  }: { readonly first: number; readonly everyOrder: boolean; readonly searches: number },
): Routing {
  const routes = wires.flatMap(({ id }) => laid.find(({ wire }) => wire.id === id)?.route ?? []);
  const faults = wires.flatMap((wire) => {
    const own = laid.find((one) => one.wire === wire);
    if (own) return tightBend(own);
    return layer ? [blockedWire(layer, wire, laid, barriers)] : [];
  });
  return {
    routes,
    crossings: crossings(routes),
    firstCrossings: first,
    everyOrder,
    searches: searches + (layer?.searches ?? 0),
    faults,
  };
}

/** Path searches for each wire on the smallest of boards. */
const mostEach = 400;

/** Path searches that fewer crossings may take. */
function mostSearches(
  { xs, ys }: TrackGrid,
  wires: number,
  { pointsOfFew, pointsOfMany }: Pick<RoutingRules, 'pointsOfFew' | 'pointsOfMany'>,
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

/** Lays every wire it can past those that lie; one that is shut in takes up what stands in its way first. */
function layMissing(layer: Layer, missing: readonly RouteWire[], begun: readonly Laid[]): readonly Laid[] {
  let laid = begun;
  for (const wire of missing) {
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

/** A bend that kinks the wire stops; one that is tighter than is good asks to be looked at. */
function tightBend({ wire, route }: Laid): BoardRemark[] {
  const { id, bendRadiusM: needM = 0, kinkRadiusM = 0 } = wire;
  const kinked = kinkedBend(route, kinkRadiusM, { from: !isPoint(wire.from), to: !isPoint(wire.to) });
  const tight = kinked ?? tightestBend(route, needM);
  if (!tight) return [];
  const { at, radiusM, bends } = tight;
  const where = phrase`${length('position', at.xM)}, ${length('position', at.yM)}`;
  const least = length('room-asked', needM);
  const room = phrase`${id} has room for a bend of ${length('room-free', radiusM)} radius at ${where}`;
  return [
    {
      rule: 'bend-too-tight',
      level: kinked ? 'stop' : 'caution',
      of: [id],
      message: kinked
        ? phrase`${room}: it kinks below ${length('room-asked', kinkRadiusM)}, and ${least} is the least that is good`
        : phrase`${room}; ${least} is the least`,
      value: radiusM,
      limit: kinked ? kinkRadiusM : needM,
      unit: 'm',
      remedy: phrase`give it ${length('room-asked', bends * (needM - radiusM))} more of straight way there: move the part that it runs to, turn its terminal, or take a thinner or finer-stranded conductor`,
    },
  ];
}
