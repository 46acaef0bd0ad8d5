import { describe, expect, it } from 'vitest';
import { cutItems, fewestTiles } from '../../../lib/draw/board/board-tiles.ts';
import { boxAt } from '../../../lib/draw/paper.ts';
import { cutPlaces } from '../../../lib/draw/wiring/cut-places.ts';
import { wiresAlong } from '../../../lib/draw/wiring/route-ends.ts';
import { isOnLayer, wiringLayers } from '../../../lib/draw/wiring/wiring-layers.ts';
import type { PlanBoard, PlanRoute } from '../../../lib/model/plan/index.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';

const plan = fixedPlan('van-three-amps');
const [board] = plan.boards;
if (!board) throw new Error('the van has a board');

/** A route as drawn by hand, of a wire of the van. */
function routeThrough(...points: readonly (readonly [number, number])[]): PlanRoute {
  const [first] = board?.routes ?? [];
  if (!first) throw new Error('the van has routes');
  return { ...first, bendRadiusM: 0.03, points: points.map(([xM, yM]) => ({ xM, yM })) };
}

function layerRoutes(of: PlanBoard, id: string): PlanRoute[] {
  const layer = wiringLayers.find((each) => each.id === id);
  return of.routes.filter((route) =>
    wiresAlong(plan, route).some((wire) => layer !== undefined && isOnLayer(layer, wire)),
  );
}

describe('where a board is cut', () => {
  it('a line that crosses counts once; a turn, an end and a line along the cut count for more than any few', () => {
    const { costAt } = cutPlaces(plan, board, [
      routeThrough([0.1, 0.2], [0.5, 0.2], [0.5, 0.4], [0.9, 0.4]),
      routeThrough([0.1, 0.1], [0.9, 0.1]),
    ]);
    expect(costAt('x', 0.3)).toBe(2);
    expect(costAt('x', 0.7)).toBe(2);
    expect(costAt('x', 0.05)).toBe(0);
    expect(costAt('x', 0.11)).toBeGreaterThan(10);
    expect(costAt('x', 0.48)).toBeGreaterThan(10);
    expect(costAt('x', 0.5)).toBeGreaterThan(costAt('x', 0.48));
    expect(costAt('y', 0.3)).toBe(1);
  });

  it('each layer of the van is cut where no more lines are met than without a choice, and as whole as before', () => {
    const rooms = [{ orientation: 'portrait' as const, room: boxAt(0, 0, 160, 160) }];
    const margins = () => ({ left: 27, right: 27, top: 8, bottom: 8 });
    let gained = 0;
    for (const { id } of wiringLayers) {
      const { costAt } = cutPlaces(plan, board, layerRoutes(board, id));
      const [plain, chosen] = [null, costAt].map(
        (cost) => fewestTiles(rooms, board, margins, 5, cost).windows,
      );
      const cuts = (windows: typeof plain = []) =>
        windows.slice(1).reduce((sum, { fromXM }) => sum + costAt('x', fromXM), 0) +
        windows.slice(0, -1).reduce((sum, { toXM }) => sum + costAt('x', toXM), 0);
      expect(chosen?.length, id).toBe(plain?.length);
      expect(chosen?.length, id).toBeGreaterThan(1);
      expect(cuts(chosen), id).toBeLessThanOrEqual(cuts(plain));
      gained += cuts(plain) - cuts(chosen);
      expect(cutItems(board, chosen ?? []), id).toEqual(cutItems(board, plain ?? []));
      expect(chosen?.at(-1)?.toXM).toBe(plain?.at(-1)?.toXM);
      for (const [nth, window] of (chosen ?? []).slice(1).entries())
        expect(window.fromXM, id).toBeLessThan(chosen?.[nth]?.toXM ?? 0);
    }
    expect(gained).toBeGreaterThan(0);
  });
});

describe('the parts of a board that have a sheet', () => {
  const window = (fromXM: number, toXM: number) => ({ fromXM, toXM, fromYM: 0, toYM: 1 });

  it('are those that show a line, or a part of one, that no other shows', () => {
    const { needed } = cutPlaces(plan, { ...board, placements: [] }, [routeThrough([0.1, 0.2], [0.55, 0.2])]);
    const [first, second, third] = [window(0, 0.5), window(0.45, 1), window(0.95, 1.5)];
    expect(needed([first, second, third])).toEqual([first, second]);
    expect(needed([window(0, 0.6), second, third])).toEqual([window(0, 0.6)]);
  });

  it('are those in which alone a part stands whole where a wire of theirs ends', () => {
    const [route] = layerRoutes(board, 'power');
    if (!route) throw new Error('the van has power wires');
    const ends = wiresAlong(plan, route).flatMap(({ from, to }) => [from, to].map((id) => id.split('.')[0]));
    const item = board.placements.find((each) => ends.includes(each.item));
    if (!item) throw new Error('a power wire ends on the board');
    const far = { ...board, placements: [{ ...item, xM: 1.2, yM: 0.2, widthM: 0.1, depthM: 0.1 }] };
    const line = { ...route, points: [{ xM: 0.1, yM: 0.2 }] };
    const both = [window(0, 0.5), window(1, 1.5)];
    expect(cutPlaces(plan, far, [line]).needed(both)).toEqual(both);
    expect(cutPlaces(plan, { ...far, placements: [] }, [line]).needed(both)).toEqual([window(0, 0.5)]);
  });
});
