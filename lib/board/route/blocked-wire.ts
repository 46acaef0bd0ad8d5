import { type BoardRemark, length, phrase } from '../remark.ts';
import { type Point, pointToSegment } from '../shape/point.ts';
import type { Layer } from './laying.ts';
import { isPoint, outFrom, type Route, type RouteEnd, type RouteWire, stretches } from './route.ts';
import { type Barrier, barriersBefore, toBarrier } from './track-grid.ts';
import type { Laid } from './tracks.ts';

/** A wire that found no way: what stands on the way that goes through the least of parts, fixings and other wires. */
export function blockedWire(
  layer: Layer,
  wire: RouteWire,
  laid: readonly Laid[],
  barriers: readonly Barrier[],
): BoardRemark {
  const route = layer.layThrough(wire, laid, 1000);
  const onWay = route ? standsOn(layer, route, wire, laid, barriers) : [];
  const inWay = [...new Set([...standsBefore(layer, wire, barriers), ...onWay])];
  const what = inWay.length > 0 ? inWay.join(', ') : 'the outline of the board';
  return {
    rule: 'wire-without-way',
    level: 'stop',
    of: [wire.id, ...inWay],
    message: phrase`${wire.id}: no way is left for ${length('size', wire.diameterM)} of wire; in the way: ${what}`,
    remedy: 'move what stands in the way, raise it on spacers, or bridge it',
  };
}

/** What closes the way straight out of a terminal of the wire. */
function standsBefore(
  { rules: { clearanceM }, grid }: Layer,
  { from, to, diameterM }: RouteWire,
  barriers: readonly Barrier[],
): string[] {
  const needM = diameterM / 2 + clearanceM;
  return [from, to].filter(isPoint).flatMap((end) => {
    const out = outFrom(end, end.faces, needM + grid.stepM);
    return barriersBefore(barriers, end, out, needM).map(({ id }) => id);
  });
}

function standsOn(
  { rules: { clearanceM }, grid }: Layer,
  route: Route,
  wire: RouteWire,
  laid: readonly Laid[],
  barriers: readonly Barrier[],
): string[] {
  const reachM = wire.diameterM / 2 + clearanceM;
  const inner = samples(route, grid.stepM / 2).filter(
    (p) => !isNear(p, wire.from, reachM * 2) && !isNear(p, wire.to, reachM * 2),
  );
  const parts = barriers.filter((one) => inner.some((p) => toBarrier(p, one) < reachM));
  const wires = laid.filter((one) => touches(route, one, wire.diameterM));
  return [...new Set([...parts.map(({ id }) => id), ...wires.map((one) => one.wire.id)])];
}

function isNear(p: Point, end: RouteEnd, reachM: number): boolean {
  return isPoint(end) && Math.hypot(p.xM - end.xM, p.yM - end.yM) < reachM;
}

function samples({ points }: Route, stepM: number): Point[] {
  return points.slice(1).flatMap((b, at) => {
    const a = points[at] ?? b;
    const pieces = Math.max(1, Math.ceil(Math.hypot(b.xM - a.xM, b.yM - a.yM) / stepM));
    return Array.from({ length: pieces + 1 }, (_, k) => ({
      xM: a.xM + (k / pieces) * (b.xM - a.xM),
      yM: a.yM + (k / pieces) * (b.yM - a.yM),
    }));
  });
}

/** True where a route runs in the track of a laid wire: side by side nearer than their radii, or through a bend of it. */
export function touches(route: Route, { wire, route: other }: Laid, diameterM: number): boolean {
  const spacingM = (diameterM + wire.diameterM) / 2;
  const bends = other.points;
  return stretches(route).some((one) => {
    const ends = one.level
      ? ([
          { xM: one.from, yM: one.at },
          { xM: one.to, yM: one.at },
        ] as const)
      : ([
          { xM: one.at, yM: one.from },
          { xM: one.at, yM: one.to },
        ] as const);
    if (bends.some((p) => pointToSegment(p, ...ends) < spacingM - 1e-9)) return true;
    return stretches(other).some(
      (two) =>
        one.level === two.level &&
        Math.abs(one.at - two.at) < spacingM - 1e-9 &&
        one.from < two.to &&
        two.from < one.to,
    );
  });
}
