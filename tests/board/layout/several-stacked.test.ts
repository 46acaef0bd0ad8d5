import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '../../../lib/board/layout/item.ts';
import type { SearchResult } from '../../../lib/board/layout/layout-search.ts';
import type { StackLimits } from '../../../lib/board/layout/raising/stacked-search.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { caseCount } from '../../long-run.ts';
import { shapeOf } from '../shapes.ts';
import { searchStacked } from '../usual-board.ts';
import { leastStack } from './every-stack.ts';
import { stackFaults } from './stack-faults.ts';

const gapM = 0.0127;
const railM = 0.036;
const stepM = 0.05;
const rules = { partGapM: gapM, powerToSignalM: 0.15 };
const limits: StackLimits = { layerM: 0.018, topM: 0.2 };

const plain = (id: string, widthM: number, depthM: number, heightM: number): Item => ({
  ...{ id, widthM, depthM, heightM, massKg: 1, rooms: {} },
  terminals: [{ id: `${id}.T`, side: 'top', alongM: widthM / 4, layer: 'power' }],
});
const amp = (id: string, widthM = 0.25, depthM = 0.2): Item => ({
  ...plain(id, widthM, depthM, 0.06),
  raising: { clearanceM: gapM, railWidthM: railM },
});
const bar = (id: string, widthM = 0.12, depthM = 0.12): Item => ({
  ...plain(id, widthM, depthM, 0.03),
  beneath: { wires: [] },
});
const joined = (from: string, to: string): Link => ({
  ...{ id: `${from}-${to}`, layer: 'power' },
  ...{ from: { item: from, terminal: `${from}.T` }, to: { item: to, terminal: `${to}.T` } },
});

interface Board {
  readonly wideMm: number;
  readonly highMm: number;
  readonly items: readonly Item[];
  readonly links?: readonly Link[];
  readonly limit?: StackLimits;
  readonly evaluations?: number;
  readonly seed?: number;
  readonly step?: number;
}

const boardShape = ({ wideMm, highMm }: Board) =>
  shapeOf({ rectangle: { width: `${wideMm} mm`, height: `${highMm} mm` } });

function search(board: Board): SearchResult {
  const { items, links = [], limit = limits, evaluations = 8000, seed = 3, step = stepM } = board;
  const task = { board: { shape: boardShape(board) }, items, given: [], links };
  return searchStacked(task, limit, { seed, stepM: step, evaluations, rules });
}

const raisedIn = ({ proposals }: SearchResult): number[] =>
  proposals.map(({ placements }) => placements.filter(({ heightM }) => heightM > 0).length);

/** 30 mm of a bar and 12.7 mm over it: three layers of 18 mm. */
const overBarM = 0.054;
/** What stands over the bar is 60 mm high itself: 54 + 60 + 12.7 mm are eight layers. */
const overBothM = 0.144;

const two: Board = {
  ...{ wideMm: 500, highMm: 250, items: [amp('a'), amp('b'), bar('c'), bar('d')] },
  links: [joined('a', 'c'), joined('b', 'd')],
};
const oneOverTwo: Board = {
  ...{ wideMm: 550, highMm: 200, items: [amp('a'), amp('b'), bar('c', 0.1, 0.06), bar('d', 0.1, 0.06)] },
  links: [joined('b', 'c'), joined('b', 'd')],
};
const tower: Board = {
  ...{ wideMm: 300, highMm: 200 },
  items: [amp('a', 0.3, 0.2), { ...amp('b', 0.19, 0.15), beneath: { wires: [] } }, bar('c', 0.06, 0.1)],
  links: [joined('a', 'b'), joined('b', 'c')],
  limit: { ...limits, topM: 0.21 },
};

describe('as many parts are raised as are needed', () => {
  it.each<readonly [string, Board, number, Readonly<Record<string, readonly number[]>>]>([
    ['two amplifiers, each over a bar', two, 2, { a: [overBarM], b: [overBarM] }],
    ['one of two, over both bars', oneOverTwo, 1, { a: [overBarM], b: [overBarM] }],
    ['one over another that is raised itself', tower, 2, { a: [overBarM, overBothM], b: [overBarM] }],
  ])(
    '%s: the least number, and a score within 5 % of the best of every layout there is',
    (_, board, raised, heightsM) => {
      const every = leastStack(boardShape(board), board.items, heightsM, board.links ?? [], { stepM, rules });
      const found = search(board);
      expect(every?.raised).toBe(raised);
      expect(found.proposals.length).toBeGreaterThan(0);
      expect(new Set(raisedIn(found))).toEqual(new Set([raised]));
      const total = found.proposals[0]?.score.total;
      expect(total).toBeGreaterThan((every?.total ?? Infinity) - 1e-9);
      expect(total).toBeLessThanOrEqual((every?.total ?? 0) * 1.05);
      expect(found.faults).toEqual([]);
    },
  );

  it('raises as few on small boards as any layout does, and finds one wherever there is one', () => {
    const seen = new Map<number | null, number>();
    const steps = (min: number, max: number) => fc.integer({ min, max }).map((n) => n * 50);
    const part = fc.tuple(fc.integer({ min: 5, max: 14 }), fc.integer({ min: 5, max: 14 }));
    fc.assert(
      fc.property(
        steps(6, 8),
        steps(4, 6),
        part,
        part,
        fc.boolean(),
        (wideMm, highMm, one, other, twoAmps) => {
          const items = [
            amp('a'),
            ...(twoAmps ? [amp('b', 0.2, 0.15)] : []),
            bar('c', one[0] / 100, one[1] / 100),
            bar('d', other[0] / 100, other[1] / 100),
          ];
          const board = { wideMm, highMm, items };
          const heightsM = Object.fromEntries(
            items.flatMap(({ id, raising }) => (raising ? [[id, [overBarM]]] : [])),
          );
          const every = leastStack(boardShape(board), items, heightsM, [], { stepM, rules, countOnly: true });
          const found = search(board);
          expect(found.proposals.length > 0).toBe(every !== null);
          expect(raisedIn(found)[0] ?? null).toBe(every?.raised ?? null);
          seen.set(every?.raised ?? null, (seen.get(every?.raised ?? null) ?? 0) + 1);
        },
      ),
      { numRuns: caseCount({ all: 15, some: 9 }) },
    );
    expect([...seen.keys()]).toEqual(expect.arrayContaining([null, 0, 1]));
  });

  it('proposes up to three that differ, best first, the same for the same seed', () => {
    const found = search(two);
    expect(found.proposals).toHaveLength(3);
    const totals = found.proposals.map(({ score }) => score.total);
    expect(totals).toEqual(totals.toSorted((a, b) => a - b));
    expect(new Set(found.proposals.map(({ placements }) => JSON.stringify(placements))).size).toBe(3);
    expect(search(two)).toEqual(found);
  });

  it('scores no more layouts than it is given, and three quarters of them for each number that it tries', () => {
    // One raised is tried and is not enough; two are. Up to a layout for each start is scored past the end.
    expect(search({ ...two, evaluations: 4000 }).evaluations).toBeLessThanOrEqual(4000 + 2 * 3000 + 12);
    // Three amplifiers can't lie side by side, whichever one of them is raised over the bar: 0.5 x 0.25 m hold two.
    const hopeless = { ...two, items: [amp('a'), amp('b'), amp('c'), bar('d')], links: [] };
    expect(search({ ...hopeless, evaluations: 4000 }).evaluations).toBeGreaterThan(4000);
  });

  it('tells the parts and by how much the board is too small where raising does not help either', () => {
    const crowded = { ...two, items: [amp('a'), amp('b'), amp('c'), bar('d')], links: [] };
    const { proposals, faults } = search(crowded);
    expect(proposals).toEqual([]);
    expect(faults).toEqual([expect.objectContaining({ rule: 'item-does-not-fit', level: 'stop' })]);
    expect(faults[0]?.of.length).toBeGreaterThan(1);
    expect(faults[0]?.value).toBeGreaterThan(0);
  });

  it('raises nothing past the top of the space', () => {
    expect(search({ ...tower, limit: { ...limits, topM: overBothM + 0.06 - 0.001 } }).proposals).toEqual([]);
  });

  it('raises nothing whose rails the stock does not give, and says so', () => {
    const asked: number[] = [];
    const none: StackLimits = {
      ...limits,
      railsInStock: (raised) => {
        asked.push(raised.length);
        return raised.length === 0;
      },
    };
    const { proposals, faults } = search({ ...two, limit: none });
    expect(proposals).toEqual([]);
    expect(faults).toEqual([expect.objectContaining({ rule: 'no-sheet-for-rails', level: 'stop' })]);
    expect(new Set(asked)).toEqual(new Set([2]));
  });

  it('leaves the air that an amplifier asks for above it, and the controls at its sides free from above', () => {
    const low: Item = {
      ...plain('low', 0.12, 0.12, 0.04),
      ...{ beneath: { airM: 0.0254, wires: [] }, rooms: { left: { accessM: 0.03 } } },
    };
    const found = search({ ...two, items: [amp('a', 0.3, 0.25), low], wideMm: 350 });
    expect(found.proposals.length).toBeGreaterThan(0);
    for (const { placements } of found.proposals) {
      // 40 mm and an inch of air are 65.4 mm: four layers, where 12.7 mm alone would take three.
      expect(placements.map(({ heightM }) => heightM)).toEqual([expect.closeTo(0.072, 9), 0]);
      expect(stackFaults([amp('a', 0.3, 0.25), low], placements, railM)).toEqual([]);
    }
  });
});

describe('a layout with raised parts', () => {
  it('has nothing that overlaps in three dimensions, covers a control or takes the air of what lies beneath', () => {
    const steps = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
    const upper = fc.record({ w: steps(18, 30), d: steps(16, 24) });
    const lower = fc.record({
      ...{ w: steps(5, 14), d: steps(5, 14), h: steps(2, 5), air: steps(0, 4), face: fc.boolean() },
      ...{ access: steps(0, 6), side: fc.constantFrom('left', 'right', 'top', 'bottom') },
      ...{ raisable: fc.boolean() },
    });
    const seen = new Set<number>();
    fc.assert(
      fc.property(
        fc.array(upper, { minLength: 1, maxLength: 3 }),
        fc.array(lower, { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 1, max: 100 }),
        (uppers, lowers, seed) => {
          const items = [
            ...uppers.map(({ w, d }, at) => amp(`u${at}`, w, d)),
            ...lowers.map(({ w, d, h, air, face, access, side, raisable }, at): Item => {
              const item = { ...plain(`l${at}`, w, d, h), faceAccess: face };
              const rooms = access > 0 ? { [side]: { accessM: access } } : {};
              const raising = raisable ? { raising: { clearanceM: gapM, railWidthM: railM } } : {};
              return face
                ? { ...item, rooms }
                : { ...item, rooms, ...raising, beneath: { airM: air, wires: [] } };
            }),
          ];
          // As wide as the upper parts beside each other with room for their rails: what is left takes few lower ones.
          const wideMm = uppers.reduce((sum, { w }) => sum + w * 1000 + 20, 0);
          const highMm = Math.max(...uppers.map(({ d }) => d * 1000)) + 20;
          const found = search({ wideMm, highMm, items, seed, step: 0.02, evaluations: 1200 });
          for (const { placements } of found.proposals) {
            expect(placements.map(({ item }) => item)).toEqual(items.map(({ id }) => id));
            expect(stackFaults(items, placements, railM)).toEqual([]);
          }
          for (const raised of raisedIn(found)) seen.add(raised);
        },
      ),
      { numRuns: 60 },
    );
    // Cases that raise none would show nothing.
    expect([...seen]).toEqual(expect.arrayContaining([1, 2]));
  });
});
