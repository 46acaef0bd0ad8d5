import { Arc, Box, Point, Segment } from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bulgePath, type OutlinePoint, outlineBox } from '../../lib/draw/bulge-path.ts';
import { at } from '../../lib/draw/paper.ts';
import type { PlanView } from '../../lib/draw/sheet/scale.ts';

const view: PlanView = { ratio: 10, datum: at(50, 200), mirrored: false };

/** A quarter of a circle has the bulge tan(90 deg / 4) = 0.41421 (definition of the bulge). */
const quarter = Math.SQRT2 - 1;

describe('bulgePath', () => {
  it('turns y down, scales, and closes', () => {
    const square = [
      { xM: 0, yM: 0, bulge: 0 },
      { xM: 0.2, yM: 0, bulge: 0 },
      { xM: 0.2, yM: 0.1, bulge: 0 },
    ];
    expect(bulgePath(square, view)).toBe('M50 200L70 200L70 190L50 200Z');
    expect(bulgePath(square, { ...view, mirrored: true })).toBe('M50 200L30 200L30 190L50 200Z');
  });

  it('draws a round outward corner with the radius that a protractor gives', () => {
    // Counter-clockwise seen with y up: SVG's sweep 0. Corner of 20 mm radius at 1:10 is 2 mm.
    const corner = [
      { xM: 0, yM: 0, bulge: 0 },
      { xM: 0.08, yM: 0, bulge: quarter },
      { xM: 0.1, yM: 0.02, bulge: 0 },
    ];
    expect(bulgePath(corner, view)).toBe('M50 200L58 200A2 2 0 0 0 60 198L50 200Z');
    expect(bulgePath(corner, { ...view, mirrored: true })).toContain('A2 2 0 0 1 40 198');
  });

  it('marks an arc of more than half a circle as the large one', () => {
    const circle = [
      { xM: 0, yM: 0, bulge: -3 },
      { xM: 0.1, yM: 0, bulge: 0 },
    ];
    expect(bulgePath(circle, view)).toMatch(/A[\d.]+ [\d.]+ 0 1 1 60 200/);
  });

  it('is empty without points', () => {
    expect(bulgePath([], view)).toBe('');
  });
});

describe('outlineBox', () => {
  const place = fc.integer({ min: -500, max: 500 }).map((mm) => mm / 1000);
  const bulge = fc.oneof(
    fc.constant(0),
    fc.double({ min: 0.05, max: 3, noNaN: true }),
    fc.double({ min: -3, max: -0.05, noNaN: true }),
  );
  const points = fc.array(fc.record({ xM: place, yM: place, bulge }), { minLength: 3, maxLength: 8 });

  // The reference is @flatten-js/core: its arcs and their boxes, built from centre and angles.
  it('agrees with another geometry library, bends included', () => {
    fc.assert(
      fc.property(points, (outline) => {
        fc.pre(
          outline.every(
            (from, index) => distance(from, outline[(index + 1) % outline.length] ?? from) > 1e-3,
          ),
        );
        const reference = outline.reduce<Box>(
          (box, from, index) => {
            const to = outline[(index + 1) % outline.length] ?? from;
            return box.merge(edgeOf(from, to).box);
          },
          new Box(Infinity, Infinity, -Infinity, -Infinity),
        );
        const box = outlineBox(outline, view);
        expect(box.leftMm).toBeCloseTo(50 + reference.xmin * 100, 5);
        expect(box.rightMm).toBeCloseTo(50 + reference.xmax * 100, 5);
        expect(box.bottomMm).toBeCloseTo(200 - reference.ymin * 100, 5);
        expect(box.topMm).toBeCloseTo(200 - reference.ymax * 100, 5);
      }),
    );
  });
});

function distance(from: OutlinePoint, to: OutlinePoint): number {
  return Math.hypot(from.xM - to.xM, from.yM - to.yM);
}

/** An edge by its sagitta: the middle of the arc lies bulge x half chord off the chord, to its right where positive. */
function edgeOf(from: OutlinePoint, to: OutlinePoint): Segment | Arc {
  if (from.bulge === 0) return new Segment(new Point(from.xM, from.yM), new Point(to.xM, to.yM));
  const chord = distance(from, to);
  const sagitta = (from.bulge * chord) / 2;
  const nx = (to.yM - from.yM) / chord;
  const ny = -(to.xM - from.xM) / chord;
  const middle = new Point((from.xM + to.xM) / 2 + nx * sagitta, (from.yM + to.yM) / 2 + ny * sagitta);
  const radius = (chord ** 2 / 4 + sagitta ** 2) / (2 * Math.abs(sagitta));
  const towards = radius * Math.sign(sagitta);
  const centre = new Point(middle.x - nx * towards, middle.y - ny * towards);
  const angle = (x: number, y: number): number => Math.atan2(y - centre.y, x - centre.x);
  return new Arc(centre, radius, angle(from.xM, from.yM), angle(to.xM, to.yM), from.bulge > 0);
}
