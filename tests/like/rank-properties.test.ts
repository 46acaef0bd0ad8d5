import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difference, regionArea, regionOf } from '../../lib/board/shape/region.ts';
import { leastCost } from '../../lib/like/least-cost.ts';
import type { PastBoard } from '../../lib/like/past-board.ts';
import { nearestBoards } from '../../lib/like/rank-boards.ts';
import type { WishedPart } from '../../lib/like/wish.ts';
import { madeBoard, madeItem, madePart, madeSpace, madeWish, rectangle } from './made-boards.ts';

const mm = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => value / 1000);

/** Amplifiers side by side in a row, each of a sort of its own. */
const rows = fc.array(fc.record({ widthM: mm(40, 120), kind: fc.constantFrom('amplifier', 'processor') }), {
  maxLength: 3,
});

/** A board with a row of parts, 15 mm apart and 20 mm from its edges, that lacks nothing where it stands. */
const boards = fc
  .record({ rows, fixings: fc.integer({ min: 0, max: 2 }), exits: fc.integer({ min: 0, max: 4 }) })
  .map(({ rows: row, fixings, exits }): PastBoard => {
    let fromM = 0.03;
    const items = row.map(({ widthM, kind }, at) => {
      const box = { minX: fromM, minY: 0.05, maxX: fromM + widthM, maxY: 0.13 };
      fromM += widthM + 0.015;
      return madeItem({
        ...{
          id: `item-${at}`,
          part: `part-${kind}-${widthM}`,
          kind,
          sort: kind,
          at: box,
          holes: [],
          drawA: 5,
        },
      });
    });
    return madeBoard({
      ...{ items, outline: rectangle(fromM + 0.015, 0.2), exits: { left: exits }, vehicle: 'car' },
      fixings: Array.from({ length: fixings }, (_, at) => ({
        id: `f${at}`,
        xM: 0.015,
        yM: 0.02 + at * 0.15,
      })),
    });
  });

/** The space that a board was made for: room round it, and its fixings on sound points. */
function ownSpace({ outline, fixings, datum }: PastBoard, roomM = 0.03) {
  const widthM = Math.max(...outline.map(({ xM }) => xM));
  return madeSpace(widthM + datum.xM + roomM, 0.2 + datum.yM + roomM, {
    soundPoints: fixings.map(({ id, xM, yM }) => ({ id, xM: xM + datum.xM, yM: yM + datum.yM })),
    reached: ['left'],
  });
}

const partsOf = ({ items }: PastBoard): WishedPart[] =>
  items.map(({ part, kind, sort, at, drawA }) =>
    madePart({
      ...{ part, kind, sort, widthM: at.maxX - at.minX, depthM: at.maxY - at.minY },
      ...{ holes: [], plannedA: drawA },
    }),
  );

describe('the ranking of past boards', () => {
  test('has a board that lacks nothing as its own best match, and to it nothing is to change', () => {
    fc.assert(
      fc.property(boards, fc.array(boards, { maxLength: 4 }), (own, others) => {
        const past = [...others.map((one, at) => ({ ...one, job: `other-${at}`, space: 'cargo' })), own];
        const [first] = nearestBoards(madeWish(ownSpace(own), partsOf(own)), past, 3);
        expect([first?.board.job, first?.minutes, first?.changes]).toEqual(['past', 0, []]);
      }),
      { numRuns: 60 },
    );
  });

  test('never has a board lower in a larger space', () => {
    fc.assert(
      fc.property(
        boards,
        ...[mm(150, 500), mm(120, 400), mm(0, 60), mm(0, 60), mm(0, 40)],
        (board, widthM, heightM, moreX, moreY, deeper) => {
          const extra = { soundPoints: [{ id: 'p', xM: 0.06, yM: 0.06 }], reached: [] };
          const small = madeSpace(widthM, heightM, { ...extra, depthM: 0.07 });
          const large = madeSpace(widthM + moreX, heightM + moreY, { ...extra, depthM: 0.07 + deeper });
          const [before] = nearestBoards(madeWish(small), [board], 1);
          const [after] = nearestBoards(madeWish(large), [board], 1);
          const key = (one: typeof before) => (one?.blocked ? 1e6 : 0) + (one?.minutes ?? 0);
          expect(key(after)).toBeLessThanOrEqual(key(before) + 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('never has what is worse in every part above', () => {
    fc.assert(
      fc.property(boards, mm(250, 600), (board, widthM) => {
        const wish = madeWish(madeSpace(widthM, 0.3), [madePart({ part: 'part-wanted', holes: [] })]);
        const worse: PastBoard = {
          ...board,
          job: 'a-worse',
          thicknessM: board.thicknessM + 0.006,
          fixings: [...board.fixings, { id: 'f-more', xM: 0.015, yM: 0.1 }],
          items: board.items.map((item) => ({ ...item, heightM: item.heightM + 0.01 })),
          exits: { ...board.exits, top: 2 },
        };
        const [first] = nearestBoards(wish, [worse, board], 2);
        expect(first?.board.job).toBe('past');
      }),
      { numRuns: 40 },
    );
  });

  test('is the same in whatever order past boards come, and finds the same with fewer wanted', () => {
    fc.assert(
      fc.property(fc.array(boards, { minLength: 2, maxLength: 5 }), (all) => {
        const past = all.map((one, at) => ({ ...one, job: `job-${at}` }));
        const wish = madeWish(madeSpace(0.35, 0.3), [madePart({ holes: [] })]);
        const ids = (from: readonly PastBoard[], most: number) =>
          nearestBoards(wish, from, most).map(({ board }) => board.job);
        expect(ids(past.toReversed(), 5)).toEqual(ids(past, 5));
        expect(ids(past, 2)).toEqual(ids(past, 5).slice(0, 2));
      }),
      { numRuns: 30 },
    );
  });

  test('says that a rectangle goes into a rectangle where one of its two ways is no larger, and lays it inside', () => {
    fc.assert(
      fc.property(mm(50, 400), mm(50, 400), mm(50, 400), mm(50, 400), (w, h, roomX, roomY) => {
        const board = madeBoard({ outline: rectangle(w, h), datum: { xM: 9, yM: 9 } });
        const [found] = nearestBoards(madeWish(madeSpace(roomX, roomY)), [board], 1);
        // A hair of 3 mm on either side of the bound is left out: places lie on a lattice of 1 mm.
        const spareM = Math.max(Math.min(roomX - w, roomY - h), Math.min(roomX - h, roomY - w));
        if (spareM > 0.003) expect(found?.place).not.toBeNull();
        if (spareM < 0) expect(found?.place).toBeNull();
        if (!found?.place) return;
        const { xM, yM, turnDeg } = found.place;
        const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
        const laid = rectangle(w, h).map((p) => ({
          xM: xM + p.xM * cos - p.yM * sin,
          yM: yM + p.xM * sin + p.yM * cos,
        }));
        // polygon-clipping: nothing of the board is left outside the space.
        const space = rectangle(roomX, roomY);
        expect(regionArea(difference(regionOf(laid), regionOf(space)))).toBeLessThan(1e-9);
      }),
      { numRuns: 150 },
    );
  });
});

describe('the cheapest pairs', () => {
  const orders = (columns: readonly number[], rows: number): number[][] =>
    rows === 0
      ? [[]]
      : columns.flatMap((one) =>
          orders(
            columns.filter((other) => other !== one),
            rows - 1,
          ).map((rest) => [one, ...rest]),
        );

  test('cost as little as the best of all pairings, one tried after another', () => {
    const tables = fc.integer({ min: 1, max: 4 }).chain((rows) =>
      fc.integer({ min: rows, max: 5 }).chain((columns) =>
        fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: columns, maxLength: columns }), {
          minLength: rows,
          maxLength: rows,
        }),
      ),
    );
    fc.assert(
      fc.property(tables, (costs) => {
        const cost = (chosen: readonly number[]) =>
          chosen.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Number.NaN), 0);
        const chosen = leastCost(costs);
        expect(new Set(chosen).size).toBe(costs.length);
        const columns = [...(costs[0] ?? []).keys()];
        expect(cost(chosen)).toBe(Math.min(...orders(columns, costs.length).map(cost)));
      }),
    );
  });
});
