import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tightestBend } from '../../../../lib/board/route/bends.ts';
import { ClearWays } from '../../../../lib/board/route/clear-way.ts';
import { DressRooms } from '../../../../lib/board/route/dress/dress-room.ts';
import { Dresser } from '../../../../lib/board/route/dress/dresser.ts';
import { dressed, layInTurn } from '../../../../lib/board/route/dress/dressing.ts';
import { countCrossings, outFrom, type Route, type RouteWire } from '../../../../lib/board/route/route.ts';
import { routeOrder } from '../../../../lib/board/route/route-order.ts';
import { routingDefaults } from '../../../../lib/board/route/routing.ts';
import { type Barrier, toBarrier } from '../../../../lib/board/route/track-grid.ts';
import { distance, type Point } from '../../../../lib/board/shape/point.ts';
import { shapeOf } from '../../shapes.ts';
import { routeWires, usualRouting } from '../../usual-board.ts';
import { boardHeightM, boardWidthM, fewestByWaysRound, strips, wiresByLot } from '../ways-round.ts';

const shape = shapeOf({ rectangle: { width: `${boardWidthM} m`, height: `${boardHeightM} m` } });
const rules = { ...routingDefaults, ...usualRouting };
const heads: readonly Barrier[] = [
  { id: 'f1', centre: { xM: 0.12, yM: 0.225 }, radiusM: 0.007 },
  { id: 'f2', centre: { xM: 0.48, yM: 0.1 }, radiusM: 0.007 },
];
const barriers = [...strips, ...heads];

/** Wires laid in turn, then dressed. */
function dress(wires: readonly RouteWire[]) {
  const { clearanceM, dressPrices: prices, powerToSignalM: apartM, searchesEach, seed } = rules;
  const dresser = new Dresser(new DressRooms(shape, barriers, clearanceM), apartM);
  const kit = { dresser, ways: new ClearWays(shape, barriers, clearanceM), prices, apartM, seed };
  return dressed(kit, layInTurn(kit, routeOrder(wires), []), searchesEach * wires.length);
}

/** Points along a route, no further apart than a millimetre. */
function pointsAlong({ points }: Route): Point[] {
  return points.slice(1).flatMap((b, at) => {
    const a = points[at] ?? b;
    const pieces = Math.max(1, Math.ceil(distance(a, b) / 0.001));
    return Array.from({ length: pieces + 1 }, (_, k) => ({
      xM: a.xM + (k / pieces) * (b.xM - a.xM),
      yM: a.yM + (k / pieces) * (b.yM - a.yM),
    }));
  });
}

/** True where a point is further from both ends of a wire than its own half and the room that it keeps. */
function isOnTheWay(p: Point, { points }: Route, needM: number): boolean {
  return [points[0], points.at(-1)].every((end) => end && distance(end, p) > needM);
}

describe('a terminal with the head of a fixing before it', () => {
  it('lets no wire through the bolt, and the fixing is told', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 11 }), fc.integer({ min: 5, max: 8 }), (beforeMm, radiusMm) => {
        const wires = wiresByLot(7, 3);
        const [shut] = wires;
        if (!shut || 'exit' in shut.from) return;
        const centre = outFrom(shut.from, shut.from.faces, (beforeMm + radiusMm) / 1000);
        const head = { id: 'f9', centre, radiusM: radiusMm / 1000 };
        const { routes, faults } = routeWires(
          { shape, barriers: [...strips, head], wires },
          { pitchM: 0.0125 },
        );
        for (const route of routes)
          for (const p of pointsAlong(route)) expect(toBarrier(p, head)).toBeGreaterThan(0.0015);
        const told = faults.filter(({ rule }) => rule === 'wire-without-way');
        if (!routes.some(({ wire }) => wire === shut.id)) expect(told[0]?.of).toContain('f9');
      }),
      { numRuns: 8, seed: 2 },
    );
  });
});

describe('many wires, dressed', () => {
  it('go straight along x and y, keep their room from parts and heads of fixings, and end at their terminals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 9, max: 13 }), fc.nat(10_000), (count, seed) => {
        for (const { wire, route } of dress(wiresByLot(seed, count))) {
          const needM = wire.diameterM / 2 + rules.clearanceM;
          expect(wire.from).toMatchObject(route.points[0] ?? {});
          expect(wire.to).toMatchObject(route.points.at(-1) ?? {});
          for (const [at, b] of route.points.entries()) {
            const a = route.points[at - 1] ?? b;
            expect(a.xM === b.xM || a.yM === b.yM).toBe(true);
          }
          for (const p of pointsAlong(route).filter((one) => isOnTheWay(one, route, needM)))
            for (const barrier of barriers) expect(toBarrier(p, barrier)).toBeGreaterThan(needM - 1e-5);
        }
      }),
      { numRuns: 6, seed: 5 },
    );
  });

  it('leave each bend its radius, of which a jog is eased over the straight wire before and behind it', () => {
    let jogs = 0;
    for (const seed of [11, 12, 13]) {
      const stiff = wiresByLot(seed, 6).map((wire) => ({ ...wire, bendRadiusM: 0.02 }));
      for (const { route } of dress(stiff)) {
        expect(tightestBend(route, 0.02)).toBeNull();
        const legs = route.points.slice(1).map((b, at) => distance(route.points[at] ?? b, b));
        if (legs.slice(1, -1).some((legM) => legM < 0.04 - 1e-6)) jogs += 1;
      }
    }
    expect(jogs).toBeGreaterThan(0);
  });

  it('cross no less often than every way round the part allows, and most often as little', () => {
    const draws = Array.from({ length: 12 }, (_, seed) => wiresByLot(300 + seed, 6));
    const found = draws.map((wires) => {
      const laid = dress(wires);
      return {
        least: fewestByWaysRound(wires),
        own: laid.length === wires.length ? countCrossings(laid.map(({ route }) => route)) : Infinity,
      };
    });
    for (const { least, own } of found) expect(own).toBeGreaterThanOrEqual(least);
    expect(found.filter(({ least, own }) => own === least).length).toBeGreaterThanOrEqual(8);
  });

  it('are all laid, and come out the same each time', () => {
    for (const seed of [1, 2]) {
      const task = { shape, barriers, wires: wiresByLot(seed, 12) };
      const found = routeWires(task);
      expect(found.routes).toHaveLength(12);
      expect(routeWires(task)).toEqual(found);
    }
  });
});
