import { distance, type Point, type Ring } from './point.ts';

/**
 * A corner of a loop with arcs. `bulge` belongs to the edge from this corner to the next: the tangent of a
 * quarter of the arc's angle, above zero where the arc runs counter-clockwise, 0 for a straight edge (the
 * meaning of group code 42 in the DXF reference).
 */
export interface Vertex extends Point {
  readonly bulge: number;
}

/** A closed run of straight and round edges. */
export type Loop = readonly Vertex[];

/** The arc of one edge: centre, radius, and the angle it sweeps (above zero counter-clockwise), radians. */
export interface Arc {
  readonly centre: Point;
  readonly radiusM: number;
  readonly startRad: number;
  readonly sweepRad: number;
}

/** The edges of a loop: from, to, and the bulge between. */
export function loopEdges(loop: Loop): readonly { from: Vertex; to: Vertex }[] {
  return loop.flatMap((from, at) => {
    const to = loop[(at + 1) % loop.length];
    return to ? [{ from, to }] : [];
  });
}

/** The arc of an edge, or null where it is straight or has no length. */
export function arcOf(from: Vertex, to: Point): Arc | null {
  const chordM = distance(from, to);
  if (from.bulge === 0 || chordM === 0) return null;
  const sweepRad = 4 * Math.atan(from.bulge);
  const radiusM = chordM / 2 / Math.abs(Math.sin(sweepRad / 2));
  // Height of the centre over the chord, to the left of travel for a counter-clockwise arc below a half turn.
  const rise = (chordM / 2) * ((1 - from.bulge ** 2) / (2 * from.bulge));
  const centre = {
    xM: (from.xM + to.xM) / 2 - (rise * (to.yM - from.yM)) / chordM,
    yM: (from.yM + to.yM) / 2 + (rise * (to.xM - from.xM)) / chordM,
  };
  return { centre, radiusM, startRad: Math.atan2(from.yM - centre.yM, from.xM - centre.xM), sweepRad };
}

/** A loop as straight edges: no chord stands further than `toleranceM` from its arc. */
export function flatten(loop: Loop, toleranceM: number): Ring {
  return loopEdges(loop).flatMap(({ from, to }) => {
    const start = { xM: from.xM, yM: from.yM };
    const arc = arcOf(from, to);
    return arc ? [start, ...arcPoints(arc, toleranceM)] : [start];
  });
}

/** The points that divide an arc into chords, its two ends left out. */
function arcPoints(arc: Arc, toleranceM: number): Point[] {
  const step = 2 * Math.acos(Math.max(0, 1 - toleranceM / arc.radiusM));
  const pieces = Math.max(2, Math.ceil(Math.abs(arc.sweepRad) / Math.max(step, 0.002)));
  return Array.from({ length: pieces - 1 }, (_, at) => {
    const angle = arc.startRad + (arc.sweepRad * (at + 1)) / pieces;
    return {
      xM: arc.centre.xM + arc.radiusM * Math.cos(angle),
      yM: arc.centre.yM + arc.radiusM * Math.sin(angle),
    };
  });
}

/** Area and first moments of a loop about the datum: m2 and m3, signed (above zero counter-clockwise). */
export interface Moments {
  readonly areaM2: number;
  readonly xM3: number;
  readonly yM3: number;
}

/**
 * Exact area and first moments of a loop with arcs: the shoelace formula for its chords, plus for each arc
 * the circular segment, area r^2 (a - sin a) / 2, its centroid 4 r sin(a/2)^3 / (3 (a - sin a)) from the
 * centre (standard tables of plane areas).
 */
export function momentsOf(loop: Loop): Moments {
  let [areaM2, xM3, yM3] = [0, 0, 0];
  for (const { from, to } of loopEdges(loop)) {
    const cross = from.xM * to.yM - to.xM * from.yM;
    areaM2 += cross / 2;
    xM3 += (cross * (from.xM + to.xM)) / 6;
    yM3 += (cross * (from.yM + to.yM)) / 6;
    const segment = segmentMoments(from, to);
    areaM2 += segment.areaM2;
    xM3 += segment.xM3;
    yM3 += segment.yM3;
  }
  return { areaM2, xM3, yM3 };
}

function segmentMoments(from: Vertex, to: Vertex): Moments {
  const arc = arcOf(from, to);
  if (!arc) return { areaM2: 0, xM3: 0, yM3: 0 };
  const { centre, radiusM, startRad, sweepRad } = arc;
  const areaM2 = (radiusM ** 2 * (sweepRad - Math.sin(sweepRad))) / 2;
  // Area times the centroid's distance from the centre; signed by the sweep like the area.
  const lever = (2 / 3) * radiusM ** 3 * Math.sin(sweepRad / 2) ** 3;
  const middle = startRad + sweepRad / 2;
  return {
    areaM2,
    xM3: areaM2 * centre.xM + lever * Math.cos(middle),
    yM3: areaM2 * centre.yM + lever * Math.sin(middle),
  };
}
