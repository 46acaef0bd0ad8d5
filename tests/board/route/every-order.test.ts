import { expect, it } from 'vitest';
import { opposite, outward, type Side } from '../../../lib/board/layout/item.ts';
import { everyOrder } from '../../../lib/board/route/every-order.ts';
import { Layer } from '../../../lib/board/route/laying.ts';
import { isPoint, type RouteWire } from '../../../lib/board/route/route.ts';
import { routingDefaults } from '../../../lib/board/route/routing.ts';
import { trackGrid } from '../../../lib/board/route/track-grid.ts';
import type { Point } from '../../../lib/board/shape/point.ts';
import { casesOf, isDrawn } from '../../long-run.ts';
import { threeBoxes, threeParts, threeShape, wiresAmong } from '../layout/three-parts.ts';
import { routeWires, usualRouting } from '../usual-board.ts';
import { fewestByAllOrders, type GridWire } from './all-orders.ts';
import ofEight from './all-orders-of-eight.json' with { type: 'json' };

const rules = {
  ...routingDefaults,
  ...usualRouting,
  pitchM: 0.02,
  clearanceM: 0.001,
};

/** The fewest over all orders of laying, by a search of its own on the same grid. */
function fewestOf(wires: readonly RouteWire[]): number {
  const { xs, ys } = trackGrid(threeShape, [], [], rules.pitchM);
  const past = ({ xM, yM, faces }: Point & { faces: Side }): Point => ({
    xM: xM + rules.pitchM * outward[faces].xM,
    yM: yM + rules.pitchM * outward[faces].yM,
  });
  const step = (side: Side) => [outward[side].xM, outward[side].yM] as const;
  const onGrid = wires.flatMap(({ from, to }): GridWire[] =>
    isPoint(from) && isPoint(to)
      ? [{ from: past(from), to: past(to), out: step(from.faces), into: step(opposite[to.faces]) }]
      : [],
  );
  return fewestByAllOrders({ xs, ys, parts: threeBoxes }, onGrid);
}

function layerFor(wires: readonly RouteWire[]): Layer {
  const terminals = wires.flatMap(({ from, to }) => [from, to].filter(isPoint));
  return new Layer(trackGrid(threeShape, threeParts, terminals, rules.pitchM), rules);
}

/** Every order of a list. */
function orders<T>(list: readonly T[]): T[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((one, at) => orders(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}

it.each(casesOf([1, 2, 3, 4], (draw) => draw < 3))(
  'finds what laying five wires in each of their orders finds, draw %i',
  (seed) => {
    const wires = wiresAmong(seed, 5, 0.01);
    const layer = layerFor(wires);
    const counts = orders(wires).map((order) => {
      const routes = layer.layInOrder(order, [], 100).map(({ route }) => route);
      return routes.length < wires.length ? Infinity : crossingsByPoints(routes);
    });
    const costs = { crossingM: 100, tight: 1000 };
    const { laid, complete } = everyOrder(layerFor(wires), wires, Infinity, costs, 5000);
    expect(complete).toBe(true);
    expect(crossingsByPoints((laid ?? []).map(({ route }) => route))).toBe(Math.min(...counts));
    // Nothing is better than the best; with one path searched for nothing is known.
    const bound = Math.min(...counts);
    expect(everyOrder(layerFor(wires), wires, bound, costs, 5000)).toEqual({ laid: null, complete: true });
    expect(everyOrder(layerFor(wires), wires, Infinity, costs, 1).complete).toBe(false);
  },
);

/** Crossings of level legs with upright ones, ends that touch left aside. */
function crossingsByPoints(routes: readonly { readonly points: readonly Point[] }[]): number {
  const inner = (from: number, to: number, at: number) =>
    at > Math.min(from, to) + 1e-6 && at < Math.max(from, to) - 1e-6;
  const legs = routes.flatMap(({ points }, route) =>
    points.slice(1).flatMap((to, at) => (points[at] ? [{ route, from: points[at], to }] : [])),
  );
  const isLevel = ({ from, to }: (typeof legs)[number]) => Math.abs(from.yM - to.yM) < 1e-6;
  const uprights = legs.filter((leg) => !isLevel(leg));
  return legs
    .filter(isLevel)
    .reduce(
      (sum, level) =>
        sum +
        uprights.filter(
          (up) =>
            up.route !== level.route &&
            inner(level.from.xM, level.to.xM, up.from.xM) &&
            inner(up.from.yM, up.to.yM, level.from.yM),
        ).length,
      0,
    );
}

/** Crossings of wires laid round three parts, none left out and every order looked at or ruled out. */
function provenCrossings(wires: readonly RouteWire[]): number {
  const routing = routeWires({ shape: threeShape, barriers: threeParts, wires }, rules);
  expect(routing.faults).toEqual([]);
  expect(routing.everyOrder).toBe(true);
  return routing.crossings.length;
}

it.each([4, 5, 6])('crossings of %i wires are no more than those of the best of all orders', (count) => {
  for (const seed of casesOf([1, 2], (one) => one === 1 || count < 6)) {
    const wires = wiresAmong(10 * count + seed, count, 0);
    const crossings = provenCrossings(wires);
    const best = fewestOf(wires);
    expect(best).toBeLessThan(Infinity);
    expect(crossings).toBeLessThanOrEqual(best);
  }
});

// Half a minute a draw: worked out anew by ALL_ORDERS=1 npx vitest run --config tests/vitest.config.ts tests/board/every-order.test.ts
const anew = process.env.ALL_ORDERS === '1';

it.each(casesOf(Object.entries(ofEight), (_, index) => anew || isDrawn(index, { oneIn: 2 })))(
  'crossings of eight wires, draw %s, are no more than the %i of the best of all 40320 orders',
  (seed, known) => {
    const wires = wiresAmong(80 + Number(seed), 8, 0);
    if (anew) expect(fewestOf(wires)).toBe(known);
    expect(provenCrossings(wires)).toBeLessThanOrEqual(known);
  },
  anew ? 300_000 : undefined,
);
