import { distance, type Point } from '../shape/point.ts';
import { isPoint, type Route, type RouteWire, type Stretch, stretches } from './route.ts';
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
export const terminalRoomM = 0.03;

/** An end of a wire that another wire ends near to; `same`: in the same terminal. */
interface SharedEnd extends Point {
  readonly same: boolean;
}

/** What crossing a wire that is to be avoided counts for, in crossings. */
const avoidedCount = 500;

/** Works out what laid wires leave to one wire, always in the same memory. */
export class TrackMarks {
  readonly #grid: TrackGrid;
  readonly #tracks: Tracks;

  constructor(grid: TrackGrid) {
    const size = grid.xs.length * grid.ys.length;
    this.#grid = grid;
    this.#tracks = {
      taken: [new Uint8Array(size), new Uint8Array(size)],
      crossed: [new Uint16Array(size), new Uint16Array(size)],
      near: [new Float64Array(size), new Float64Array(size)],
    };
  }

  /**
   * The tracks that laid wires leave to one wire, until the next call. `mouths`: lines in front of terminals of wires
   * that do not lie yet; each counts as a crossing. `avoid`: lines that it should rather not cross at all.
   */
  tracksFor(
    wire: RouteWire,
    laid: readonly Laid[],
    apartM: number,
    mouths: readonly Route[],
    avoid: readonly Route[],
  ): Tracks {
    const [grid, tracks] = [this.#grid, this.#tracks];
    for (const part of [...tracks.taken, ...tracks.crossed, ...tracks.near]) part.fill(0);
    for (const other of laid) {
      const spacingM = (wire.diameterM + other.wire.diameterM) / 2;
      const shared = sharedEnds(wire, other.wire);
      const apart = keepApart(wire, other.wire);
      for (const stretch of stretches(other.route)) {
        markTaken(grid, tracks, stretch, spacingM, shared);
        markCrossed(grid, tracks, stretch, 1);
        if (apart) markNear(grid, tracks, stretch, apartM);
      }
    }
    for (const line of mouths.flatMap(stretches)) markCrossed(grid, tracks, line, 1);
    for (const line of avoid.flatMap(stretches)) markCrossed(grid, tracks, line, avoidedCount);
    return tracks;
  }
}

function keepApart(a: RouteWire, b: RouteWire): boolean {
  return (a.layer === 'signal' && b.layer === 'power') || (a.layer === 'power' && b.layer === 'signal');
}

const noEnds: readonly SharedEnd[] = [];

/** The wire's own ends that the other wire ends near to. */
function sharedEnds(wire: RouteWire, other: RouteWire): readonly SharedEnd[] {
  let shared = noEnds;
  for (const end of [wire.from, wire.to]) {
    if (!isPoint(end)) continue;
    const { xM, yM } = end;
    let apartM = Infinity;
    for (const far of [other.from, other.to]) if (isPoint(far)) apartM = Math.min(apartM, distance(far, end));
    if (apartM < terminalRoomM) shared = [...shared, { xM, yM, same: apartM < 1e-6 }];
  }
  return shared;
}

/** Columns and rows of a grid, each from a first one to before an end. */
interface Patch {
  readonly column: number;
  readonly columnEnd: number;
  readonly row: number;
  readonly rowEnd: number;
}

/** The points of a grid whose distance to a stretch, across and past its ends, is below a reach. */
function patchNear({ xs, ys }: TrackGrid, { level, at, from, to }: Stretch, reachM: number): Patch {
  const [mine, others] = level ? [xs, ys] : [ys, xs];
  const [first, end] = [firstPast(mine, from - reachM, false), firstPast(mine, to + reachM, true)];
  const [firstOther, endOther] = [
    firstPast(others, at - reachM, false),
    firstPast(others, at + reachM, true),
  ];
  return level
    ? { column: first, columnEnd: end, row: firstOther, rowEnd: endOther }
    : { column: firstOther, columnEnd: endOther, row: first, rowEnd: end };
}

/** Index of the first line above a value, or at it where `atIt`; lines are in order. */
function firstPast(lines: readonly number[], value: number, atIt: boolean): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const line = lines[middle] ?? 0;
    if (atIt ? line < value : line <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function markTaken(
  grid: TrackGrid,
  { taken }: Tracks,
  line: Stretch,
  spacingM: number,
  shared: readonly SharedEnd[],
): void {
  const { xs, ys } = grid;
  const mine = taken[line.level ? 0 : 1];
  const patch = patchNear(grid, line, Math.max(spacingM - 1e-9, 1e-6));
  for (let column = patch.column; column < patch.columnEnd; column += 1) {
    const [first, end] = [column * ys.length + patch.row, column * ys.length + patch.rowEnd];
    if (shared.length === 0) mine.fill(1, first, end);
    else
      for (let node = first; node < end; node += 1) {
        const p = { xM: xs[column] ?? 0, yM: ys[node - column * ys.length] ?? 0 };
        if (!mayShare(line, p, shared)) mine[node] = 1;
      }
  }
}

/** Whether a wire may have a point beside another, for both end near there. */
function mayShare({ level, at, from, to }: Stretch, p: Point, shared: readonly SharedEnd[]): boolean {
  const [across, along] = level ? [p.yM - at, p.xM] : [p.xM - at, p.yM];
  // On the other wire itself they may lie only where both come out of one terminal: what lies on each other
  // could change sides there without a crossing to be seen.
  const onIt = Math.abs(across) < 1e-6 && along > from - 1e-9 && along < to + 1e-9;
  return shared.some((end) => (end.same || !onIt) && distance(end, p) < terminalRoomM);
}

/** Marks where a wire that passes at a right angle crosses a line between its ends. */
function markCrossed(grid: TrackGrid, { crossed }: Tracks, line: Stretch, count: number): void {
  const { xs, ys } = grid;
  const mine = crossed[line.level ? 0 : 1];
  const patch = patchNear(grid, line, 1e-6);
  for (let column = patch.column; column < patch.columnEnd; column += 1)
    for (let row = patch.row; row < patch.rowEnd; row += 1) {
      const along = (line.level ? xs[column] : ys[row]) ?? 0;
      const node = column * ys.length + row;
      const inner = along > line.from + 1e-9 && along < line.to - 1e-9;
      if (inner) mine[node] = (mine[node] ?? 0) + count;
    }
}

function markNear(grid: TrackGrid, { near }: Tracks, line: Stretch, apartM: number): void {
  const { xs, ys } = grid;
  const mine = near[line.level ? 0 : 1];
  const patch = patchNear(grid, line, apartM);
  for (let column = patch.column; column < patch.columnEnd; column += 1)
    for (let row = patch.row; row < patch.rowEnd; row += 1) {
      const node = column * ys.length + row;
      const share = 1 - Math.abs(((line.level ? ys[row] : xs[column]) ?? 0) - line.at) / apartM;
      if (share > (mine[node] ?? 0)) mine[node] = share;
    }
}
