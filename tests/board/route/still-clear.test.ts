import { describe, expect, it } from 'vitest';
import { barriersInPlace, wiresInPlace } from '../../../lib/board/propose/wires-in-place.ts';
import { ClearWays, stillClear } from '../../../lib/board/route/clear-way.ts';
import type { Route, RouteWire } from '../../../lib/board/route/route.ts';
import type { RoutingTask } from '../../../lib/board/route/routing.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import { madeUpBoard } from '../../../lib/commands/bench/made-up-board.ts';
import { caseCount } from '../../long-run.ts';
import { shapeOf } from '../shapes.ts';
import { routeWires } from '../usual-board.ts';

const shape = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const clearanceM = 0.0015;
const thick = { layer: 'power', diameterM: 0.006 } as const;
const across: RouteWire = {
  ...{ ...thick, id: 'across', from: { xM: 0.1, yM: 0.2, faces: 'right' }, to: { exit: 'right' } },
};
const down: RouteWire = {
  ...{ ...thick, id: 'down', from: { xM: 0.3, yM: 0.3, faces: 'top' }, to: { exit: 'top' } },
};
const wires = [across, down];
const { routes } = routeWires({ shape, barriers: [], wires });

const dressedAlone = { searchesEach: 1, beginsOnTracks: false };

/** The wires that stay, where some stand on the board and some wires are otherwise. */
function staying(barriers: RoutingTask['barriers'] = [], now: readonly RouteWire[] = wires): string[] {
  const ways = new ClearWays(shape, barriers, clearanceM);
  return stillClear(now, routes, ways).map(({ wire }) => wire.id);
}

describe('wires that lay before', () => {
  it('stay where nothing changed', () => {
    expect(staying()).toEqual(['across', 'down']);
  });

  it('do not stay where a part has come onto their way, or nearer than their room', () => {
    // The wire of 6 mm along y = 200 mm reaches to 203 mm, and wants 1.5 mm besides.
    const box = (minY: number) => ({ minX: 0.4, maxX: 0.5, minY, maxY: minY + 0.05, minZ: 0, maxZ: 0.05 });
    expect(staying([{ id: 'part', box: box(0.18) }])).toEqual(['down']);
    expect(staying([{ id: 'part', box: box(0.204) }])).toEqual(['down']);
    expect(staying([{ id: 'part', box: box(0.2046) }])).toEqual(['across', 'down']);
  });

  it('do not stay where their terminal has moved or been turned, or they leave by another side', () => {
    const moved: RouteWire = { ...across, from: { xM: 0.1, yM: 0.21, faces: 'right' } };
    const turned: RouteWire = { ...across, from: { xM: 0.1, yM: 0.2, faces: 'top' } };
    for (const now of [moved, turned, { ...across, to: { exit: 'top' } } as const])
      expect(staying([], [now, down])).toEqual(['down']);
  });

  it('that are gone are left out', () => {
    expect(staying([], [down])).toEqual(['down']);
  });

  it('on boards made up lie as before with nothing changed, and clear of all with a part moved', () => {
    for (let n = 0; n < caseCount({ all: 20, some: 3 }); n += 1) {
      const board = madeUpBoard(8101 + n);
      if (!board) throw new Error(`The board ${8101 + n} can not be drawn.`);
      const { items, links, solution } = board;
      const onBoard = links.map(({ id, from, to, layer }) => {
        return { id, layer, diameterM: 0.004, along: [{ link: id, from, to }] };
      });
      const taskOf = (placements: typeof solution, before: readonly Route[]): RoutingTask => {
        const inPlace = { box: boxOf(board.shape.outline), items, placements };
        const own = { barriers: barriersInPlace(inPlace), wires: wiresInPlace(inPlace, onBoard) };
        return { shape: board.shape, ...own, before };
      };
      const first = routeWires(taskOf(solution, []), dressedAlone);
      const again = routeWires(taskOf(solution, first.routes), { ...dressedAlone, searchesEach: 0 });
      expect(again.routes).toEqual(first.routes);
      const moved = solution.map((at, index) => (index === 0 ? { ...at, xM: at.xM + 0.002 } : at));
      const task = taskOf(moved, first.routes);
      const { routes: after } = routeWires(task, { ...dressedAlone, searchesEach: 0 });
      const ways = new ClearWays(board.shape, task.barriers, clearanceM);
      const laid = after.map((route) => {
        const wire = task.wires.find(({ id }) => id === route.wire);
        if (!wire) throw new Error(`There is no wire ${route.wire}.`);
        return { wire, route };
      });
      for (const one of laid)
        expect(
          ways.isClear(
            one.wire,
            one.route,
            laid.filter((other) => other !== one),
          ),
        ).toBe(true);
    }
  }, 120_000);
});
