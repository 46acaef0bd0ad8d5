import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeRectangles } from '../../../lib/board/shape/free-rectangles.ts';
import type { Box } from '../../../lib/board/shape/point.ts';

const lines = [0, 1, 2, 3, 4];
const area = ({ minX, maxX, minY, maxY }: Box) => (maxX - minX) * (maxY - minY);

test('the largest free rectangle is that of trying every rectangle of the grid', () => {
  const taken = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })));
  fc.assert(
    fc.property(taken, (cells) => {
      const isFree = ({ minX, minY }: Box) => !cells.some(([x, y]) => x === minX && y === minY);
      const found = freeRectangles(lines, lines, isFree);
      let most = 0;
      for (const minX of lines)
        for (const maxX of lines)
          for (const minY of lines)
            for (const maxY of lines) {
              if (maxX <= minX || maxY <= minY) continue;
              const isClear = !cells.some(([x, y]) => x >= minX && x < maxX && y >= minY && y < maxY);
              if (isClear) most = Math.max(most, area({ minX, maxX, minY, maxY }));
            }
      expect(Math.max(0, ...found.map(area))).toBe(most);
      for (const { minX, maxX, minY, maxY } of found)
        expect(cells.some(([x, y]) => x >= minX && x < maxX && y >= minY && y < maxY)).toBe(false);
    }),
  );
});
