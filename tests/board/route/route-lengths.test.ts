import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import createGraph from 'ngraph.graph';
import { aStar } from 'ngraph.path';
import { describe, expect, it } from 'vitest';
import { outward } from '../../../lib/board/layout/item.ts';
import { isPoint, type RouteWire } from '../../../lib/board/route/route.ts';
import { type Barrier, type TrackGrid, trackGrid } from '../../../lib/board/route/track-grid.ts';
import type { Box, Point } from '../../../lib/board/shape/point.ts';
import { caseCount } from '../../long-run.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';
import { routeWires } from '../usual-board.ts';

const inGraph = outsideCheck('ways-in-ngraph');

const diameterM = 0.004;
const clearanceM = 0.0015;
const pitchM = 0.01;
/** Length alone counts: no bends, no nearness, no crossings. */
const lengthAlone = { pitchM, clearanceM, bendM: 0, nearness: 0, crossingM: 0 };

/** The points of the grid that have room for a wire, joined to their neighbours, with the lengths between them. */
function graphOf({ xs, ys, toEdgeM, toBarrierM, stepM }: TrackGrid) {
  const needM = Math.max(diameterM / 2 + clearanceM, stepM / 2) - 1e-9;
  const graph = createGraph<unknown, number>();
  const free = (at: number) => (toEdgeM[at] ?? -1) >= needM && (toBarrierM[at] ?? 0) >= needM;
  for (const [i, x] of xs.entries())
    for (const [j, y] of ys.entries()) {
      const at = i * ys.length + j;
      if (!free(at)) continue;
      const [right, up] = [xs[i + 1], ys[j + 1]];
      if (right !== undefined && free(at + ys.length)) graph.addLink(at, at + ys.length, right - x);
      if (up !== undefined && free(at + 1)) graph.addLink(at, at + 1, up - y);
    }
  return graph;
}

/** A part or the head of a fixing as a shape of flatten-js. */
function solid(barrier: Barrier): InstanceType<typeof Flatten.Circle> | InstanceType<typeof Flatten.Polygon> {
  if ('centre' in barrier) {
    const { centre, radiusM } = barrier;
    return new Flatten.Circle(new Flatten.Point(centre.xM, centre.yM), radiusM);
  }
  const { minX, minY, maxX, maxY } = barrier.box;
  return new Flatten.Polygon(new Flatten.Box(minX, minY, maxX, maxY));
}

/** Whether anything but the terminal's own part leaves a wire no room on the way from it, straight out by `lengthM`. */
function isShut(barriers: readonly Barrier[], end: RouteWire['from'], lengthM: number): boolean {
  if (!isPoint(end)) return false;
  const [start, out] = [new Flatten.Point(end.xM, end.yM), outward[end.faces]];
  const way = new Flatten.Segment(
    start,
    new Flatten.Point(end.xM + out.xM * lengthM, end.yM + out.yM * lengthM),
  );
  return barriers.some((barrier) => {
    const shape = solid(barrier);
    const isOwn = start.distanceTo(shape)[0] < 1e-4 || shape.contains(start);
    return !isOwn && way.distanceTo(shape)[0] < diameterM / 2 + clearanceM - 1e-6;
  });
}

/** The first point straight out of a terminal that a wire has room at, and how far out it is. */
function mouth(
  grid: TrackGrid,
  graph: ReturnType<typeof graphOf>,
  barriers: readonly Barrier[],
  from: RouteWire['from'],
) {
  if ('exit' in from) return null;
  const index = (lines: readonly number[], value: number) =>
    lines.findIndex((line) => Math.abs(line - value) < 1e-6);
  const [dx, dy] = [outward[from.faces].xM, outward[from.faces].yM];
  for (let far = 1; far < 40; far += 1) {
    const [i, j] = [index(grid.xs, from.xM) + far * dx, index(grid.ys, from.yM) + far * dy];
    const at = i * grid.ys.length + j;
    const lengthM = Math.abs((grid.xs[i] ?? 0) - from.xM) + Math.abs((grid.ys[j] ?? 0) - from.yM);
    if (graph.hasNode(at)) return isShut(barriers, from, lengthM) ? null : { at, lengthM };
  }
  return null;
}

describe('the length of a wire round parts, openings and fixings', () => {
  it('is that of the shortest path of ngraph.path on the same grid', () => {
    const shape = shapeOf({
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [
        { cut: 'notch', edge: 'top', offset: '200 mm', width: '120 mm', depth: '90 mm' },
        { cut: 'window', from: 'lower-left', x: '320 mm', y: '60 mm', width: '90 mm', height: '70 mm' },
      ],
    });
    const part = (id: string, minX: number, minY: number): { id: string; box: Box } => {
      return { id, box: { minX, maxX: minX + 0.08, minY, maxY: minY + 0.06 } };
    };
    const spread = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(spread, spread), { minLength: 4, maxLength: 4 }),
        fc.array(fc.tuple(fc.integer({ min: 20, max: 580 }), fc.integer({ min: 20, max: 380 })), {
          minLength: 3,
          maxLength: 12,
        }),
        (moves, heads) => {
          const places: readonly Point[] = [
            { xM: 0.04, yM: 0.04 },
            { xM: 0.44, yM: 0.05 },
            { xM: 0.42, yM: 0.22 },
            { xM: 0.05, yM: 0.22 },
          ];
          const parts = places.map(({ xM, yM }, at) => {
            const [x, y] = moves[at] ?? [0, 0];
            return part(`part-${at}`, xM + x / 1000, yM + y / 1000);
          });
          const fixings = heads.map(([x, y], at) => {
            return { id: `head-${at}`, centre: { xM: x / 1000, yM: y / 1000 }, radiusM: 0.007 };
          });
          const [a, b] = [parts[0]?.box, parts[2]?.box];
          if (!a || !b) throw new Error('no parts');
          const wire: RouteWire = {
            id: 'w',
            from: { xM: a.maxX, yM: a.minY + 0.03, faces: 'right' },
            to: { xM: b.minX + 0.04, yM: b.maxY, faces: 'top' },
            layer: 'speaker',
            diameterM,
          };
          const barriers = [...parts, ...fixings];
          const terminals = [wire.from, wire.to].filter(isPoint);
          const grid = trackGrid(shape, barriers, terminals, pitchM);
          const graph = graphOf(grid);
          const [start, goal] = [wire.from, wire.to].map((end) => mouth(grid, graph, barriers, end));
          const path =
            start && goal
              ? aStar(graph, { distance: (_, __, link) => link.data }).find(start.at, goal.at)
              : [];
          const { routes, faults } = routeWires({ shape, barriers, wires: [wire] }, lengthAlone);
          if (!start || !goal || path.length === 0) {
            expect(faults).toEqual([expect.objectContaining({ rule: 'wire-without-way' })]);
            return;
          }
          const lengthM = path.slice(1).reduce((sum, node, at) => {
            const link =
              graph.getLink(path[at]?.id ?? '', node.id) ?? graph.getLink(node.id, path[at]?.id ?? '');
            return sum + (link?.data ?? Number.NaN);
          }, start.lengthM + goal.lengthM);
          expect(inGraph.differs(routes[0]?.lengthM ?? Number.NaN, lengthM)).toBeCloseTo(lengthM, 9);
        },
      ),
      { numRuns: caseCount({ all: 150, some: 60 }), seed: 12 },
    );
  });
});
