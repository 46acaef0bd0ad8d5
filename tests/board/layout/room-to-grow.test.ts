import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MountingSpace } from '../../../lib/board/layout/fit-in-space.ts';
import { roomToGrow } from '../../../lib/board/layout/room-to-grow.ts';
import { ringOfBox } from '../../../lib/board/shape/point.ts';

type Numbers = readonly [minX: number, minY: number, maxX: number, maxY: number];
const box = ([minX, minY, maxX, maxY]: Numbers) => ({ minX, minY, maxX, maxY });

const space = (...obstacles: readonly (readonly [...Numbers, toM: number])[]): MountingSpace => ({
  outline: ringOfBox(box([0, 0, 1, 0.4])),
  depthM: 0.15,
  obstacles: obstacles.map(([minX, minY, maxX, maxY, toM], at) => {
    return { id: `o${at}`, outline: ringOfBox(box([minX, minY, maxX, maxY])), fromM: 0, toM };
  }),
});
const lying = (...numbers: Numbers) => ({ box: box(numbers), standoffM: 0.012, clearanceM: 0.01 });

describe('the largest that a board may become where it lies', () => {
  test('is the space less the gap, where nothing stands in it', () => {
    const room = roomToGrow(space(), lying(0.2, 0.1, 0.5, 0.3));
    expect(room).toEqual({ minX: 0.01, minY: 0.01, maxX: 0.99, maxY: 0.39 });
  });

  // A brace in the upper right corner, 0.9 to 1 m across and 0.3 to 0.4 m up: to its left 0.88 m by 0.38 m are more than
  // 0.98 m by 0.28 m below it, plane geometry by hand.
  test('keeps off what stands out, on the side where more is left', () => {
    const room = roomToGrow(space([0.9, 0.3, 1, 0.4, 0.05]), lying(0.2, 0.1, 0.5, 0.28));
    expect(room?.maxX).toBeCloseTo(0.89, 9);
    expect(room?.maxY).toBeCloseTo(0.39, 9);
  });

  test('lies over what is flatter than its spacers, less the gap', () => {
    expect(roomToGrow(space([0.9, 0.3, 1, 0.4, 0.002]), lying(0.2, 0.1, 0.5, 0.28))?.maxX).toBeCloseTo(
      0.99,
      9,
    );
  });

  test('is none where something stands in the board, or the space is no rectangle', () => {
    expect(roomToGrow(space([0.3, 0.15, 0.4, 0.2, 0.05]), lying(0.2, 0.1, 0.5, 0.3))).toBeNull();
    const slanted = { ...space(), outline: [...space().outline.slice(0, 3), { xM: 0.1, yM: 0.4 }] };
    expect(roomToGrow(slanted, lying(0.2, 0.1, 0.5, 0.3))).toBeNull();
  });

  test('holds the board, stays in the space and is clear of every obstacle, always', () => {
    const at = fc.double({ min: 0.02, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(
        at,
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        fc.array(fc.tuple(at, at)),
        (x, y, corners) => {
          const own = lying(x, y, x + 0.05, y + 0.05);
          const obstacles = corners.map(([a, b]) => [a, b / 3, a + 0.04, b / 3 + 0.03, 0.05] as const);
          const room = roomToGrow(space(...obstacles), own);
          if (!room) return;
          expect(room.minX <= own.box.minX + 1e-6 && room.maxX >= own.box.maxX - 1e-6).toBe(true);
          expect(room.minY <= own.box.minY + 1e-6 && room.maxY >= own.box.maxY - 1e-6).toBe(true);
          for (const [minX, minY, maxX, maxY] of obstacles) {
            const acrossM = Math.max(minX - room.maxX, room.minX - maxX);
            const upM = Math.max(minY - room.maxY, room.minY - maxY);
            expect(Math.max(acrossM, upM)).toBeGreaterThan(0.01 - 1e-6);
          }
        },
      ),
    );
  });
});
