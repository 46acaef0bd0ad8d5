import { expect, test } from 'vitest';
import { Dressed } from '../../../../lib/board/route/dress/dressed.ts';
import { type RouteWire, routeThrough } from '../../../../lib/board/route/route.ts';
import { usualRouting } from '../../usual-board.ts';

const wire = (id: string): RouteWire => ({
  id,
  from: { xM: 0, yM: 0, faces: 'right' },
  to: { exit: 'bottom' },
  layer: 'speaker',
  diameterM: 0.003,
});
const laidThrough = (id: string, ...points: readonly (readonly [number, number])[]) => ({
  wire: wire(id),
  route: routeThrough(
    wire(id),
    points.map(([xM, yM]) => ({ xM, yM })),
  ),
});

// By the house: a crossing counts as 0.5 m, a wire that is led round as 0.4 m; lengths and bends are left out here.
test('a wire that is led round something counts as so much wire, once', () => {
  const { dressPrices, powerToSignalM } = usualRouting;
  const alone = { ...dressPrices, bendM: 0, bendRadii: 0 };
  const priceOf = (...laid: readonly ReturnType<typeof laidThrough>[]) => {
    const lengthsM = laid.reduce(
      (sum, { route }) => sum + (1 + alone.perDiameter * 0.003) * route.lengthM,
      0,
    );
    return new Dressed(laid, alone, powerToSignalM).priceM - lengthsM;
  };
  const out = laidThrough('out', [0, 0], [0.1, 0], [0.1, -0.2]);
  const over = laidThrough('over', [0, 0], [0.1, 0], [0.1, 0.2], [-0.3, 0.2], [-0.3, -0.2]);
  const below = laidThrough('below', [-0.4, 0.1], [-0.2, 0.1]);
  expect(priceOf(out)).toBeCloseTo(0, 9);
  expect(priceOf(over)).toBeCloseTo(0.4, 9);
  expect(priceOf(over, below)).toBeCloseTo(0.9, 9);
});
