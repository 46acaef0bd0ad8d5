import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FeedGrid, feedGrid } from '../../lib/draw/power/feed-grid.ts';
import { cutToSheets } from '../../lib/draw/power/feed-sheets.ts';
import { feedForest } from '../../lib/draw/power/feed-tree.ts';
import { arbitraryShape } from './sample/arbitrary-shape.ts';
import { samplePlan } from './sample/sample-plan.ts';

/** Pairs of an edge and a node that the edge runs through without ending at it. */
function runsThrough({ nodes, edges }: FeedGrid): string[] {
  const columnOf = (id: string): number => nodes.find((node) => node.id === id)?.column ?? -1;
  return edges.flatMap(({ wire, from, to, row }) =>
    nodes
      .filter(({ id, column, fromRow, toRow }) => {
        const between = column > columnOf(from) && column < columnOf(to);
        return between && id !== from && id !== to && row >= fromRow && row <= toRow;
      })
      .map(({ id }) => `${wire.id} through ${id}`),
  );
}

describe('the grid of a feed', () => {
  it('runs every conductor from left to right, on a row that no other thing stands on', () => {
    fc.assert(
      fc.property(arbitraryShape, (shape) => {
        const plan = samplePlan(shape);
        const grid = feedGrid(plan, feedForest(plan));
        const columnOf = (id: string): number => grid.nodes.find((node) => node.id === id)?.column ?? -1;
        for (const { wire, from, to } of grid.edges)
          expect(columnOf(from), wire.id).toBeLessThan(columnOf(to));
        expect(runsThrough(grid)).toEqual([]);
      }),
    );
  });

  it('holds every power and ground conductor once', () => {
    fc.assert(
      fc.property(arbitraryShape, (shape) => {
        const plan = samplePlan(shape);
        const { edges, hanging, rings } = feedGrid(plan, feedForest(plan));
        const shown = [
          ...edges.map(({ wire }) => wire.id),
          ...[...hanging.values()].flat().map(({ wire }) => wire.id),
          ...rings.map(({ id }) => id),
        ];
        const wanted = plan.wires
          .filter(({ role }) => role === 'power' || role === 'ground')
          .map(({ id }) => id);
        expect(shown.toSorted()).toEqual(wanted.toSorted());
      }),
    );
  });
});

describe('cutToSheets', () => {
  it('shows every conductor when a feed is cut, the cut one on both sheets', () => {
    fc.assert(
      fc.property(arbitraryShape, fc.integer({ min: 3, max: 6 }), (shape, columns) => {
        const plan = samplePlan(shape);
        const { roots } = feedForest(plan);
        const gridOf = (root: (typeof roots)[number]): FeedGrid =>
          feedGrid(plan, { roots: [root], rings: [] });
        const sheets = roots.flatMap((root) => cutToSheets(root, (tree) => gridOf(tree).columns <= columns));
        const shown = new Set(sheets.flatMap((tree) => gridOf(tree).edges.map(({ wire }) => wire.id)));
        for (const { id, role } of plan.wires) if (role === 'power') expect(shown).toContain(id);
      }),
    );
  });
});
