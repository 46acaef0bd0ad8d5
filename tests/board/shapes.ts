import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { type Loop, loopEdges } from '../../lib/board/shape/bulge.ts';
import { type BoardShape, drawOutline } from '../../lib/board/shape/outline.ts';
import { type Outline, outlineSchema } from '../../lib/model/outline.ts';

/** A written length. */
export const mm = (value: number) => `${value} mm`;

/** Reads an outline as written; throws where it is not one. */
export function written(outline: unknown): Outline {
  return outlineSchema.parse(outline);
}

/** The shape of an outline that has no faults. */
export function shapeOf(outline: unknown): BoardShape {
  const { shape, faults } = drawOutline(written(outline));
  if (!shape || faults.length > 0) throw new Error(JSON.stringify(faults));
  return shape;
}

/** A loop with arcs in the other geometry library. */
export function flattenPolygon(...loops: Loop[]): Flatten.Polygon {
  const polygon = new Flatten.Polygon();
  for (const loop of loops) polygon.addFace(loopEdges(loop).map(({ from, to }) => edge(from, to)));
  return polygon;
}

/** The arc through three points found by the library's own circle, not by our formula for the centre. */
function edge(from: Loop[number], to: Loop[number]): Flatten.Segment | Flatten.Arc {
  const [a, b] = [new Flatten.Point(from.xM, from.yM), new Flatten.Point(to.xM, to.yM)];
  const chord = new Flatten.Segment(a, b);
  if (from.bulge === 0) return chord;
  // The height of the arc over its chord is bulge x chord / 2 (DXF reference, group code 42).
  const out = chord
    .tangentInStart()
    .rotate90CW()
    .multiply((from.bulge * chord.length) / 2);
  const top = chord.middle().translate(out);
  const centre = meet(perpendicular(a, top), perpendicular(top, b));
  const start = new Flatten.Vector(centre, a).slope;
  const end = new Flatten.Vector(centre, b).slope;
  return new Flatten.Arc(centre, centre.distanceTo(a)[0], start, end, from.bulge > 0);
}

function perpendicular(a: Flatten.Point, b: Flatten.Point): Flatten.Line {
  const between = new Flatten.Segment(a, b);
  return new Flatten.Line(between.middle(), between.tangentInStart());
}

function meet(one: Flatten.Line, other: Flatten.Line): Flatten.Point {
  const [point] = one.intersect(other);
  if (!point) throw new Error('lines do not meet');
  return point;
}

/** Outlines such as are measured in vehicles: a rectangle, rounded or cut corners, a notch, openings. */
export const outlines = fc
  .record({
    width: fc.integer({ min: 500, max: 1200 }),
    height: fc.integer({ min: 300, max: 700 }),
    chamfer: fc.tuple(fc.integer({ min: 10, max: 90 }), fc.integer({ min: 10, max: 90 })),
    radius: fc.integer({ min: 5, max: 90 }),
    step: fc.tuple(fc.integer({ min: 10, max: 90 }), fc.integer({ min: 10, max: 60 })),
    notch: fc.tuple(
      fc.integer({ min: 100, max: 180 }),
      fc.integer({ min: 30, max: 120 }),
      fc.integer({ min: 10, max: 80 }),
    ),
    slot: fc.tuple(
      fc.integer({ min: 40, max: 90 }),
      fc.integer({ min: 6, max: 30 }),
      fc.integer({ min: 0, max: 179 }),
    ),
    window: fc.tuple(
      fc.integer({ min: 30, max: 120 }),
      fc.integer({ min: 20, max: 60 }),
      fc.integer({ min: 1, max: 10 }),
    ),
  })
  .map(({ width, height, chamfer, radius, step, notch, slot, window }) => ({
    rectangle: { width: mm(width), height: mm(height) },
    cuts: [
      { cut: 'corner', corner: 'lower-left', dx: mm(chamfer[0]), dy: mm(chamfer[1]) },
      { cut: 'corner', corner: 'lower-right', radius: mm(radius) },
      { cut: 'step', corner: 'upper-right', dx: mm(step[0]), dy: mm(step[1]) },
      { cut: 'notch', edge: 'top', offset: mm(notch[0]), width: mm(notch[1]), depth: mm(notch[2]) },
      {
        cut: 'slot',
        x: mm(width * 0.75),
        y: mm(height / 2),
        length: mm(slot[0]),
        width: mm(slot[1]),
        turn: `${slot[2]} deg`,
      },
      {
        cut: 'window',
        from: 'lower-left',
        x: mm(100),
        y: mm(110),
        width: mm(window[0]),
        height: mm(window[1]),
        radius: mm(window[2]),
      },
    ],
  }));
