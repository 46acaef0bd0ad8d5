import type { Loop, Vertex } from '../shape/bulge.ts';
import type { Point } from '../shape/point.ts';

/** How far a cut at an edge reaches past it, so that no sliver is left by rounding; metres. */
export const overcutM = 0.00005;

/** A corner of the base and the directions of its two edges, away from it. */
export interface CornerFrame {
  readonly at: Point;
  /** Unit vectors to the corner before and to the corner after. */
  readonly back: Point;
  readonly ahead: Point;
  readonly backM: number;
  readonly aheadM: number;
}

const straight = (p: Point): Vertex => ({ ...p, bulge: 0 });

/** `at` plus a steps of `u` plus b steps of `v`. */
function along(at: Point, u: Point, a: number, v: Point, b: number): Point {
  return { xM: at.xM + a * u.xM + b * v.xM, yM: at.yM + a * u.yM + b * v.yM };
}

/** What a straight cut across a corner takes away. */
export function chamferLoop({ at, back, ahead }: CornerFrame, backM: number, aheadM: number): Loop {
  return [
    along(at, back, backM, ahead, 0),
    along(at, back, backM, ahead, -overcutM),
    along(at, back, -overcutM, ahead, -overcutM),
    along(at, back, -overcutM, ahead, aheadM),
    along(at, back, 0, ahead, aheadM),
  ].map(straight);
}

/** What rounding a corner takes away; `tangentM` from the corner to where the arc begins on each edge. */
export function roundingLoop(frame: CornerFrame, tangentM: number, insideRad: number): Loop {
  const bulge = -Math.tan((Math.PI - insideRad) / 4);
  return chamferLoop(frame, tangentM, tangentM).map((vertex, at) =>
    at === 4 ? { ...vertex, bulge } : vertex,
  );
}

/** What a step takes out of a corner. */
export function stepLoop({ at, back, ahead }: CornerFrame, backM: number, aheadM: number): Loop {
  return [
    along(at, back, backM, ahead, aheadM),
    along(at, back, backM, ahead, -overcutM),
    along(at, back, -overcutM, ahead, -overcutM),
    along(at, back, -overcutM, ahead, aheadM),
  ].map(straight);
}

/** What a notch takes out of the edge from `a` along `u` (inwards `n`), from `startM` to `endM` along it. */
export function notchLoop(a: Point, u: Point, n: Point, startM: number, endM: number, depthM: number): Loop {
  return [
    along(a, u, startM, n, -overcutM),
    along(a, u, endM, n, -overcutM),
    along(a, u, endM, n, depthM),
    along(a, u, startM, n, depthM),
  ].map(straight);
}

/** A slot with round ends: `lengthM` over all, turned counter-clockwise from level. */
export function slotLoop(centre: Point, lengthM: number, widthM: number, turnDeg: number): Loop {
  const angle = (turnDeg * Math.PI) / 180;
  const u = { xM: Math.cos(angle), yM: Math.sin(angle) };
  const v = { xM: -u.yM, yM: u.xM };
  const [half, side] = [(lengthM - widthM) / 2, widthM / 2];
  return [
    { ...along(centre, u, -half, v, -side), bulge: 0 },
    { ...along(centre, u, half, v, -side), bulge: 1 },
    { ...along(centre, u, half, v, side), bulge: 0 },
    { ...along(centre, u, -half, v, side), bulge: 1 },
  ];
}

/** An upright rectangle with corners of radius `radiusM` (0: square). */
export function windowLoop(lowerLeft: Point, widthM: number, heightM: number, radiusM: number): Loop {
  const quarter = Math.tan(Math.PI / 8);
  const [w, h, r] = [widthM, heightM, radiusM];
  const at = (x: number, y: number, bulge: number): Vertex => ({
    xM: lowerLeft.xM + x,
    yM: lowerLeft.yM + y,
    bulge,
  });
  if (r === 0) return [at(0, 0, 0), at(w, 0, 0), at(w, h, 0), at(0, h, 0)];
  return [
    at(r, 0, 0),
    at(w - r, 0, quarter),
    at(w, r, 0),
    at(w, h - r, quarter),
    at(w - r, h, 0),
    at(r, h, quarter),
    at(0, h - r, 0),
    at(0, r, quarter),
  ];
}
