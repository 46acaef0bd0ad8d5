import { distance, type Point } from './point.ts';
import { isPoint, type Route, type RouteWire, stretches } from './route.ts';
import type { TrackGrid } from './track-grid.ts';

/** What other wires mean to the wire that is being laid, by point of the grid. */
export interface Tracks {
  /** 1 where it may not run level (index 0) or upright (index 1): another wire has the track. */
  readonly taken: readonly [Uint8Array, Uint8Array];
  /** Wires that it crosses when it passes a point upright (0) or level (1); one to avoid counts for many. */
  readonly crossed: readonly [Uint16Array, Uint16Array];
  /** 0 to 1: how far inside the house distance to power (or signal) it runs level (0) or upright (1). */
  readonly near: readonly [Float64Array, Float64Array];
}

/** A wire that is laid. */
export interface Laid {
  readonly wire: RouteWire;
  readonly route: Route;
}

/** Round its own terminals a wire may come nearer than its thickness to wires of terminals as near as this, metres. */
const terminalRoomM = 0.03;

/** An end of a wire that another wire ends near to; `same`: in the same terminal. */
interface SharedEnd extends Point {
  readonly same: boolean;
}

/** What crossing a wire that is to be avoided counts for, in crossings. */
const avoidedCount = 500;

/**
 * The tracks that laid wires leave to one wire. `mouths`: lines in front of terminals of wires that do not lie yet;
 * each counts as a crossing. `avoid`: lines that it should rather not cross at all.
 */
export function tracksFor(
  grid: TrackGrid,
  wire: RouteWire,
  laid: readonly Laid[],
  apartM: number,
  mouths: readonly Route[],
  avoid: readonly Route[],
): Tracks {
  const size = grid.xs.length * grid.ys.length;
  const tracks: Tracks = {
    taken: [new Uint8Array(size), new Uint8Array(size)],
    crossed: [new Uint16Array(size), new Uint16Array(size)],
    near: [new Float64Array(size), new Float64Array(size)],
  };
  for (const other of laid) {
    const spacingM = (wire.diameterM + other.wire.diameterM) / 2;
    const shared = sharedEnds(wire, other.wire);
    for (const stretch of stretches(other.route)) {
      markTaken(grid, tracks, stretch, spacingM, shared);
      markCrossed(grid, tracks, stretch, 1);
      if (keepApart(wire, other.wire)) markNear(grid, tracks, stretch, apartM);
    }
  }
  for (const line of mouths.flatMap(stretches)) markCrossed(grid, tracks, line, 1);
  for (const line of avoid.flatMap(stretches)) markCrossed(grid, tracks, line, avoidedCount);
  return tracks;
}

function keepApart(a: RouteWire, b: RouteWire): boolean {
  return (a.layer === 'signal' && b.layer === 'power') || (a.layer === 'power' && b.layer === 'signal');
}

/** The wire's own ends that the other wire ends near to. */
function sharedEnds(wire: RouteWire, other: RouteWire): SharedEnd[] {
  const far = [other.from, other.to].filter(isPoint);
  return [wire.from, wire.to].filter(isPoint).flatMap(({ xM, yM }): SharedEnd[] => {
    const apartM = Math.min(...far.map((end) => distance(end, { xM, yM })));
    return apartM < terminalRoomM ? [{ xM, yM, same: apartM < 1e-6 }] : [];
  });
}

type Line = ReturnType<typeof stretches>[number];

/** Calls back for every point of the grid whose distance to a stretch, across and past its ends, is below a reach. */
function eachNear(
  grid: TrackGrid,
  { level, at, from, to }: Line,
  reachM: number,
  visit: (index: number, acrossM: number, alongM: number) => void,
): void {
  const [mine, others] = level ? [grid.xs, grid.ys] : [grid.ys, grid.xs];
  const [firstOther, endOther] = [firstAbove(others, at - reachM), firstFrom(others, at + reachM)];
  const endMine = firstFrom(mine, to + reachM);
  for (let i = firstAbove(mine, from - reachM); i < endMine; i += 1) {
    const along = mine[i] ?? 0;
    for (let j = firstOther; j < endOther; j += 1)
      visit(level ? i * grid.ys.length + j : j * grid.ys.length + i, Math.abs((others[j] ?? 0) - at), along);
  }
}

/** Index of the first line above a value; lines are in order. */
function firstAbove(lines: readonly number[], value: number): number {
  return partition(lines, (line) => line <= value);
}

/** Index of the first line at or above a value. */
function firstFrom(lines: readonly number[], value: number): number {
  return partition(lines, (line) => line < value);
}

/** How many lines at the front keep a condition; all that keep it stand before all that do not. */
function partition(lines: readonly number[], keeps: (line: number) => boolean): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (keeps(lines[middle] ?? 0)) low = middle + 1;
    else high = middle;
  }
  return low;
}

function markTaken(
  grid: TrackGrid,
  { taken }: Tracks,
  line: Line,
  spacingM: number,
  shared: readonly SharedEnd[],
): void {
  const way = line.level ? 0 : 1;
  eachNear(grid, line, Math.max(spacingM - 1e-9, 1e-6), (index, acrossM, along) => {
    const [xM, yM] = [grid.xs[Math.floor(index / grid.ys.length)] ?? 0, grid.ys[index % grid.ys.length] ?? 0];
    // On the other wire itself they may lie only where both come out of one terminal: what lies on each other
    // could change sides there without a crossing to be seen.
    const onIt = acrossM < 1e-6 && along > line.from - 1e-9 && along < line.to + 1e-9;
    const mayShare = shared.some((end) => (end.same || !onIt) && distance(end, { xM, yM }) < terminalRoomM);
    if (!mayShare) taken[way][index] = 1;
  });
}

/** Marks where a wire that passes at a right angle crosses a line between its ends. */
function markCrossed(grid: TrackGrid, { crossed }: Tracks, line: Line, count: number): void {
  const way = line.level ? 0 : 1;
  eachNear(grid, line, 1e-6, (index, _, along) => {
    const inner = along > line.from + 1e-9 && along < line.to - 1e-9;
    if (inner) crossed[way][index] = (crossed[way][index] ?? 0) + count;
  });
}

function markNear(grid: TrackGrid, { near }: Tracks, line: Line, apartM: number): void {
  const way = line.level ? 0 : 1;
  eachNear(grid, line, apartM, (index, acrossM) => {
    near[way][index] = Math.max(near[way][index] ?? 0, 1 - acrossM / apartM);
  });
}
