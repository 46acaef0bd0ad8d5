import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Box } from '../../../lib/board/shape/point.ts';
import { type PointUnder, rectangleOverPoints } from '../../../lib/board/shape/rectangle-over-points.ts';

const at = (id: string, xM: number, yM: number): PointUnder => ({ id, xM, yM, leastM: 0.02, goodM: 0.03 });
const four = [at('a', 0.1, 0.1), at('b', 0.5, 0.1), at('c', 0.5, 0.3), at('d', 0.1, 0.3)];
const anyway = { leastWidthM: 0, leastHeightM: 0, stepM: 0.001, isFree: () => true };

/** A box in whole millimetres, as left, bottom, right, top. */
const inMm = (box: Box | undefined) =>
  box && [box.minX, box.minY, box.maxX, box.maxY].map((one) => Math.round(one * 1000));

describe('the least rectangle over points', () => {
  test('has good room beside each of them', () => {
    const found = rectangleOverPoints(four, anyway);
    expect(found?.points).toEqual(['a', 'b', 'c', 'd']);
    expect(inMm(found?.box)).toEqual([70, 70, 530, 330]);
  });

  test('has less room at an edge that something stands before, and the least room at least', () => {
    const to = (leftM: number) =>
      rectangleOverPoints(four, { ...anyway, isFree: ({ minX }) => minX > leftM - 1e-6 });
    expect(inMm(to(0.075)?.box)).toEqual([75, 70, 530, 330]);
    expect(inMm(to(0.08)?.box)).toEqual([80, 70, 530, 330]);
    expect(to(0.081)).toBeNull();
  });

  test('leaves a point out that can not be reached, and is none over two or over a line', () => {
    const low = rectangleOverPoints([...four, at('far', 0.9, 0.1)], {
      ...anyway,
      isFree: ({ maxX }) => maxX < 0.6,
    });
    expect(low?.points).toEqual(['a', 'b', 'c', 'd']);
    expect(rectangleOverPoints(four.slice(0, 2), anyway)).toBeNull();
    expect(rectangleOverPoints([at('a', 0, 0), at('b', 0.2, 0), at('c', 0.4, 0)], anyway)).toBeNull();
  });

  test('is as large as is asked for, to the side that is free', () => {
    const wide = { ...anyway, leastWidthM: 0.6 };
    expect(inMm(rectangleOverPoints(four, { ...wide, isFree: ({ maxX }) => maxX < 0.5405 })?.box)).toEqual([
      -60, 70, 540, 330,
    ]);
    expect(rectangleOverPoints(four, { ...wide, isFree: ({ minX, maxX }) => maxX - minX < 0.55 })).toBeNull();
  });

  test('always has its points inside, with their room, on its grid', () => {
    const place = fc.integer({ min: 0, max: 800 }).map((mm) => mm / 1000);
    const points = fc.array(fc.tuple(place, place), { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(points, (places) => {
        const all = places.map(([xM, yM], n) => at(`p${n}`, xM, yM));
        const found = rectangleOverPoints(all, { ...anyway, stepM: 0.0254 / 8 });
        if (!found) return;
        for (const { xM, yM, goodM } of all.filter(({ id }) => found.points.includes(id))) {
          const { minX, minY, maxX, maxY } = found.box;
          const rooms = [xM - minX, maxX - xM, yM - minY, maxY - yM];
          expect(Math.min(...rooms)).toBeGreaterThan(goodM - 1e-6);
          expect(minX / (0.0254 / 8)).toBeCloseTo(Math.round(minX / (0.0254 / 8)), 6);
        }
      }),
      { numRuns: 60 },
    );
  });
});
