import type { Arc, Loop, Vertex } from './bulge.ts';
import { distance, type Point, type Ring } from './point.ts';

/** A circle that edges of a flattened ring may belong to. */
export type Circle = Pick<Arc, 'centre' | 'radiusM'>;

/**
 * Gives a flattened ring its arcs back: neighbouring chords of one known circle that turn the same way
 * become one edge with a bulge. `toleranceM` is the one that the arcs were flattened with.
 */
export function recoverArcs(ring: Ring, circles: readonly Circle[], toleranceM: number): Loop {
  const owner = ring.map((from, at) => circleOf(from, next(ring, at), circles, toleranceM));
  const first = owner.findIndex((mine, at) => mine !== owner[(at + ring.length - 1) % ring.length]);
  const start = Math.max(0, first);
  const loop: Vertex[] = [];
  for (let done = 0; done < ring.length; ) {
    const at = (start + done) % ring.length;
    const mine = owner[at] ?? null;
    const run = mine ? runLength(owner, at, ring.length - done) : 1;
    loop.push(...(mine ? arcVertices(ring, at, run, mine) : corner(ring[at])));
    done += run;
  }
  return loop;
}

function next(ring: Ring, at: number): Point {
  return ring[(at + 1) % ring.length] ?? { xM: 0, yM: 0 };
}

function corner(point: Point | undefined): Vertex[] {
  return point ? [{ ...point, bulge: 0 }] : [];
}

/** The circle that a chord belongs to: both ends on it, and the chord no longer than flattening makes them. */
function circleOf(from: Point, to: Point, circles: readonly Circle[], toleranceM: number): Circle | null {
  const on = (p: Point, { centre, radiusM }: Circle) =>
    Math.abs(distance(p, centre) - radiusM) < 1.5 * toleranceM;
  const chordM = distance(from, to);
  return (
    circles.find((circle) => {
      const longestM = 2 * Math.sqrt(2 * circle.radiusM * toleranceM) * 1.01;
      return chordM <= longestM && on(from, circle) && on(to, circle);
    }) ?? null
  );
}

function runLength(owner: readonly (Circle | null)[], at: number, most: number): number {
  let run = 1;
  while (run < most && owner[(at + run) % owner.length] === owner[at]) run += 1;
  return run;
}

/** The vertices of a run of chords; one that goes more than half round is cut in two. */
function arcVertices(ring: Ring, at: number, run: number, circle: Circle): Vertex[] {
  const point = (step: number) => ring[(at + step) % ring.length] ?? circle.centre;
  const sweep = (from: number, to: number) => {
    let sum = 0;
    for (let step = from; step < to; step += 1) sum += angleAt(circle.centre, point(step), point(step + 1));
    return sum;
  };
  const whole = sweep(0, run);
  const cut = Math.abs(whole) > Math.PI * 1.001 && run > 1 ? Math.floor(run / 2) : run;
  const spans = cut === run ? [[0, run] as const] : [[0, cut] as const, [cut, run] as const];
  return spans.map(([from, to]) => ({ ...point(from), bulge: Math.tan(sweep(from, to) / 4) }));
}

/** The signed angle at a centre between two points, radians. */
function angleAt(centre: Point, from: Point, to: Point): number {
  const [ax, ay] = [from.xM - centre.xM, from.yM - centre.yM];
  const [bx, by] = [to.xM - centre.xM, to.yM - centre.yM];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}
