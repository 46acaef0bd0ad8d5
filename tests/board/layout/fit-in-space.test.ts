import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBoard, type MountingSpace } from '../../../lib/board/layout/fit-in-space.ts';
import type { Ring } from '../../../lib/board/shape/point.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { usualClearanceM as keptM } from '../usual-board.ts';

const byHand = outsideCheck('rooms-by-hand');

const ring = (...points: [number, number][]): Ring => points.map(([xM, yM]) => ({ xM, yM }));
const box = (x: number, y: number, w: number, h: number): Ring =>
  ring([x, y], [x + w, y], [x + w, y + h], [x, y + h]);
const pose = { xM: 0, yM: 0, turnDeg: 0, standoffM: 0.01 };
const space: MountingSpace = { outline: box(-0.02, -0.02, 1, 0.5), depthM: 0.12, obstacles: [] };
const shape = shapeOf({
  rectangle: { width: '800 mm', height: '400 mm' },
  cuts: [{ cut: 'window', x: '100 mm', y: '100 mm', width: '100 mm', height: '100 mm' }],
});
const amp = { id: 'amp', widthM: 0.3, depthM: 0.2, heightM: 0.06, massKg: 4, rooms: {}, terminals: [] };
const board = {
  shape,
  thicknessM: 0.018,
  items: [amp],
  placements: [{ item: 'amp', xM: 0.4, yM: 0.1, turnDeg: 0 as const, heightM: 0 }],
};

describe('a board in its space', () => {
  it('fits, and says how much room is left', () => {
    const { clearances, faults } = fitBoard(board, space, pose, keptM);
    expect(faults).toEqual([]);
    expect(byHand.differs(clearances.toWallM.value, 0.02)).toBeCloseTo(0.02, 9);
    const depthM = 0.12 - 0.01 - 0.018 - 0.06;
    expect(byHand.differs(clearances.inDepthM.value, depthM)).toBeCloseTo(depthM, 9);
  });

  it('names what is too deep, too wide or in the way, and by how much', () => {
    const tight = {
      outline: box(-0.02, -0.02, 0.79, 0.5),
      depthM: 0.08,
      obstacles: [{ id: 'hinge', outline: box(0.69, 0.2, 0.05, 0.05), fromM: 0.04, toM: 0.1 }],
    };
    const found = fitBoard(board, tight, pose, keptM).faults.map(({ rule, of, value }) => [rule, of, value]);
    expect(found).toEqual([
      ['space-too-small', ['board'], expect.closeTo(-0.03, 9)],
      ['space-too-shallow', ['amp'], expect.closeTo(-0.008, 9)],
      ['obstacle-in-the-way', ['amp', 'hinge'], expect.closeTo(-0.01, 9)],
    ]);
  });

  it('passes an obstacle in its own opening, and over it in height', () => {
    const stud = { id: 'stud', outline: box(0.14, 0.14, 0.02, 0.02), fromM: 0, toM: 0.1 };
    const low = { id: 'seam', outline: box(0.3, 0.1, 0.02, 0.02), fromM: 0, toM: 0.002 };
    const fit = fitBoard(board, { ...space, obstacles: [stud, low] }, pose, keptM);
    expect(fit.faults).toEqual([]);
    expect(fit.clearances.toObstaclesM.map(({ clearance }) => clearance.value)).toEqual([
      expect.closeTo(0.04, 9),
      expect.closeTo(0.008, 9),
    ]);
  });

  it('leaves the same room when board, space and obstacles are turned and moved together', () => {
    const obstacle = { id: 'hinge', outline: box(0.75, 0.42, 0.05, 0.03), fromM: 0.02, toM: 0.1 };
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        (turnDeg, xM, yM) => {
          const angle = (turnDeg * Math.PI) / 180;
          const move = (points: Ring): Ring =>
            points.map((p) => ({
              xM: xM + p.xM * Math.cos(angle) - p.yM * Math.sin(angle),
              yM: yM + p.xM * Math.sin(angle) + p.yM * Math.cos(angle),
            }));
          const at = fitBoard(board, { ...space, obstacles: [obstacle] }, pose, keptM).clearances;
          const moved = fitBoard(
            board,
            {
              ...space,
              outline: move(space.outline),
              obstacles: [{ ...obstacle, outline: move(obstacle.outline) }],
            },
            { xM, yM, turnDeg, standoffM: 0.01 },
            keptM,
          ).clearances;
          expect(moved.toWallM.value).toBeCloseTo(at.toWallM.value, 7);
          expect(moved.toObstaclesM[0]?.clearance.value).toBeCloseTo(
            at.toObstaclesM[0]?.clearance.value ?? 0,
            7,
          );
        },
      ),
      { numRuns: 50, seed: 5 },
    );
  });
});

describe('a board and its space mirrored', () => {
  it('fit as before', () => {
    const flip = (points: Ring): Ring => points.map(({ xM, yM }) => ({ xM: 0.8 - xM, yM })).reverse();
    const spot = fc.tuple(fc.integer({ min: -20, max: 520 }), fc.integer({ min: -20, max: 220 }));
    fc.assert(
      fc.property(spot, spot, ([x, y], [ox, oy]) => {
        const hinge = {
          id: 'hinge',
          outline: box(ox / 1000, oy / 1000, 0.05, 0.03),
          fromM: 0.02,
          toM: 0.1,
        };
        const at = { item: 'amp', xM: x / 1000, yM: y / 1000, turnDeg: 0 as const, heightM: 0 };
        const there = fitBoard({ ...board, placements: [at] }, { ...space, obstacles: [hinge] }, pose, keptM);
        const mirrored = fitBoard(
          {
            ...board,
            shape: {
              ...shape,
              region: shape.region.map(({ outer, openings }) => ({
                outer: flip(outer),
                openings: openings.map(flip),
              })),
            },
            placements: [{ ...at, xM: 0.8 - at.xM - 0.3 }],
          },
          {
            ...space,
            outline: flip(space.outline),
            obstacles: [{ ...hinge, outline: flip(hinge.outline) }],
          },
          pose,
          keptM,
        );
        const amounts = (fit: typeof there) => [
          fit.clearances.toWallM.value.toFixed(6),
          fit.clearances.inDepthM.value.toFixed(6),
          ...fit.clearances.toObstaclesM.map(({ clearance }) => clearance.value.toFixed(6)),
          ...fit.faults.map(({ rule, of }) => `${rule} ${of.join(' ')}`),
        ];
        expect(amounts(mirrored)).toEqual(amounts(there));
      }),
      { numRuns: 100, seed: 13 },
    );
  });
});
