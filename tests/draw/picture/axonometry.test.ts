import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { at } from '../../../lib/draw/paper.ts';
import { inPicture, type SpacePoint, seen, sight } from '../../../lib/draw/picture/axonometry.ts';

const view = { mmPerM: 100, datum: at(20, 80) };
const axes = { x: { xM: 1, yM: 0, zM: 0 }, y: { xM: 0, yM: 1, zM: 0 }, z: { xM: 0, yM: 0, zM: 1 } };

/** How a metre along an axis lies on paper: millimetres, and degrees to the level, taken from the picture itself. */
function drawn(axis: keyof typeof axes): { readonly lengthMm: number; readonly toLevelDeg: number } {
  const { xMm, yMm } = inPicture(view, axes[axis]);
  const [dx, dy] = [xMm - view.datum.xMm, yMm - view.datum.yMm];
  return {
    lengthMm: Math.hypot(dx, dy),
    toLevelDeg: (Math.atan2(Math.abs(dy), Math.abs(dx)) * 180) / Math.PI,
  };
}

describe('the axonometry of a picture', () => {
  test('is dimetric: scales 1 : 1 : 1/2, axes at 7, 90 and 42 degrees to the level (ISO 5456-3:1996, 5.2)', () => {
    expect(drawn('x').lengthMm).toBeCloseTo(100, 9);
    expect(drawn('y').lengthMm).toBeCloseTo(100, 9);
    expect(drawn('z').lengthMm).toBeCloseTo(50, 9);
    expect(drawn('x').toLevelDeg).toBeCloseTo(7, 9);
    expect(drawn('y').toLevelDeg).toBeCloseTo(90, 9);
    expect(drawn('z').toLevelDeg).toBeCloseTo(42, 9);
  });

  test('has the exact angles of that projection to within their rounding: arcsin 1/8 and arccos 3/4', () => {
    expect(Math.abs(drawn('x').toLevelDeg - (Math.asin(1 / 8) * 180) / Math.PI)).toBeLessThan(0.6);
    expect(Math.abs(drawn('z').toLevelDeg - (Math.acos(3 / 4) * 180) / Math.PI)).toBeLessThan(0.6);
  });

  test('is square to the paper, within that rounding: the squares of its axes as complex numbers sum to 0 (Gauss)', () => {
    const squares = Object.values(axes).map((axis) => {
      const { xM, yM } = seen(axis);
      return [xM * xM - yM * yM, 2 * xM * yM] as const;
    });
    const sum = squares.reduce(([a, b], [c, d]) => [a + c, b + d], [0, 0]);
    expect(Math.hypot(...sum)).toBeLessThan(0.02);
  });

  test('shows one point for all places that lie behind each other', () => {
    const number = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(fc.record({ xM: number, yM: number, zM: number }), number, (place: SpacePoint, by) => {
        const nearer = {
          xM: place.xM + by * sight[0],
          yM: place.yM + by * sight[1],
          zM: place.zM + by * sight[2],
        };
        const [a, b] = [inPicture(view, place), inPicture(view, nearer)];
        expect(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)).toBeLessThan(1e-9);
      }),
    );
    expect(Math.hypot(...sight)).toBeCloseTo(1, 12);
  });

  test('looks from the mounting side, from above and from the right', () => {
    for (const towards of sight) expect(towards).toBeGreaterThan(0);
  });
});
