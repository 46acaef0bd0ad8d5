import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bentPoints, distanceMm } from '../../../lib/draw/bent-line.ts';
import { easedJogs } from '../../../lib/draw/eased-line.ts';
import { at, type PaperPoint } from '../../../lib/draw/paper.ts';

const jog = (asideMm: number, beforeMm = 30, behindMm = 30) => [
  at(0, 0),
  at(beforeMm, 0),
  at(beforeMm, asideMm),
  at(beforeMm + behindMm, asideMm),
];

/** The radius of the circle through three points: the product of the sides over four times the area. */
function radiusThrough(a: PaperPoint, b: PaperPoint, c: PaperPoint): number {
  const area = Math.abs((b.xMm - a.xMm) * (c.yMm - a.yMm) - (c.xMm - a.xMm) * (b.yMm - a.yMm)) / 2;
  return (distanceMm(a, b) * distanceMm(b, c) * distanceMm(c, a)) / (4 * area);
}

describe('a jog, eased', () => {
  it('is two arcs of the radius that run into one another, within the straight line that it has', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 19.9, noNaN: true }), (asideMm) => {
        const points = bentPoints(easedJogs(jog(asideMm), 10), { radiusMm: 10, offMm: 0 });
        const [first, second] = [points.slice(1, 8), points.slice(8, 15)];
        for (const arc of [first, second])
          for (const [nth, a] of arc.slice(0, -2).entries()) {
            const [b, c] = [arc[nth + 1] ?? a, arc[nth + 2] ?? a];
            expect(radiusThrough(a, b, c)).toBeCloseTo(10, 4);
          }
        // They meet halfway, and neither begins further than a radius from the jog.
        const [end, begin] = [first.at(-1) ?? at(0, 0), second[0] ?? at(0, 0)];
        expect(distanceMm(end, begin)).toBeLessThan(1e-6);
        expect(end).toEqual({ xMm: expect.closeTo(30, 6), yMm: expect.closeTo(asideMm / 2, 6) });
        expect(first[0]?.xMm).toBeGreaterThan(20 - 1e-6);
        expect(points.at(-2)?.xMm).toBeLessThan(40 + 1e-6);
      }),
    );
  });

  it('stays square where two bends have their room, it turns back, or the line beside it is too short', () => {
    const back = [at(0, 0), at(30, 0), at(30, 5), at(0, 5)];
    for (const line of [jog(20), back, jog(5, 4), jog(5, 30, 4)]) expect(easedJogs(line, 10)).toEqual(line);
  });
});
