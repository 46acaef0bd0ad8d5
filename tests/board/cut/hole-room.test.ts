import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groundAt, holeLines, holeRoom } from '../../../lib/board/cut/hole-room.ts';
import { arcOf, loopEdges } from '../../../lib/board/shape/bulge.ts';
import type { BoardShape } from '../../../lib/board/shape/outline.ts';
import type { Point } from '../../../lib/board/shape/point.ts';
import { insideRegion } from '../../../lib/board/shape/region.ts';
import { caseCount } from '../../long-run.ts';
import { flattenPolygon, mm, outlines, shapeOf } from '../shapes.ts';

/** Where a test of inside and outside can lose its way: corners, ends, centres and tops of arcs, middles of chords. */
function pivots({ outline, cutouts }: BoardShape): Point[] {
  return [outline, ...cutouts].flatMap(loopEdges).flatMap(({ from, to }) => {
    const middle = { xM: (from.xM + to.xM) / 2, yM: (from.yM + to.yM) / 2 };
    const arc = arcOf(from, to);
    if (!arc) return [from, middle];
    const { centre, radiusM, startRad, sweepRad } = arc;
    const topRad = startRad + sweepRad / 2;
    const out = (ofRadius: number): Point => ({
      xM: centre.xM + ofRadius * radiusM * Math.cos(topRad),
      yM: centre.yM + ofRadius * radiusM * Math.sin(topRad),
    });
    return [from, middle, centre, out(0.9), out(1), out(1.1)];
  });
}

/** Every x of the pivots with every y of them, and a hair beside. */
function latticeOf(shape: BoardShape, hairM: number): Point[] {
  const all = pivots(shape);
  return all.flatMap(({ xM }) =>
    all.flatMap(({ yM }) => [
      { xM, yM },
      { xM: xM + hairM, yM },
      { xM, yM: yM - hairM },
    ]),
  );
}

/** Nearer to a line than this a point may count as on it, metres. */
const onLineM = 1e-7;

/**
 * A point as the other library has it: in tenths of a millimetre, since it takes lengths below 1e-6 for none, and turned
 * by an odd angle, since its own ray can run along an edge.
 */
function inOther<P extends Point>(p: P): P {
  const [cos, sin] = [Math.cos(0.37) * 10_000, Math.sin(0.37) * 10_000];
  return { ...p, xM: p.xM * cos - p.yM * sin, yM: p.xM * sin + p.yM * cos };
}

function agrees(shape: BoardShape, points: readonly Point[]): void {
  const lines = holeLines(shape);
  const board = flattenPolygon(...[shape.outline, ...shape.cutouts].map((loop) => loop.map(inOther)));
  for (const p of points) {
    const { xM, yM } = inOther(p);
    const other = new Flatten.Point(xM, yM);
    const offM = board.distanceTo(other)[0] / 10_000;
    if (offM < onLineM) continue;
    const found = holeRoom({ ...p, diameterM: 0 }, lines).toEdgeM;
    const isIn = board.contains(other);
    expect({ ...p, found }).toEqual({ ...p, found: expect.closeTo(isIn ? offM : -offM, 9) });
    expect(groundAt(p, lines) === 'material').toBe(isIn);
    // The region stands for the board in webs, reach and travel; its arcs are chords a hundredth of a millimetre off.
    if (offM > 2e-5) expect({ ...p, isIn: insideRegion(p, shape.region) }).toEqual({ ...p, isIn });
  }
}

describe('room of a hole', () => {
  it('is that of @flatten-js/core level with, above and beside every corner, centre, arc and chord of a board', () => {
    fc.assert(
      fc.property(outlines, fc.constantFrom(1e-6, 1e-4, 0.002), (outline, hairM) => {
        const shape = shapeOf(outline);
        const points = latticeOf(shape, hairM);
        agrees(
          shape,
          points.filter((_, at) => at % 17 === 0),
        );
      }),
      { numRuns: caseCount({ all: 100, some: 8 }), seed: 41 },
    );
  });

  it('is that of @flatten-js/core on boards of round corners alone, in inches as they are written', () => {
    for (const [side, radius] of [
      [24, 8],
      [24, 12],
      [20, 3],
      [30, 4.5],
    ] as const)
      for (const cuts of [
        [{ cut: 'arc-corner', radius: `${radius} in` }],
        [
          { cut: 'arc-corner', radius: `${radius} in` },
          { cut: 'hole', x: `${side / 2} in`, y: `${side / 2} in`, diameter: '3 in', purpose: 'wire' },
        ],
      ]) {
        const shape = shapeOf({ rectangle: { width: `${side} in`, height: `${side} in` }, cuts });
        agrees(
          shape,
          latticeOf(shape, 1e-6).filter((_, at) => at % 4 < 2),
        );
      }
  });

  it('is told for a bolt in the middle of the chord of a round corner', () => {
    const shape = shapeOf({
      rectangle: { width: '24 in', height: '24 in' },
      cuts: [{ cut: 'arc-corner', radius: '8 in' }],
    });
    // From the centre (16, 8) of the corner to (20, 4) are 4 root 2 in, so that 8 - 5.657 in are left.
    for (const [x, y] of [
      [20, 4],
      [20, 20],
      [4, 4],
      [4, 20],
    ] as const)
      expect(holeRoom({ xM: x * 0.0254, yM: y * 0.0254, diameterM: 0 }, holeLines(shape))).toEqual({
        toEdgeM: expect.closeTo((8 - Math.sqrt(32)) * 0.0254, 9),
        toCornerM: Number.POSITIVE_INFINITY,
      });
  });

  it('is below zero in a slot, by the depth that its round ends and its middle have', () => {
    const shape = shapeOf({
      rectangle: { width: mm(400), height: mm(300) },
      cuts: [{ cut: 'slot', x: mm(200), y: mm(150), length: mm(80), width: mm(30) }],
    });
    const lines = holeLines(shape);
    agrees(shape, latticeOf(shape, 1e-6));
    expect(groundAt({ xM: 0.2, yM: 0.15 }, lines)).toBe('cut-out');
    expect(holeRoom({ xM: 0.2, yM: 0.15, diameterM: 0 }, lines).toEdgeM).toBeCloseTo(-0.015, 9);
  });
});
