import type { BuildPlan, PlanBoard, PlanRoute } from '../../model/plan/index.ts';
import type { BoardWindow } from '../board/board-view.ts';
import { splitTerminal } from '../power/feed-tree.ts';
import { wiresAlong } from './route-ends.ts';
import { routeBendM } from './true-sizes.ts';

/** Where a board may be cut across x or y, and which of its parts are worth a sheet. */
export interface CutPlaces {
  /** What a cut at a place costs: lines that cross it, and far more each turn, end or line that it runs along. */
  readonly costAt: (axis: 'x' | 'y', atM: number) => number;
  /** The windows without those that show nothing of these routes but what another shows as well. */
  readonly needed: (windows: readonly BoardWindow[]) => readonly BoardWindow[];
}

/** A cut keeps so far from the end of a route, where tags stand, and from what runs beside it, metres. */
const [fromEndM, besideM] = [0.025, 0.01];
/** What a turn or an end at a cut counts for, in lines that merely cross it; and a line along which it runs. */
const [turnCost, alongCost] = [8, 20];

interface Line {
  readonly points: readonly { readonly xM: number; readonly yM: number }[];
  readonly bendM: number;
}

/** Where a board may be cut on the sheets of some of its routes. */
export function cutPlaces(plan: BuildPlan, board: PlanBoard, routes: readonly PlanRoute[]): CutPlaces {
  const lines = routes.map((route): Line => {
    return { points: route.points, bendM: routeBendM(plan, route, wiresAlong(plan, route)) };
  });
  const ends = new Set(
    routes
      .flatMap((route) => wiresAlong(plan, route))
      .flatMap(({ from, to }) => [splitTerminal(from).item, splitTerminal(to).item]),
  );
  const ended = board.placements.filter(({ item }) => ends.has(item));
  const spots = lines.flatMap(({ points }) => spotsAlong(points));
  return {
    costAt: (axis, atM) => lines.reduce((sum, line) => sum + lineCost(line, axis, atM), 0),
    needed: (windows) =>
      windows.reduce<readonly BoardWindow[]>((kept, window) => {
        const others = kept.filter((each) => each !== window);
        const isShown = ({ xM, yM }: { xM: number; yM: number }) =>
          others.some((each) => holds(each, xM, yM, xM, yM));
        const isDoubled =
          spots.filter(({ xM, yM }) => holds(window, xM, yM, xM, yM)).every(isShown) &&
          ended
            .map(({ xM, yM, widthM, depthM }) => [xM, yM, xM + widthM, yM + depthM] as const)
            .filter((box) => holds(window, ...box))
            .every((box) => others.some((each) => holds(each, ...box)));
        return isDoubled && others.length > 0 ? others : kept;
      }, windows),
  };
}

function holds(
  { fromXM, toXM, fromYM, toYM }: BoardWindow,
  leftM: number,
  lowM: number,
  rightM: number,
  highM: number,
): boolean {
  return leftM >= fromXM && rightM <= toXM && lowM >= fromYM && highM <= toYM;
}

function lineCost({ points, bendM }: Line, axis: 'x' | 'y', atM: number): number {
  const along = points.map(({ xM, yM }) => (axis === 'x' ? xM : yM));
  return along.reduce((sum, one, index) => {
    const [isEnd, offM] = [index === 0 || index === along.length - 1, Math.abs(one - atM)];
    const corner = offM < (isEnd ? fromEndM : bendM + besideM) ? turnCost : 0;
    const next = along[index + 1];
    if (next === undefined) return sum + corner;
    const isAlong = Math.abs(next - one) < 1e-6 && offM < besideM;
    const isCrossed = Math.min(one, next) < atM && Math.max(one, next) > atM;
    return sum + corner + (isAlong ? alongCost : 0) + (isCrossed ? 1 : 0);
  }, 0);
}

/** Points of a line at most so far apart, metres. */
const spotM = 0.005;

function spotsAlong(points: Line['points']): { xM: number; yM: number }[] {
  return points.flatMap((from, index) => {
    const to = points[index + 1];
    if (!to) return [from];
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.xM - from.xM, to.yM - from.yM) / spotM));
    return Array.from({ length: pieces }, (_, nth) => ({
      xM: from.xM + ((to.xM - from.xM) * nth) / pieces,
      yM: from.yM + ((to.yM - from.yM) * nth) / pieces,
    }));
  });
}
