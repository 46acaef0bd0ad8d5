import { opposite, outward, sides } from '../layout/item.ts';
import type { BoardShape } from '../shape/outline.ts';
import { distance, type Point, pointToSegment, segmentToSegment } from '../shape/point.ts';
import { isPoint, type Route, type RouteEnd, type RouteWire, type Stretch, stretches } from './route.ts';
import type { Barrier } from './track-grid.ts';
import { type Laid, terminalRoomM } from './tracks.ts';
import { faces, type Walls, wallsOf } from './walls.ts';

const roundingM = 1e-6;

/** Tells whether a wire keeps its room on a board: from parts, fixings, holes and edges, and from wires that lie. */
export class ClearWays {
  readonly #barriers: readonly Barrier[];
  readonly #walls: Walls;
  readonly #clearanceM: number;

  constructor(shape: BoardShape, barriers: readonly Barrier[], clearanceM: number) {
    const holes = shape.holes.map(({ xM, yM, diameterM }): Barrier => {
      return { id: '', centre: { xM, yM }, radiusM: diameterM / 2 };
    });
    this.#barriers = [...barriers, ...holes];
    this.#walls = wallsOf(shape, []);
    this.#clearanceM = clearanceM;
  }

  /** True where a route keeps its room from all that stands on the board, and from other wires side by side with it. */
  isClear(wire: RouteWire, route: Route, others: readonly Laid[]): boolean {
    const needM = wire.diameterM / 2 + this.#clearanceM - roundingM;
    const { points } = route;
    const last = points.length - 2;
    for (let at = 0; at <= last; at += 1) {
      const [a, b] = [points[at], points[at + 1]];
      if (!a || !b) return false;
      // Where a wire goes into a terminal it is nearer to its own part, and where it leaves the board to the edge.
      const ends = [at === 0 ? wire.from : null, at === last ? wire.to : null] as const;
      if (!this.#isClearOfBarriers(a, b, ends, needM) || !this.#isClearOfEdges(a, b, ends, needM))
        return false;
    }
    return others.every((other) => isApart(wire, route, other));
  }

  #isClearOfBarriers(a: Point, b: Point, ends: readonly (RouteEnd | null)[], needM: number): boolean {
    return this.#barriers.every((barrier) => {
      if ('centre' in barrier) return pointToSegment(barrier.centre, a, b) - barrier.radiusM >= needM;
      const isOwn = (end: RouteEnd | null | undefined) =>
        !!end && isPoint(end) && toBoxM(end, end, barrier.box) < 1e-4;
      const [p, q] = [
        isOwn(ends[0]) ? towards(a, b, needM + roundingM) : a,
        isOwn(ends[1]) ? towards(b, a, needM + roundingM) : b,
      ];
      return toBoxM(p, q, barrier.box) >= needM;
    });
  }

  #isClearOfEdges(a: Point, b: Point, ends: readonly (RouteEnd | null)[], needM: number): boolean {
    const exits = ends.flatMap((end) => (end && !isPoint(end) ? [sides.indexOf(end.exit)] : []));
    const p = ends[0] && isPoint(ends[0]) ? towards(a, b, needM + roundingM) : a;
    const q = ends[1] && isPoint(ends[1]) ? towards(b, a, needM + roundingM) : b;
    return this.#walls.edges.every((edge) => {
      if (edge.isOuter && exits.some((side) => faces(edge.a, edge.b, side))) return true;
      return segmentToSegment(p, q, edge.a, edge.b) >= needM;
    });
  }
}

/** From a straight piece along x or y to a box (m). */
function toBoxM(
  a: Point,
  b: Point,
  { minX, minY, maxX, maxY }: { minX: number; minY: number; maxX: number; maxY: number },
): number {
  const dx = Math.max(minX - Math.max(a.xM, b.xM), Math.min(a.xM, b.xM) - maxX, 0);
  const dy = Math.max(minY - Math.max(a.yM, b.yM), Math.min(a.yM, b.yM) - maxY, 0);
  return Math.hypot(dx, dy);
}

function towards(a: Point, b: Point, byM: number): Point {
  const lengthM = distance(a, b);
  const share = lengthM === 0 ? 0 : Math.min(1, byM / lengthM);
  return { xM: a.xM + share * (b.xM - a.xM), yM: a.yM + share * (b.yM - a.yM) };
}

/** True where two wires nowhere run side by side nearer than they are thick, but beside terminals that lie close. */
function isApart(wire: RouteWire, route: Route, other: Laid): boolean {
  const spacingM = (wire.diameterM + other.wire.diameterM) / 2 - roundingM;
  const others = stretches(other.route);
  for (const one of stretches(route))
    for (const two of others) {
      if (one.level !== two.level || Math.abs(one.at - two.at) >= spacingM) continue;
      const [from, to] = [Math.max(one.from, two.from - spacingM), Math.min(one.to, two.to + spacingM)];
      if (from >= to) continue;
      // On each other they may lie only where both come out of one terminal: they could change sides there unseen.
      const ends = endsWithin(
        wire,
        other.wire,
        Math.abs(one.at - two.at) < roundingM ? roundingM : terminalRoomM,
      );
      if (!ends.some((end) => [from, to].every((along) => distance(end, on(one, along)) < terminalRoomM)))
        return false;
    }
  return true;
}

/** The ends of a wire that another ends so near to. */
function endsWithin(wire: RouteWire, other: RouteWire, roomM: number): Point[] {
  return [wire.from, wire.to]
    .filter(isPoint)
    .filter((end) => [other.from, other.to].some((far) => isPoint(far) && distance(far, end) < roomM));
}

function on({ level, at }: Stretch, alongM: number): Point {
  return level ? { xM: alongM, yM: at } : { xM: at, yM: alongM };
}

/** The wires that can stay where they lay before: their ends are where they were, and nothing else has come in their way. */
export function stillClear(wires: readonly RouteWire[], before: readonly Route[], ways: ClearWays): Laid[] {
  const laid: Laid[] = [];
  for (const route of before) {
    const wire = wires.find(({ id }) => id === route.wire);
    if (wire && leads(route, wire) && ways.isClear(wire, route, laid)) laid.push({ wire, route });
  }
  return laid;
}

/** True where a way leads from the one end of a wire to the other. */
function leads({ points }: Route, { from, to }: RouteWire): boolean {
  return startsAt(points, from) && startsAt(points.toReversed(), to);
}

/** True where points begin at an end: in a terminal, and the way that it faces, or over the side of the board. */
function startsAt([first, second]: readonly Point[], end: RouteEnd): boolean {
  if (!first || !second) return false;
  const side = isPoint(end) ? end.faces : opposite[end.exit];
  const out = outward[side];
  const aheadM = (second.xM - first.xM) * out.xM + (second.yM - first.yM) * out.yM;
  return aheadM > 1e-9 && (!isPoint(end) || distance(first, end) < 1e-7);
}
