import { sides } from '../../../board/layout/item.ts';
import { bundlesLeft, mateOf, togetherM } from '../../../board/route/dress/together.ts';
import { tightBendsAmong } from '../../../board/route/laying.ts';
import {
  countCrossings,
  isPoint,
  outFrom,
  type Route,
  type RouteEnd,
  routeThrough,
  stretches,
} from '../../../board/route/route.ts';
import type { RoutingTask } from '../../../board/route/routing.ts';
import type { Laid } from '../../../board/route/tracks.ts';
import { type Box, distance, distanceToBox, type Point } from '../../../board/shape/point.ts';
import type { Berth } from './least-crossings.ts';

/** What is counted of wires that lie, whoever laid them. */
export interface BoardFigures {
  readonly crossings: number;
  readonly bends: number;
  /** Length of all wires, metres. */
  readonly wireM: number;
  /** Pairs that run apart from each other somewhere between their ends. */
  readonly partedPairs: number;
  /** The most bundles in which a run leaves by one side. */
  readonly bundles: number;
  /** Pairs of wires that lie nearer side by side than they are thick, their ends left aside. */
  readonly tooNear: number;
  /** Wires that are bent more tightly than they may be. */
  readonly tight: number;
  /** Wires that found no way. */
  readonly missing: number;
}

/** Counts what routes come to. */
export function boardFigures({ wires }: Pick<RoutingTask, 'wires'>, routes: readonly Route[]): BoardFigures {
  const laid = wires.flatMap((wire): Laid[] => {
    const route = routes.find((one) => one.wire === wire.id);
    return route ? [{ wire, route }] : [];
  });
  return {
    crossings: countCrossings(laid.map(straightOn)),
    bends: routes.reduce((sum, { bends }) => sum + bends, 0),
    wireM: routes.reduce((sum, { lengthM }) => sum + lengthM, 0),
    partedPairs: laid.filter((one) => isParted(one, laid)).length,
    bundles: Math.max(0, ...bundlesLeft(laid)),
    tooNear: laid.reduce(
      (sum, one, at) => sum + laid.slice(at + 1).filter((two) => areTooNear(one, two)).length,
      0,
    ),
    tight: tightBendsAmong(laid),
    missing: wires.length - laid.length,
  };
}

/** A route with the wire straight on beyond the edge: what crosses there counts as well. */
function straightOn({ wire, route }: Laid): Route {
  const beyond = (end: RouteEnd, p: Point | undefined) =>
    isPoint(end) || !p ? [] : [outFrom(p, end.exit, beyondM)];
  const { points } = route;
  return routeThrough(wire, [...beyond(wire.from, points[0]), ...points, ...beyond(wire.to, points.at(-1))]);
}

/** So far from its ends a wire may run apart from the other of its pair, and lie near others (m). */
const endsM = 0.1;
const stepM = 0.005;
/** So far beyond the edge wires of two sides of a rounded corner have crossed if they do (m). */
const beyondM = 0.2;

/** Told of the first of the pair only: somewhere along it the other is not beside it. */
function isParted({ wire, route }: Laid, laid: readonly Laid[]): boolean {
  const mate = mateOf(wire, laid);
  if (!mate || mate.wire.id < wire.id) return false;
  return pointsAlong(route).some((p) => toRoute(p, mate.route) > togetherM);
}

/** Points along a route, those near its ends in terminals left out. */
function pointsAlong({ points, lengthM }: Route): Point[] {
  const found: Point[] = [];
  let goneM = 0;
  for (const [at, b] of points.entries()) {
    const a = points[at - 1] ?? b;
    const longM = distance(a, b);
    for (let m = 0; m < longM; m += stepM)
      if (goneM + m > endsM && goneM + m < lengthM - endsM)
        found.push({ xM: a.xM + (m / longM) * (b.xM - a.xM), yM: a.yM + (m / longM) * (b.yM - a.yM) });
    goneM += longM;
  }
  return found;
}

function toRoute({ xM, yM }: Point, route: Route): number {
  return Math.min(
    ...stretches(route).map(({ level, at, from, to }) => {
      const [along, across] = level ? [xM, yM] : [yM, xM];
      return Math.hypot(across - at, Math.max(0, from - along, along - to));
    }),
  );
}

function areTooNear(one: Laid, two: Laid): boolean {
  const needM = (one.wire.diameterM + two.wire.diameterM) / 2 - 1e-6;
  return stretches(one.route).some((a) =>
    stretches(two.route).some(
      (b) =>
        a.level === b.level &&
        Math.abs(a.at - b.at) < needM &&
        Math.min(a.to, b.to) - Math.max(a.from, b.from) > endsM,
    ),
  );
}

/** The two ends of every wire on parts and round the board: by that, the least of their crossings is told. */
export function berthsOf({ wires, barriers }: RoutingTask): (readonly [Berth, Berth])[] {
  const boxes = barriers.flatMap((one) => ('box' in one ? [one] : []));
  const berth = (end: RouteEnd): Berth => {
    // About the room outside, ends follow each other the other way round than about the board.
    if (!isPoint(end)) return { disc: 'outside', place: -sides.indexOf(end.exit) };
    const part = boxes.find(({ box }) => Math.abs(shareRound(box, end).offM) < 1e-6);
    return part
      ? { disc: `part ${part.id}`, place: Math.round(shareRound(part.box, end).share * 1e9) }
      : { disc: `end ${end.xM} ${end.yM}`, place: 0 };
  };
  return wires.map(({ from, to }) => [berth(from), berth(to)] as const);
}

/** How far round a box a point on its line stands, counter-clockwise from its lower left corner, and how far off the line. */
function shareRound(box: Box, point: Point): { share: number; offM: number } {
  const { minX, minY, maxX, maxY } = box;
  const { xM, yM } = point;
  const [w, h] = [maxX - minX, maxY - minY];
  const lines = [
    { offM: Math.abs(yM - minY), share: xM - minX },
    { offM: Math.abs(xM - maxX), share: w + yM - minY },
    { offM: Math.abs(yM - maxY), share: w + h + maxX - xM },
    { offM: Math.abs(xM - minX), share: 2 * w + h + maxY - yM },
  ];
  const [nearest = { offM: Infinity, share: 0 }] = lines.toSorted((a, b) => a.offM - b.offM);
  return { share: nearest.share, offM: nearest.offM + distanceToBox(point, box) };
}
