import { type CornerName, cornerNames, type EdgeName, edgeNames, type Outline } from '../../model/outline.ts';
import type { Phrase } from '../../model/phrase.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import {
  type Box,
  boxOf,
  distance,
  edgesOf,
  type Point,
  type Ring,
  ringArea,
  segmentsCross,
} from './point.ts';

/** The base shape of a board, counter-clockwise, with its box; corners keep the numbers they were written with. */
export interface Base {
  readonly ring: Ring;
  /** The written number of each corner of `ring`, counted from 1. */
  readonly numbers: readonly number[];
  readonly box: Box;
}

/** The base shape that an outline starts from, or what is wrong with it. */
export function baseOf(outline: Outline): Base | BoardRemark {
  const written = outline.rectangle
    ? rectangle(outline.rectangle.width, outline.rectangle.height)
    : (outline.polygon ?? []).map(([xM, yM]): Point => ({ xM, yM }));
  const numbers = written.map((_, at) => at + 1);
  const fault = baseFault(written);
  if (fault) return fault;
  const clockwise = ringArea(written) < 0;
  const ring = clockwise ? written.toReversed() : written;
  return { ring, numbers: clockwise ? numbers.toReversed() : numbers, box: boxOf(ring) };
}

function rectangle(widthM: number, heightM: number): Point[] {
  const at = (xM: number, yM: number) => ({ xM, yM });
  return [at(0, 0), at(widthM, 0), at(widthM, heightM), at(0, heightM)];
}

function baseFault(ring: Ring): BoardRemark | null {
  const problem = (
    rule: 'outline-edge-without-length' | 'outline-crosses-itself' | 'outline-without-area',
    message: Phrase,
    remedy: string,
  ): BoardRemark => ({
    rule,
    level: 'stop',
    of: [],
    message,
    remedy,
  });
  const edges = edgesOf(ring);
  const short = edges.findIndex(([a, b]) => distance(a, b) < 1e-6);
  if (short >= 0)
    return problem(
      'outline-edge-without-length',
      `edge ${short + 1} of the base shape has no length`,
      'measure the two corners again',
    );
  const crossing = firstCrossing(ring);
  if (crossing)
    return problem(
      'outline-crosses-itself',
      `edges ${crossing[0]} and ${crossing[1]} of the base shape meet`,
      'give the corners in order round the board',
    );
  if (edges.length < 3 || Math.abs(ringArea(ring)) < 1e-6)
    return problem(
      'outline-without-area',
      phrase`the base shape encloses ${length('size', Math.sqrt(Math.abs(ringArea(ring))))} square at most`,
      'give a rectangle or at least three corners that are not in line',
    );
  return null;
}

/** The numbers of two edges, not neighbours, that cross or touch; or of two neighbours that fold back. */
function firstCrossing(ring: Ring): readonly [number, number] | null {
  const edges = edgesOf(ring);
  for (const [i, [a, b]] of edges.entries())
    for (const [j, [c, d]] of edges.entries()) {
      if (j <= i) continue;
      const neighbours = j === i + 1 || (i === 0 && j === edges.length - 1);
      if (neighbours ? foldsBack(ring, j === i + 1 ? j : 0) : meets(a, b, c, d)) return [i + 1, j + 1];
    }
  return null;
}

function meets(a: Point, b: Point, c: Point, d: Point): boolean {
  const near = (p: Point, s: Point, t: Point) => distance(p, s) + distance(p, t) - distance(s, t) < 1e-9;
  return segmentsCross(a, b, c, d) || near(a, c, d) || near(b, c, d) || near(c, a, b) || near(d, a, b);
}

/** True where the two edges at a corner lie on each other. */
function foldsBack(ring: Ring, at: number): boolean {
  const [before, here, after] = [at - 1, at, at + 1].map((i) => ring[(i + ring.length) % ring.length]);
  if (!before || !here || !after) return false;
  const [ux, uy, vx, vy] = [before.xM - here.xM, before.yM - here.yM, after.xM - here.xM, after.yM - here.yM];
  return Math.abs(ux * vy - uy * vx) < 1e-12 && ux * vx + uy * vy > 0;
}

const leftOrRight: Record<CornerName, 'minX' | 'maxX'> = {
  'lower-left': 'minX',
  'upper-left': 'minX',
  'lower-right': 'maxX',
  'upper-right': 'maxX',
};
const lowOrHigh: Record<CornerName, 'minY' | 'maxY'> = {
  'lower-left': 'minY',
  'lower-right': 'minY',
  'upper-left': 'maxY',
  'upper-right': 'maxY',
};

/** The point of a box's corner. */
export function boxCorner(box: Box, corner: CornerName): Point {
  return { xM: box[leftOrRight[corner]], yM: box[lowOrHigh[corner]] };
}

/** A measured position from a corner (inwards), or from the datum, as a point of the board. */
export function measured(base: Base, from: CornerName | undefined, xM: number, yM: number): Point {
  if (!from) return { xM, yM };
  const corner = boxCorner(base.box, from);
  return {
    xM: corner.xM + (leftOrRight[from] === 'minX' ? xM : -xM),
    yM: corner.yM + (lowOrHigh[from] === 'minY' ? yM : -yM),
  };
}

/** Place in `ring` of a corner called by name or number; -1 where there is none. */
export function cornerIndex(base: Base, corner: CornerName | number): number {
  if (typeof corner === 'number') return base.numbers.indexOf(corner);
  const target = boxCorner(base.box, corner);
  return base.ring.findIndex((p) => distance(p, target) < 1e-6);
}

/** Place in `ring` of the edge called by name (the only one on that side of the box) or number; -1 where none is. */
export function edgeIndex(base: Base, edge: EdgeName | number): number {
  if (typeof edge === 'number') {
    const [one, two] = [base.numbers.indexOf(edge), base.numbers.indexOf((edge % base.ring.length) + 1)];
    if (one < 0 || two < 0) return -1;
    return (one + 1) % base.ring.length === two ? one : two;
  }
  const on = sideTest(base.box, edge);
  const found = edgesOf(base.ring).flatMap(([a, b], at) => (on(a) && on(b) ? [at] : []));
  return found.length === 1 ? (found[0] ?? -1) : -1;
}

function sideTest(box: Box, edge: EdgeName): (p: Point) => boolean {
  const near = (one: number, other: number) => Math.abs(one - other) < 1e-6;
  const tests: Record<EdgeName, (p: Point) => boolean> = {
    bottom: (p) => near(p.yM, box.minY),
    top: (p) => near(p.yM, box.maxY),
    left: (p) => near(p.xM, box.minX),
    right: (p) => near(p.xM, box.maxX),
  };
  return tests[edge];
}

/** How the corners and edges of this base can be called, for a message. */
export function callable(base: Base): string {
  return `${cornerNames.join(', ')} and ${edgeNames.join(', ')} where the base has them, or numbers 1 to ${base.ring.length}`;
}
