import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { boardLinesOf } from '../../../lib/board/layout/board-lines.ts';
import { freeSpots } from '../../../lib/board/layout/free-spots.ts';
import { flattenPolygon, mm, outlines, shapeOf } from '../shapes.ts';

const stepM = 0.02;
/** Arcs of the board are flattened to a tenth of a millimetre: nearer to a line nothing is said. */
const doubtM = 0.0003;

/** Whether a box lies in a polygon all over: by the other geometry library, made larger and smaller by what is in doubt. */
function liesIn(board: Flatten.Polygon, x: number, y: number, w: number, d: number, byM: number): boolean {
  const box = new Flatten.Box(x - byM, y - byM, x + w + byM, y + d + byM);
  return board.contains(new Flatten.Polygon(box));
}

it('a box is free where it lies on the board all over, and nowhere else, also where the step is wider than the box', () => {
  let [free, blocked] = [0, 0];
  const side = fc.integer({ min: 12, max: 150 });
  fc.assert(
    fc.property(outlines, side, side, fc.integer({ min: 20, max: 40 }), (outline, width, depth, bore) => {
      const hole = { cut: 'hole', x: mm(250), y: mm(90), diameter: mm(bore), purpose: 'wire' };
      const shape = shapeOf({ ...outline, cuts: [...outline.cuts, hole] });
      const board = flattenPolygon(shape.outline, ...shape.cutouts);
      for (const { xM, yM, diameterM } of shape.holes)
        board.addFace(new Flatten.Circle(new Flatten.Point(xM, yM), diameterM / 2));
      const boardLines = boardLinesOf(shape);
      const size = { xM: width / 1000, yM: depth / 1000 };
      const spots = freeSpots(boardLines, size, stepM, false);
      expect(spots.columns).toBe(
        Math.floor((boardLines.box.maxX - boardLines.box.minX - size.xM) / stepM + 1e-9) + 1,
      );
      for (let at = width % 7; at < spots.free.length; at += 7) {
        const x = boardLines.box.minX + Math.floor(at / spots.rows) * stepM;
        const y = boardLines.box.minY + (at % spots.rows) * stepM;
        const [surely, maybe] = [doubtM, -doubtM].map((byM) => liesIn(board, x, y, size.xM, size.yM, byM));
        const own = { x, y, size, free: spots.free[at] };
        if (surely) expect(own).toMatchObject({ free: 1 });
        if (!maybe) expect(own).toMatchObject({ free: 0 });
        if (surely) free += 1;
        if (!maybe) blocked += 1;
      }
    }),
    { numRuns: 6, seed: 11 },
  );
  expect(free).toBeGreaterThan(100);
  expect(blocked).toBeGreaterThan(50);
});
