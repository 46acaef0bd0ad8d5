import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { inflowsOf } from '../../../lib/plan/power/short/fuse-inflow.ts';
import { outsideCheck } from '../../outside-check.ts';
import { circuitOf, ringOfTwoBatteries, sideBySide, tree } from './circuits.ts';

const byTrial = outsideCheck('let-through-by-trial');

const nodeCount = 6;
/** A fuse or a conductor between two of the nodes. */
const anyEdge = fc.record({
  from: fc.nat(nodeCount - 1),
  to: fc.nat(nodeCount - 1),
  ratingA: fc.option(fc.integer({ min: 1, max: 100 }), { nil: null }),
});
const anyEdges = fc.array(anyEdge, { minLength: 1, maxLength: 9 });

/** The battery stands at node 0; what flows into the last node is asked. */
const nodeName = (node: number) => (node === 0 ? 'bat.POS' : `n${node}.T`);
const lastNode = nodeName(nodeCount - 1);

function circuitFrom(edges: readonly { from: number; to: number; ratingA: number | null }[]): Circuit {
  const written = edges.map(
    ({ from, to, ratingA }, k) =>
      [ratingA === null ? `c${k}` : `f${k}`, nodeName(from), nodeName(to)] as const,
  );
  return circuitOf({
    batteries: ['bat'],
    feeds: written.filter(([id]) => id.startsWith('c')),
    fuses: written.filter(([id]) => id.startsWith('f')),
    loads: [],
  });
}

/** True where the last node is reached from the battery while some fuses are open. */
function reaches({ edges }: Circuit, open: ReadonlySet<string>): boolean {
  const seen = new Set(['bat.POS']);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { id, from, to } of edges)
      if (!open.has(id) && seen.has(from) !== seen.has(to)) {
        seen.add(from).add(to);
        grew = true;
      }
  }
  return seen.has(lastNode);
}

describe('what fuses let flow into a node', () => {
  // Max-flow min-cut theorem (Ford and Fulkerson, 1956), the least cut found here by trying every set of fuses.
  test('is the least sum of fuses whose opening parts it from every source', () => {
    fc.assert(
      fc.property(anyEdges, (edges) => {
        const circuit = circuitFrom(edges);
        const ratingA = (id: string) => edges[Number(id.slice(1))]?.ratingA ?? Number.NaN;
        const fuses = circuit.edges.flatMap(({ id, kind }) => (kind === 'fuse' ? [id] : []));
        const cuts = Array.from({ length: 2 ** fuses.length }, (_, bits) =>
          fuses.filter((_fuse, k) => (bits >> k) % 2 === 1),
        ).filter((open) => !reaches(circuit, new Set(open)));
        const least = Math.min(...cuts.map((open) => open.reduce((sum, id) => sum + ratingA(id), 0)));
        const { bare, fuses: entering, mostA } = inflowsOf(circuit).into(lastNode, '');
        // The only battery, where it is bare, comes through no fuse.
        expect(byTrial.differs(mostA(ratingA), bare ? 0 : least)).toBe(bare ? 0 : least);
        expect(bare).toBe(cuts.length === 0);
        // Opening the nearest fuses is one such cut.
        if (!bare) expect(reaches(circuit, new Set(entering.map(({ id }) => id)))).toBe(false);
      }),
    );
  });
});

test('what fuses let through to several nodes together: of those in a row the least, of those side by side the sum', () => {
  const each = (ratings: Readonly<Record<string, number>>) => (fuse: string) => ratings[fuse] ?? 0;
  const inARow = each({ main: 100, 'way-1': 60, 'way-2': 80 });
  expect(inflowsOf(tree()).jointA(['a.B+'], inARow)).toBe(60);
  expect(inflowsOf(tree()).jointA(['a.B+', 'b.B+'], inARow)).toBe(100);
  expect(inflowsOf(sideBySide(2)).jointA(['block.IN'], each({ 'side-1': 40, 'side-2': 50 }))).toBe(90);
  // A battery at either end, each with its fuse: the smaller one alone would not bound what the larger lets in.
  expect(inflowsOf(ringOfTwoBatteries()).jointA(['amp.B+'], each({ 'fuse-front': 5, 'fuse-rear': 30 }))).toBe(
    35,
  );
  expect(inflowsOf(tree()).jointA(['bat.POS', 'nowhere.X'], inARow)).toBe(0);
});
