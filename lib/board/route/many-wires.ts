import { opposite, sides } from '../layout/item.ts';
import type { BoardShape } from '../shape/outline.ts';
import { ClearWays } from './clear-way.ts';
import { type InLanes, LaneSearch } from './lane-search.ts';
import { type LaneWire, pointsOf } from './lanes/lane-wire.ts';
import { wallsOf } from './lanes/walls.ts';
import type { LayingRules } from './laying.ts';
import { isPoint, outFrom, type RouteWire, routeThrough } from './route.ts';
import { type BoardMap, boardMap, cellAt, type MapPoint } from './topology/board-map.ts';
import type { MapTerminal, MapWire, WayCosts } from './topology/map-wire.ts';
import { Sketch } from './topology/sketch.ts';
import { SketchSearch } from './topology/sketch-search.ts';
import type { Barrier } from './track-grid.ts';
import type { Laid } from './tracks.ts';

/** What ways through the map cost, in metres of wire (house judgement, no source). */
const wayCosts: Omit<WayCosts, 'clearanceM'> = {
  crossingM: 1,
  bendM: 0.03,
  bendRadii: 1,
  tightM: 3,
  fullM: 1.5,
  lackM: 200,
};

/** Of their bend radius wires are given all first; those that find no room with it half, then none. */
const shares = [1, 1, 0.5, 0];

/** A wire with how it is seen in the map and as lanes. */
interface MappedWire {
  readonly wire: RouteWire;
  readonly own: MapWire;
  readonly lane: LaneWire;
}

/** Wires that lie in lanes, and the ways that were searched for. */
export interface LaidInLanes {
  readonly laid: readonly Laid[];
  readonly searches: number;
}

/**
 * Lays many wires at once: first in a sketch of the board, which knows only what they pass in which order, until they
 * cross as little as it finds; then in lanes of true width, which keep that order. Wires that find no room, or not all
 * that they ask for, are left out.
 */
export function wiresInLanes(
  shape: BoardShape,
  barriers: readonly Barrier[],
  order: readonly RouteWire[],
  { clearanceM }: LayingRules,
): LaidInLanes {
  const terminals = order.flatMap(({ from, to }) => [from, to].filter(isPoint));
  const map = boardMap(shape, barriers, terminals);
  const mapped = order.flatMap((wire) => inMap(map, wire) ?? []);
  const wires = mapped.map(({ own }) => own);
  const all = wires.map((_, wire) => wire);
  const search = new SketchSearch(wires, { ...wayCosts, clearanceM });
  const sketch = new Sketch(
    map,
    wires.map(({ widthM }) => widthM),
  );
  search.settle(sketch, all);
  const board = { walls: wallsOf(shape, barriers), xs: map.xs, ys: map.ys, clearanceM };
  const lanes = new LaneSearch({ board, search, wires, laneWires: mapped.map(({ lane }) => lane) }, sketch);
  for (const share of shares) lanes.putIn(all, share);
  const laid = laidBy(lanes.found, mapped, board.walls);
  const ways = new ClearWays(shape, barriers, clearanceM);
  const isClear = (one: Laid) =>
    ways.isClear(
      one.wire,
      one.route,
      laid.filter((other) => other !== one),
    );
  return { laid: laid.filter(isClear), searches: search.searches };
}

function laidBy({ laid }: InLanes, mapped: readonly MappedWire[], walls: ReturnType<typeof wallsOf>): Laid[] {
  return laid.flatMap((legs, at): Laid[] => {
    const wire = mapped[at]?.wire;
    if (!legs || !wire) return [];
    const points = pointsOf(legs, walls);
    return [{ wire, route: routeThrough(wire, isPoint(wire.from) ? points : points.toReversed()) }];
  });
}

/** A wire in the map, from its terminal on; null where it has none, or a terminal has no way out. */
function inMap(map: BoardMap, wire: RouteWire): MappedWire | null {
  const { from, to, diameterM, bendRadiusM = 0 } = wire;
  const [start, end] = isPoint(from) ? [from, to] : [to, from];
  if (!isPoint(start)) return null;
  const goal = isPoint(end) ? terminalIn(map, end) : { exitSide: sides.indexOf(end.exit) };
  const own = terminalIn(map, start);
  if (!own || !goal) return null;
  const avoidM = new Float64Array(map.edges.length);
  const laneEnd = isPoint(end) ? end : { exitSide: sides.indexOf(end.exit) };
  return {
    wire,
    own: { from: own, to: goal, widthM: diameterM, bendRadiusM, avoidM },
    lane: { from: start, to: laneEnd, diameterM, bendRadiusM },
  };
}

/** Lines of the map are no further from a terminal's side than this (m). */
const justOutM = 0.001;

function terminalIn(map: BoardMap, end: MapPoint): MapTerminal | null {
  const cell = cellAt(map, outFrom(end, end.faces, justOutM));
  if (cell < 0 || map.open[cell] !== 1) return null;
  const edge = map.edgeOf[cell * 4 + sides.indexOf(opposite[end.faces])] ?? -1;
  return { cell, edge, atM: map.edges[edge]?.upright ? end.yM : end.xM };
}
