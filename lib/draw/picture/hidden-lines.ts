import { type Point, type Ring, turn } from '../../board/shape/point.ts';
import { between, type SpacePoint, seen } from './axonometry.ts';
import { type Face, facesOf, type Prism, type Stroke } from './prism.ts';

/** What is nearer by less stands on what it is held against, metres. */
const touchM = 1e-6;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

interface BoxedFace extends Face {
  readonly box: Box;
}

/** Bodies that hide what is behind them. */
export interface Hiding {
  /** The pieces of a stroke that no body hides, in order. */
  readonly shown: (stroke: Stroke) => readonly Stroke[];
  /** True where no body hides a place. */
  readonly isSeen: (place: SpacePoint) => boolean;
}

/**
 * Takes away hidden lines exactly: a stroke is cut where it passes the outline of a face as it is seen, and where it
 * passes through the plane of the face; each piece inside the outline and behind the plane is hidden. No order of
 * painting is needed, so bodies may stand in each other's way in rings.
 */
export function hidingOf(prisms: readonly Prism[]): Hiding {
  const faces = prisms.flatMap(facesOf).map((face) => ({ ...face, box: boxOf(face.rings.flat()) }));
  return {
    shown: (stroke) => shownOf(stroke, faces),
    isSeen: (place) => faces.every((face) => !insideRings(face.rings, seen(place)) || !isBehind(face, place)),
  };
}

function boxOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(({ xM }) => xM), points.map(({ yM }) => yM)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

function isBehind({ off, towards }: Face, place: SpacePoint): boolean {
  return -off(place) / towards > touchM;
}

/** From and to, as shares of a stroke. */
type Span = readonly [from: number, to: number];

function shownOf(stroke: Stroke, faces: readonly BoxedFace[]): Stroke[] {
  const [from, to] = [seen(stroke.from), seen(stroke.to)];
  const own = boxOf([from, to]);
  const hidden = faces
    .filter(
      ({ box }) => box.left < own.right && own.left < box.right && box.low < own.high && own.low < box.high,
    )
    .flatMap((face) => hiddenSpans(stroke, from, to, face));
  return gapsBetween(hidden).map(([start, end]) => ({
    from: between(stroke.from, stroke.to, start),
    to: between(stroke.from, stroke.to, end),
  }));
}

/** Where a stroke lies behind a face. */
function hiddenSpans(stroke: Stroke, from: Point, to: Point, face: Face): Span[] {
  const [first, last] = [face.off(stroke.from), face.off(stroke.to)];
  const hides = -Math.min(first, last) / face.towards > touchM;
  if (!hides) return [];
  const pierced = first * last < 0 ? [first / (first - last)] : [];
  const crossed = face.rings.flatMap((ring) => crossingsOf(ring, from, to));
  const cuts = [0, ...[...pierced, ...crossed].toSorted((a, b) => a - b), 1];
  return cuts.slice(1).flatMap((end, index): Span[] => {
    const start = cuts[index] ?? 0;
    if (end - start < 1e-9) return [];
    const middle = between(stroke.from, stroke.to, (start + end) / 2);
    return isBehind(face, middle) && insideRings(face.rings, seen(middle)) ? [[start, end]] : [];
  });
}

/** Where a stroke passes the edges of a ring, as shares of it. */
function crossingsOf(ring: Ring, from: Point, to: Point): number[] {
  return ring.flatMap((a, index) => {
    const b = ring[(index + 1) % ring.length];
    if (!b) return [];
    const [sideA, sideB] = [turn(from, to, a), turn(from, to, b)];
    if (sideA === sideB || sideA * sideB > 0) return [];
    const [start, end] = [turn(a, b, from), turn(a, b, to)];
    const share = start / (start - end);
    return share > 0 && share < 1 ? [share] : [];
  });
}

/** True inside an odd number of rings: in a face, and not in an opening of it. */
function insideRings(rings: readonly Ring[], { xM, yM }: Point): boolean {
  let inside = false;
  for (const ring of rings)
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length];
      if (!b || a.yM > yM === b.yM > yM) return;
      if (xM < a.xM + ((b.xM - a.xM) * (yM - a.yM)) / (b.yM - a.yM)) inside = !inside;
    });
  return inside;
}

/** What spans leave free between 0 and 1. */
function gapsBetween(spans: readonly Span[]): Span[] {
  const gaps: Span[] = [];
  let reached = 0;
  for (const [start, end] of spans.toSorted(([a], [b]) => a - b)) {
    if (start > reached + 1e-9) gaps.push([reached, start]);
    reached = Math.max(reached, end);
  }
  return reached < 1 - 1e-9 ? [...gaps, [reached, 1]] : gaps;
}
