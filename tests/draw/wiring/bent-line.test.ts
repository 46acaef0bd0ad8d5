import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bentPath, bentPoints, beside, distanceMm } from '../../../lib/draw/bent-line.ts';
import { at, type PaperPoint } from '../../../lib/draw/paper.ts';

const corner = [at(0, 0), at(10, 0), at(10, 10)];

/** How far the points of a bend are from where its centre must be. */
function radii(points: readonly PaperPoint[], centre: PaperPoint): number[] {
  return points.slice(1, -1).map((point) => distanceMm(point, centre));
}

describe('a bent line', () => {
  // Elementary geometry: an arc that touches both legs of a square corner begins and ends a radius from the corner.
  it('touches both legs at a radius from a square corner, and keeps to its circle', () => {
    const points = bentPoints(corner, { radiusMm: 4, offMm: 0 });
    expect(points[1]).toEqual({ xMm: expect.closeTo(6, 9), yMm: expect.closeTo(0, 9) });
    expect(points.at(-2)).toEqual({ xMm: expect.closeTo(10, 9), yMm: expect.closeTo(4, 9) });
    for (const radius of radii(points, at(6, 4))) expect(radius).toBeCloseTo(4, 9);
    expect(bentPath(corner, { radiusMm: 4, offMm: 0 })).toBe('M0 0L6 0A4 4 0 0 1 10 4L10 10');
  });

  it('is bent as far as a leg goes and no farther: the whole of an end leg, half of one between two corners', () => {
    expect(bentPath(corner, { radiusMm: 10, offMm: 0 })).toContain('A10 10 ');
    expect(bentPath(corner, { radiusMm: 10.1, offMm: 0 })).toContain('A10 10 ');
    const stair = [at(0, 0), at(10, 0), at(10, 6), at(20, 6)];
    expect(bentPath(stair, { radiusMm: 3, offMm: 0 })).toContain('A3 3 ');
    expect(bentPath(stair, { radiusMm: 3.5, offMm: 0 })).toContain('A3 3 ');
  });

  it('keeps its centre where it lies beside another: outside it is bent wider, inside tighter', () => {
    for (const offMm of [-1, 1]) {
      const points = bentPoints(beside(corner, offMm), { radiusMm: 4, offMm });
      for (const radius of radii(points, at(6, 4))) expect(radius).toBeCloseTo(4 + offMm, 9);
    }
  });

  it('lies on the left of the way that it runs where the distance is above zero', () => {
    expect(beside([at(0, 0), at(10, 0)], 2)).toEqual([at(0, -2), at(10, -2)]);
    expect(beside(corner, 1)[1]).toEqual({ xMm: expect.closeTo(11, 9), yMm: expect.closeTo(-1, 9) });
  });

  it('keeps its distance on every leg of any stairs', () => {
    const legs = fc.array(fc.integer({ min: 5, max: 30 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(legs, fc.constantFrom(-2, -0.5, 0.5, 2), (lengths, offMm) => {
        let point = at(0, 0);
        const stairs = [
          point,
          ...lengths.map((length, index) => {
            point = index % 2 === 0 ? at(point.xMm + length, point.yMm) : at(point.xMm, point.yMm + length);
            return point;
          }),
        ];
        beside(stairs, offMm).forEach((moved, index) => {
          const level = index === lengths.length ? index % 2 === 1 : index % 2 === 0;
          const own = stairs[index] ?? moved;
          const apart = level ? moved.yMm - own.yMm : moved.xMm - own.xMm;
          expect(Math.abs(apart)).toBeCloseTo(Math.abs(offMm), 6);
        });
      }),
    );
  });
});
