import { describe, expect, test } from 'vitest';
import type { BoardLines } from '../../../lib/board/layout/board-lines.ts';
import { tooFull, withoutSpot } from '../../../lib/board/layout/fullness.ts';
import type { Item, Placement } from '../../../lib/board/layout/item.ts';
import { edgesOf } from '../../../lib/board/shape/point.ts';
import { regionOf } from '../../../lib/board/shape/region.ts';

/** A square board of a tenth of a metre. */
const square = [
  { xM: 0, yM: 0 },
  { xM: 0.1, yM: 0 },
  { xM: 0.1, yM: 0.1 },
  { xM: 0, yM: 0.1 },
];
const boardLines: BoardLines = {
  box: { minX: 0, minY: 0, maxX: 0.1, maxY: 0.1 },
  ...{ outer: square, openings: [], edges: edgesOf(square), holes: [] },
};
const item = (id: string, widthMm: number, depthMm: number, more: Partial<Item> = {}): Item => ({
  ...{
    id,
    widthM: widthMm / 1000,
    depthM: depthMm / 1000,
    heightM: 0.04,
    massKg: 1,
    rooms: {},
    terminals: [],
  },
  ...more,
});
const raising = { clearanceM: 0.01, railWidthM: 0.02 };
const beneath = { wires: [] };

// By hand: two of 71 mm cover 100.8 cm2 of 100 cm2.
describe('parts that have more area than their board', () => {
  const isTold = (items: readonly Item[], heightsM = {}) =>
    tooFull('board', { region: regionOf(square) }, items, heightsM) !== null;

  test('are told, also where they may be raised and nothing may stand below', () => {
    expect(isTold([item('a', 71, 71), item('b', 71, 71)])).toBe(true);
    expect(isTold([item('a', 71, 71, { raising }), item('b', 71, 71, { raising })])).toBe(true);
    expect(isTold([item('a', 70, 71), item('b', 70, 71)])).toBe(false);
  });

  test('save the area of what stands below another, and no more', () => {
    const upper = item('a', 71, 71, { raising });
    expect(isTold([upper, item('b', 71, 71, { beneath })])).toBe(false);
    // 71 x 71 and 71 x 71 and 10 x 10, of which the last alone may stand below: 100.8 cm2.
    expect(isTold([upper, item('b', 71, 71), item('c', 10, 10, { beneath })])).toBe(true);
  });

  test('that the job raises a little stand over what is low enough for that alone', () => {
    const [a, b] = [item('a', 71, 71), item('b', 71, 71)];
    expect(isTold([a, b], { a: 0.012 })).toBe(true);
    expect(isTold([a, { ...b, heightM: 0.012 }], { a: 0.012 })).toBe(false);
  });
});

describe('a part that what is placed by hand leaves no spot', () => {
  const amp = item('amp', 60, 100);
  const given: Placement[] = [{ item: 'amp', xM: 0, yM: 0, turnDeg: 0, heightM: 0 }];
  const lacking = (open: Item, more: Partial<Parameters<typeof withoutSpot>[0]> = {}) =>
    withoutSpot({ boardLines, items: [amp, open], given, heightsM: {}, stepM: 0.005, ...more });

  // By hand: 40 mm are left beside the amplifier.
  test('is told with what is lacking', () => {
    expect(lacking(item('dist', 45, 45))).toMatchObject([
      { rule: 'item-does-not-fit', of: ['dist', 'amp'], value: expect.closeTo(0.005, 9) },
    ]);
    expect(lacking(item('dist', 40, 45))).toEqual([]);
  });

  test('is not told of one that is raised over it, or that it is raised over', () => {
    const dist = item('dist', 45, 45);
    expect(lacking(dist, { heightsM: { dist: 0.04 } })).toEqual([]);
    expect(lacking(dist, { given: given.map((one) => ({ ...one, heightM: 0.04 })) })).toEqual([]);
    expect(lacking(dist, { given: given.map((one) => ({ ...one, heightM: 0.012 })) })).toHaveLength(1);
    expect(
      lacking(
        { ...dist, raising },
        {
          items: [
            { ...amp, beneath },
            { ...dist, raising },
          ],
        },
      ),
    ).toEqual([]);
  });
});
