import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convexPieces } from '../../../lib/board/shape/convex.ts';
import { penetrationM } from '../../../lib/board/shape/penetration.ts';
import { insideRing, type Point, type Ring, ringArea } from '../../../lib/board/shape/point.ts';
import { intersection, regionArea, regionOf } from '../../../lib/board/shape/region.ts';
import { gapM, roomInsideM } from '../../../lib/board/shape/ring-gap.ts';

const ring = (...points: readonly (readonly [number, number])[]): Ring =>
  points.map(([x, y]) => ({ xM: x / 1000, yM: y / 1000 }));
const box = (x: number, y: number, w: number, h: number): Ring =>
  ring([x, y], [x + w, y], [x + w, y + h], [x, y + h]);
const pushed = (of: Ring, xM: number, yM: number): Ring => of.map((p) => ({ xM: p.xM + xM, yM: p.yM + yM }));

/** Shared area by the clipping library, m2. */
const sharedM2 = (a: Ring, b: Ring): number => regionArea(intersection(regionOf(a), regionOf(b)));

/** The shortest push that parts two rings, found by trying pushes in every direction; metres. */
function triedPushM(a: Ring, b: Ring, mostM: number): number {
  let least = mostM;
  for (let degree = 0; degree < 360; degree += 3) {
    const [x, y] = [Math.cos((degree * Math.PI) / 180), Math.sin((degree * Math.PI) / 180)];
    for (let push = 0; push < least; push += mostM / 400)
      if (sharedM2(pushed(a, x * push, y * push), b) < 1e-12) least = push;
  }
  return least;
}

test('two strips stand in each other by the shortest push that parts them, wherever their corners lie', () => {
  // A strip of 6 by 100 mm lies across one of 20 by 100 mm, 40 mm up it: 46 mm take it off the nearer end.
  expect(gapM(box(0, 40, 100, 6), box(40, 0, 20, 100))).toBeCloseTo(-0.046, 9);
  // Side by side, 6 mm of each other, one longer than the other: no corner of either lies deeper than 1 mm.
  expect(gapM(box(0, 0, 100, 20), box(1, 14, 98, 20))).toBeCloseTo(-0.006, 9);
  // The far corner of a strip of 6 mm reaches 1 mm through a strip: 7 mm take it back.
  expect(gapM(box(0, 0, 6, 100), box(-20, 40, 27, 6))).toBeCloseTo(-0.007, 9);
});

test('a tongue in a notch is as deep as it stands in the side of the notch, not as deep as the notch', () => {
  const notched = ring([0, 0], [100, 0], [100, 60], [70, 60], [70, 20], [30, 20], [30, 60], [0, 60]);
  expect(gapM(notched, box(45, 30, 20, 50))).toBeCloseTo(0.005, 9);
  expect(gapM(notched, box(52, 30, 20, 50))).toBeCloseTo(-0.002, 9);
  expect(gapM(notched, box(45, 17, 20, 60))).toBeCloseTo(-0.003, 9);
});

test('what juts into a space is told by how deep it stands in a part, though no corner of the part is outside', () => {
  // A wheel arch 40 mm wide and 80 mm high from the floor of a space; a bar of 10 mm lies across it at 30 mm.
  const arched = ring([0, 0], [80, 0], [80, 80], [120, 80], [120, 0], [200, 0], [200, 200], [0, 200]);
  expect(roomInsideM(box(20, 30, 160, 10), arched)).toBeCloseTo(-0.05, 9);
  expect(roomInsideM(box(20, 85, 160, 10), arched)).toBeCloseTo(0.005, 9);
  expect(roomInsideM(box(20, 76, 160, 10), arched)).toBeCloseTo(-0.004, 9);
  expect(roomInsideM(box(-7, 100, 50, 10), arched)).toBeCloseTo(-0.007, 9);
});

/** A star-shaped ring round a point, mm. */
const anyRing = fc
  .record({
    x: fc.integer({ min: 0, max: 60 }),
    y: fc.integer({ min: 0, max: 60 }),
    radii: fc.array(fc.integer({ min: 12, max: 60 }), { minLength: 3, maxLength: 7 }),
  })
  .map(
    ({ x, y, radii }): Ring =>
      radii.map((r, at) => {
        const angle = (2 * Math.PI * at) / radii.length;
        return { xM: (x + r * Math.cos(angle)) / 1000, yM: (y + r * Math.sin(angle)) / 1000 };
      }),
  );

test('convex pieces make up their ring', () => {
  fc.assert(
    fc.property(
      anyRing,
      fc.integer({ min: -60, max: 120 }),
      fc.integer({ min: -60, max: 120 }),
      (of, x, y) => {
        const pieces = convexPieces(of);
        expect(pieces.reduce((sum, piece) => sum + ringArea(piece), 0)).toBeCloseTo(ringArea(of), 10);
        const p: Point = { xM: x / 1000 + 0.000137, yM: y / 1000 + 0.000071 };
        expect(pieces.filter((piece) => insideRing(p, piece)).length).toBe(insideRing(p, of) ? 1 : 0);
      },
    ),
    { numRuns: 200 },
  );
});

test('no push shorter than the depth parts two rings, and one as long does (tried by clipping)', () => {
  fc.assert(
    fc.property(anyRing, anyRing, (a, b) => {
      const depthM = penetrationM(a, b);
      if (sharedM2(a, b) < 1e-10) return;
      expect(depthM).toBeGreaterThan(0);
      expect(depthM).toBeLessThanOrEqual(triedPushM(a, b, 0.3) + 1e-6);
      const turns = Array.from({ length: 72 }, (_, k) => (k * Math.PI) / 36);
      for (const turn of turns) {
        const [x, y] = [Math.cos(turn) * (depthM - 2e-5), Math.sin(turn) * (depthM - 2e-5)];
        expect(sharedM2(pushed(a, x, y), b)).toBeGreaterThan(0);
      }
    }),
    { numRuns: 12 },
  );
});
