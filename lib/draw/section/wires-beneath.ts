import type { Point } from '../../board/shape/point.ts';
import type { BuildPlan, PlanBoard, PlanPlacement, PlanRoute } from '../../model/plan/index.ts';
import { wiresAlong } from '../wiring/route-ends.ts';
import { wireDiameterM } from '../wiring/true-sizes.ts';

/** A stroke of a route below a raised part, with the conductors that lie along it. */
export interface PassingWire {
  readonly labels: readonly string[];
  /** The ends of what lies below the part. */
  readonly from: Point;
  readonly to: Point;
  readonly diameterM: number;
}

/** What stands and what runs below a raised part. */
export interface Beneath {
  readonly placements: readonly PlanPlacement[];
  readonly wires: readonly PassingWire[];
}

type Footprint = Pick<PlanPlacement, 'xM' | 'yM' | 'widthM' | 'depthM'>;

/** Everything below a raised part: whatever stands lower within its footprint, and each stroke of a route through it. */
export function beneathOf(plan: BuildPlan, board: PlanBoard, upper: PlanPlacement): Beneath {
  const placements = board.placements.filter(
    (lower) => lower.item !== upper.item && lower.raisedM < upper.raisedM && footprintsMeet(lower, upper),
  );
  const wires = board.routes.flatMap((route) => {
    const along = wiresAlong(plan, route);
    const widths = along.map((wire) => wireDiameterM(wire) ?? 0);
    const labels = along.map(({ label }) => label);
    return strokesIn(route, upper).map((stroke) => ({
      ...stroke,
      labels,
      diameterM: Math.max(0, ...widths),
    }));
  });
  return { placements, wires };
}

function footprintsMeet(a: Footprint, b: Footprint): boolean {
  return (
    a.xM < b.xM + b.widthM - sameM &&
    b.xM < a.xM + a.widthM - sameM &&
    a.yM < b.yM + b.depthM - sameM &&
    b.yM < a.yM + a.depthM - sameM
  );
}

/** A shorter overlap is a touch, metres. */
const sameM = 0.0005;

/** The strokes of a route inside a footprint, cut at its edges (after Liang and Barsky). */
function strokesIn(
  { points }: PlanRoute,
  { xM, yM, widthM, depthM }: Footprint,
): { from: Point; to: Point }[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    if (!from) return [];
    const [dx, dy] = [to.xM - from.xM, to.yM - from.yM];
    const limits = [
      ...sharesBetween(from.xM, dx, xM, xM + widthM),
      ...sharesBetween(from.yM, dy, yM, yM + depthM),
    ];
    const enters = Math.max(0, ...limits.map(([first]) => first));
    const leaves = Math.min(1, ...limits.map(([, last]) => last));
    if ((leaves - enters) * Math.hypot(dx, dy) <= sameM) return [];
    const at = (share: number): Point => ({ xM: from.xM + dx * share, yM: from.yM + dy * share });
    return [{ from: at(enters), to: at(leaves) }];
  });
}

/** From which to which share of a stroke it lies between two limits along one axis. */
function sharesBetween(
  start: number,
  change: number,
  low: number,
  high: number,
): (readonly [number, number])[] {
  if (Math.abs(change) < 1e-12) return start > low && start < high ? [] : [[1, 0]];
  const [a, b] = [(low - start) / change, (high - start) / change];
  return [[Math.min(a, b), Math.max(a, b)]];
}
