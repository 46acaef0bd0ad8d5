import type { PlanRoute } from '../../model/plan/index.ts';

/** A straight stretch of a loom: between its ends the same conductors lie in it. Metres on the board. */
export interface LoomStretch {
  readonly from: Place;
  readonly to: Place;
  /** The routes that lie in it. */
  readonly routes: readonly string[];
}

export interface Place {
  readonly xM: number;
  readonly yM: number;
}

/** A stretch of one route that runs level or upright. */
interface Run {
  readonly route: string;
  readonly nth: number;
  readonly level: boolean;
  /** Across its way: y of a level run. */
  readonly acrossM: number;
  readonly lowM: number;
  readonly highM: number;
}

/** Runs share a loom where they are no farther apart and beside each other for as long as this. */
const besideM = 0.03;
const togetherM = 0.012;

/**
 * Gathers routes into looms: runs that lie beside each other come onto one line, in their middle, and where the same
 * routes share it there is one stretch. Runs that are neither level nor upright stay by themselves.
 */
export function loomsOf(routes: readonly Pick<PlanRoute, 'wire' | 'points'>[]): Looms {
  const runs = routes.flatMap(runsOf);
  const lineOf = commonLines(runs);
  const moved = routes.map((route) => movedRoute(route, lineOf));
  return { stretches: stretchesOf(moved), ways: moved };
}

/** The looms of some routes. */
export interface Looms {
  readonly stretches: readonly LoomStretch[];
  /** The way of each route through its looms. */
  readonly ways: readonly LoomWay[];
}

export interface LoomWay {
  readonly route: string;
  readonly points: readonly Place[];
}

function runsOf({ wire, points }: Pick<PlanRoute, 'wire' | 'points'>): Run[] {
  return points.slice(1).flatMap((to, nth): Run[] => {
    const from = points[nth];
    if (!from) return [];
    const level = Math.abs(to.yM - from.yM) < 1e-6;
    if (!level && Math.abs(to.xM - from.xM) > 1e-6) return [];
    const [a, b] = level ? [from.xM, to.xM] : [from.yM, to.yM];
    const acrossM = level ? from.yM : from.xM;
    return [{ route: wire, nth, level, acrossM, lowM: Math.min(a, b), highM: Math.max(a, b) }];
  });
}

type LineOf = (route: string, nth: number) => number | null;

/** The line that each run comes to lie on: the middle of all that hang together beside each other. */
function commonLines(runs: readonly Run[]): LineOf {
  const parents = runs.map((_, index) => index);
  const rootOf = (index: number): number => {
    const parent = parents[index] ?? index;
    return parent === index ? index : rootOf(parent);
  };
  runs.forEach((a, i) => {
    for (let j = i + 1; j < runs.length; j += 1) {
      const b = runs[j];
      if (b && a.route !== b.route && liesBeside(a, b)) parents[rootOf(j)] = rootOf(i);
    }
  });
  const sums = new Map<number, { weight: number; sum: number }>();
  runs.forEach((run, index) => {
    const weight = run.highM - run.lowM + 1e-6;
    const known = sums.get(rootOf(index)) ?? { weight: 0, sum: 0 };
    sums.set(rootOf(index), { weight: known.weight + weight, sum: known.sum + weight * run.acrossM });
  });
  const lines = new Map(
    runs.map((run, index) => {
      const { weight, sum } = sums.get(rootOf(index)) ?? { weight: 1, sum: run.acrossM };
      return [`${run.route} ${run.nth}`, sum / weight];
    }),
  );
  return (route, nth) => lines.get(`${route} ${nth}`) ?? null;
}

function liesBeside(a: Run, b: Run): boolean {
  return (
    a.level === b.level &&
    Math.abs(a.acrossM - b.acrossM) <= besideM &&
    Math.min(a.highM, b.highM) - Math.max(a.lowM, b.lowM) >= togetherM
  );
}

/** A route with each of its runs on the line of its loom; its ends stay at the edges where they are. */
function movedRoute({ wire, points }: Pick<PlanRoute, 'wire' | 'points'>, lineOf: LineOf): LoomWay {
  const moved = points.map((point, index): Place => {
    const around = [index - 1, index].flatMap((nth) => {
      const [from, to] = [points[nth], points[nth + 1]];
      const line = lineOf(wire, nth);
      if (!from || !to || line === null) return [];
      return [{ level: Math.abs(to.yM - from.yM) < 1e-6, line }];
    });
    const level = around.find((each) => each.level)?.line;
    const upright = around.find((each) => !each.level)?.line;
    return { xM: rounded(upright ?? point.xM), yM: rounded(level ?? point.yM) };
  });
  return { route: wire, points: moved };
}

/** To a tenth of a millimetre, so that what lies on one line is found there. */
function rounded(valueM: number): number {
  return Math.round(valueM * 1e4) / 1e4;
}

/** Every stretch between two places where a loom gains or loses a route, with the routes in it. */
function stretchesOf(routes: readonly LoomWay[]): LoomStretch[] {
  const breaks = { level: new Map<number, Set<number>>(), upright: new Map<number, Set<number>>() };
  for (const { points } of routes)
    for (const { xM, yM } of points) {
      breaks.level.set(yM, (breaks.level.get(yM) ?? new Set()).add(xM));
      breaks.upright.set(xM, (breaks.upright.get(xM) ?? new Set()).add(yM));
    }
  const pieces = new Map<string, { from: Place; to: Place; routes: Set<string> }>();
  for (const { route, points } of routes)
    points.slice(1).forEach((to, index) => {
      const from = points[index];
      if (!from || (from.xM === to.xM && from.yM === to.yM)) return;
      for (const [a, b] of brokenAt(from, to, breaks)) {
        const [low, high] = a.xM < b.xM || (a.xM === b.xM && a.yM < b.yM) ? [a, b] : [b, a];
        const key = `${low.xM} ${low.yM} ${high.xM} ${high.yM}`;
        const piece = pieces.get(key) ?? { from: low, to: high, routes: new Set<string>() };
        piece.routes.add(route);
        pieces.set(key, piece);
      }
    });
  const all = [...pieces.values()].map(({ from, to, routes: own }) => ({
    from,
    to,
    routes: [...own].sort(),
  }));
  return joined(all);
}

function brokenAt(
  from: Place,
  to: Place,
  breaks: { level: Map<number, Set<number>>; upright: Map<number, Set<number>> },
): [Place, Place][] {
  const level = from.yM === to.yM;
  if (!level && from.xM !== to.xM) return [[from, to]];
  const [start, end] = level ? [from.xM, to.xM] : [from.yM, to.yM];
  const all = [...((level ? breaks.level.get(from.yM) : breaks.upright.get(from.xM)) ?? [])];
  const inner = all.filter((each) => each > Math.min(start, end) && each < Math.max(start, end));
  const stops = [start, ...inner.sort((a, b) => (a - b) * Math.sign(end - start)), end];
  const place = (along: number): Place => (level ? { xM: along, yM: from.yM } : { xM: from.xM, yM: along });
  return stops.slice(1).map((stop, index) => [place(stops[index] ?? stop), place(stop)]);
}

/** Stretches that follow each other on one line with the same routes are one. */
function joined(stretches: readonly LoomStretch[]): LoomStretch[] {
  const isLevel = ({ from, to }: LoomStretch): boolean => from.yM === to.yM;
  const lineKey = (one: LoomStretch): string =>
    `${isLevel(one) ? `level ${one.from.yM}` : `upright ${one.from.xM}`} ${one.routes.join('|')}`;
  const start = ({ from }: LoomStretch): number => from.xM + from.yM;
  const groups = new Map<string, LoomStretch[]>();
  for (const one of stretches) groups.set(lineKey(one), [...(groups.get(lineKey(one)) ?? []), one]);
  return [...groups.values()].flatMap((group) => {
    const line: LoomStretch[] = [];
    for (const one of group.toSorted((a, b) => start(a) - start(b))) {
      const last = line.at(-1);
      if (last && last.to.xM === one.from.xM && last.to.yM === one.from.yM)
        line[line.length - 1] = { ...last, to: one.to };
      else line.push(one);
    }
    return line;
  });
}
