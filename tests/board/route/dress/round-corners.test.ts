import { expect, test } from 'vitest';
import { DressRooms } from '../../../../lib/board/route/dress/dress-room.ts';
import { priceOf } from '../../../../lib/board/route/dress/dressed.ts';
import { Dresser } from '../../../../lib/board/route/dress/dresser.ts';
import type { RouteWire } from '../../../../lib/board/route/route.ts';
import { shapeOf } from '../../shapes.ts';
import { usualRouting } from '../../usual-board.ts';

const clearanceM = 0.0015;
const wire: RouteWire = {
  id: 'w',
  from: { xM: 0.3, yM: 0.32, faces: 'top' },
  to: { exit: 'right' },
  layer: 'speaker',
  diameterM: 0.003,
};

/** How far from the top of the board the wire leaves it, over a part that leaves 30 mm (mm). */
function belowTopMm(corner: string): number {
  const rectangle = { width: '600 mm', height: '400 mm' };
  const shape = shapeOf({ rectangle, cuts: [{ cut: 'corner', corner: 'upper-right', radius: corner }] });
  const part = { id: 'part', box: { minX: 0.32, maxX: 0.5, minY: 0.1, maxY: 0.37 } };
  const dresser = new Dresser(new DressRooms(shape, [part], clearanceM), usualRouting.powerToSignalM);
  const price = priceOf(wire, usualRouting.dressPrices);
  const route = dresser.lay({ wire, others: [], open: [], price, tollOf: () => 0 });
  return 400 - 1000 * (route?.points.at(-1)?.yM ?? 0);
}

// By hand, for a corner of 60 mm: 4 mm from the top the edge is 38 mm further in than its side, 27 mm from the top 10 mm;
// what that seems to save is more than the 23 mm of way up there.
test('a wire runs along the part that it passes, and not up to the edge for a shorter way over a round corner', () => {
  expect(belowTopMm('60 mm')).toBeCloseTo(30 - 1.5 - 1.5, 2);
  expect(belowTopMm('1 mm')).toBeCloseTo(30 - 1.5 - 1.5, 2);
});
