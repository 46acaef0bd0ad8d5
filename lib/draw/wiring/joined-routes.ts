import type { BuildPlan, PlanJoint } from '../../model/plan/index.ts';
import { directionOf, distanceMm } from '../bent-line.ts';
import { at, type PaperPoint } from '../paper.ts';
import { lengthOnPaper, type PlanView } from '../sheet/scale.ts';
import type { LaidRoute, Strand } from './strands.ts';

/** Routes with each joined conductor from its joint on, and where the joints are. */
export interface JoinedRoutes {
  readonly routes: readonly LaidRoute[];
  readonly joints: readonly PaperPoint[];
}

/**
 * Routes whose joined conductors do not enter the port: each begins on the conductor that it is joined to, as far before
 * the port as the plan tells. Only what is joined on the board is: where the port is elsewhere, in a sheath, or where the
 * wire is shorter than that, nothing is shown.
 */
export function joinedRoutes(
  { joints = [] }: Pick<BuildPlan, 'joints'>,
  view: PlanView,
  routes: readonly LaidRoute[],
): JoinedRoutes {
  const shown: PaperPoint[] = [];
  let drawn = routes;
  for (const joint of joints) {
    const trunk = fromPort(drawn, joint.trunk, joint);
    const branch = fromPort(drawn, joint.id, joint);
    const point = trunk && pointAlong(trunk.points, lengthOnPaper(view, joint.distanceM));
    if (!branch || !point) continue;
    const points = [point, ...pastNearest(branch.points, point)];
    drawn = drawn.map((route) => withStrand(route, branch.strand, branch.turned ? points.reverse() : points));
    shown.push(point);
  }
  return { routes: drawn, joints: shown };
}

/** A conductor with its line from a port on. */
interface FromPort {
  readonly strand: Strand;
  readonly points: readonly PaperPoint[];
  readonly turned: boolean;
}

/** How near the end of a line lies to its port, millimetres of paper. */
const atPortMm = 0.5;

function fromPort(
  routes: readonly LaidRoute[],
  wire: string,
  { terminal }: Pick<PlanJoint, 'terminal'>,
): FromPort | null {
  for (const { ends, strands } of routes) {
    const port = ends.find(
      (end) => end.wire.id === wire && `${end.onBoard.item.id}.${end.terminal}` === terminal,
    )?.point;
    const strand = strands.find(({ subject, letters }) => subject === wire && letters !== null);
    const [first, last] = [strand?.points[0], strand?.points.at(-1)];
    if (!port || !strand || !first || !last) continue;
    if (distanceMm(first, port) < atPortMm) return { strand, points: strand.points, turned: false };
    if (distanceMm(last, port) < atPortMm)
      return { strand, points: strand.points.toReversed(), turned: true };
  }
  return null;
}

/** The point so far along a line; null where it is no longer than that. */
function pointAlong(points: readonly PaperPoint[], lengthMm: number): PaperPoint | null {
  let leftMm = lengthMm;
  for (const [index, to] of points.slice(1).entries()) {
    const from = points[index];
    const away = directionOf(from, to);
    if (!from || !away) continue;
    const longMm = distanceMm(from, to);
    if (leftMm < longMm) return at(from.xMm + away.xMm * leftMm, from.yMm + away.yMm * leftMm);
    leftMm -= longMm;
  }
  return null;
}

/** The rest of a line from where it passes nearest to a point. */
function pastNearest(points: readonly PaperPoint[], point: PaperPoint): PaperPoint[] {
  const feet = points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from ? [{ foot: nearestOn(from, to, point), after: index + 1 }] : [];
  });
  const [nearest] = feet.toSorted((a, b) => distanceMm(a.foot, point) - distanceMm(b.foot, point));
  return nearest ? [nearest.foot, ...points.slice(nearest.after)] : [...points];
}

function nearestOn(from: PaperPoint, to: PaperPoint, point: PaperPoint): PaperPoint {
  const away = directionOf(from, to);
  if (!away) return from;
  const alongMm = (point.xMm - from.xMm) * away.xMm + (point.yMm - from.yMm) * away.yMm;
  const keptMm = Math.min(distanceMm(from, to), Math.max(0, alongMm));
  return at(from.xMm + away.xMm * keptMm, from.yMm + away.yMm * keptMm);
}

function withStrand(route: LaidRoute, strand: Strand, points: readonly PaperPoint[]): LaidRoute {
  if (!route.strands.includes(strand)) return route;
  return { ...route, strands: route.strands.map((one) => (one === strand ? { ...one, points } : one)) };
}
