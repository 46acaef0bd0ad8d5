import { describe, expect, it } from 'vitest';
import { type RouteWire, routeThrough } from '../../../../lib/board/route/route.ts';
import { openAvoid } from '../../../../lib/commands/bench/fixed/avoid-routes.ts';
import { boardFigures } from '../../../../lib/commands/bench/fixed/board-figures.ts';
import { shapeOf } from '../../../board/shapes.ts';
import { routeWires } from '../../../board/usual-board.ts';

/** A wire from a part on the left edge of a board of 600 mm by 400 mm to its right side. */
function wire(id: string, yM: number, given: Partial<RouteWire> = {}): RouteWire {
  const from = { xM: 0.1, yM, faces: 'right' } as const;
  return { id, from, to: { exit: 'right' }, layer: 'speaker', diameterM: 0.004, ...given };
}

const shape = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const barriers = [{ id: 'amp', box: { minX: 0.02, minY: 0.05, maxX: 0.1, maxY: 0.35 } }];
const straight = (own: RouteWire, yM: number) =>
  routeThrough(own, [
    { xM: 0.1, yM },
    { xM: 0.6, yM },
  ]);

describe('what is counted of a board', () => {
  it('tells wires that lie nearer than they are thick, and none that touch', () => {
    const wires = [wire('a', 0.1), wire('b', 0.104), wire('c', 0.107)];
    const routes = wires.map((own, at) => straight(own, [0.1, 0.104, 0.107][at] ?? 0));
    expect(boardFigures({ wires }, routes)).toMatchObject({ tooNear: 1, crossings: 0, bends: 0, wireM: 1.5 });
  });

  it('tells a pair that runs apart once, and the bundles of its run', () => {
    const wires = [wire('a', 0.1, { mate: 'b', run: 'door' }), wire('b', 0.2, { mate: 'a', run: 'door' })];
    const [a, b] = wires.map((own, at) => straight(own, [0.1, 0.2][at] ?? 0));
    expect(boardFigures({ wires }, a && b ? [a, b] : [])).toMatchObject({ partedPairs: 1, bundles: 2 });
    expect(boardFigures({ wires }, a ? [a] : [])).toMatchObject({ partedPairs: 0, bundles: 1, missing: 1 });
  });

  it('tells wires that cross beyond the edge', () => {
    const wires = [wire('a', 0.1), wire('b', 0.05, { to: { exit: 'top' } })];
    const low = [
      { xM: 0.1, yM: 0.05 },
      { xM: 0.65, yM: 0.05 },
    ];
    const routes = [straight(wire('a', 0.1), 0.1), routeThrough(wire('b', 0.05), low)];
    expect(boardFigures({ wires }, routes).crossings).toBe(1);
  });
});

it('libavoid lays the wires of a board from their terminals to where ours leave', async () => {
  const wires = [wire('a', 0.1), wire('b', 0.2), wire('c', 0.3, { to: { exit: 'top' } })];
  const own = routeWires({ shape, barriers, wires }).routes;
  const lay = await openAvoid();
  const theirs = lay?.({ shape, barriers, wires }, own);
  expect(theirs?.map(({ wire: id, points }) => [id, points[0], points.at(-1)])).toEqual(
    own.map(({ wire: id, points }) => [id, points[0], points.at(-1)]),
  );
});
