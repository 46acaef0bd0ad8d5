import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlacements } from '../../../lib/board/layout/check-placements.ts';
import { bodyOf, type Item, type Placement, turns } from '../../../lib/board/layout/item.ts';
import { place } from '../../../lib/board/layout/placed.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { ScoreLedger, scoreLayout } from '../../../lib/board/layout/score/score-ledger.ts';
import { tidiness } from '../../../lib/board/layout/score/tidiness.ts';
import { tidyLayouts } from '../../../lib/board/propose/tidy-layouts.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import { shapeOf } from '../shapes.ts';
import { scoreBoard, usualHouse, usualScore } from '../usual-board.ts';

const wide = shapeOf({ rectangle: { width: '1000 mm', height: '500 mm' } });

const amp = (id: string, widthM = 0.25, depthM = 0.18): Item => ({
  ...{ id, widthM, depthM, heightM: 0.06, massKg: 3, kind: 'amplifier' },
  rooms: { left: { accessM: 0.05 }, right: { bendM: 0.05 } },
  terminals: [
    { id: `${id}.IN`, side: 'left', alongM: depthM / 2, layer: 'signal' },
    { id: `${id}.B+`, side: 'right', alongM: depthM / 3, layer: 'power' },
  ],
});
const flat = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const noStacks = { layerM: 0, topM: 0 };

describe('a score by what differs', () => {
  it('is that of the layout scored afresh, whatever was scored before', () => {
    const items = ['a', 'b', 'c', 'd'].map((id) => amp(id, 0.12, 0.1));
    const joined = (id: string, from: Link['from'], to: Link['to'], layer: Link['layer']): Link => {
      return { id, from, to, layer };
    };
    const links = [
      joined('1', { item: 'a', terminal: 'a.B+' }, { item: 'b', terminal: 'b.IN' }, 'power'),
      joined('2', { item: 'c', terminal: 'c.IN' }, { exit: 'left' }, 'signal'),
      joined('3', { exit: 'nearest' }, { item: 'd', terminal: 'd.B+' }, 'power'),
      {
        ...joined('4', { item: 'a', terminal: 'a.IN' }, { item: 'd', terminal: 'd.IN' }, 'signal'),
        longestM: 0.3,
      },
      {
        ...joined('5', { item: 'b', terminal: 'b.B+' }, { exit: 'bottom' }, 'ground'),
        wanted: { lengthM: 0.1, rim: [{ xM: 0, yM: -0.05 }] },
      },
    ];
    const board = {
      ...scoreBoard(flat, [{ id: 'f', xM: 0.3, yM: 0.2, radiusM: 0.008 }]),
      signalSide: 'left' as const,
    };
    const step = fc.tuple(
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: 0, max: 450 }),
      fc.integer({ min: 0, max: 280 }),
      fc.constantFrom(...turns),
      fc.boolean(),
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        const ledger = new ScoreLedger(board, links, usualScore);
        let placed = items.map((item, at) => put(item, 0.14 * at, 0.05, 0));
        ledger.judge(placed);
        ledger.take();
        for (const [at, x, y, turnDeg, isTaken] of steps) {
          const item = items[at];
          if (!item) continue;
          const next = placed.with(at, put(item, x / 1000, y / 1000, turnDeg));
          const now = ledger.judge(next);
          const afresh = scoreLayout(board, next, links, usualScore);
          expect(now.total).toBeCloseTo(afresh.total, 9);
          expect(now.broken).toBeCloseTo(afresh.broken, 9);
          expect([now.roomsShort, now.wiresShort]).toEqual([afresh.roomsShort, afresh.wiresShort]);
          if (!isTaken) continue;
          ledger.take();
          placed = next;
        }
      }),
      { numRuns: 60 },
    );
  });
});

function put(item: Item, xM: number, yM: number, turnDeg: Placement['turnDeg']) {
  return place(item, { item: item.id, xM, yM, turnDeg, heightM: 0 }, usualScore.partGapM);
}

describe('tidiness, common practice, no source', () => {
  const box = boxOf(wide.outline);
  const judged = (...places: readonly (readonly [Item, number, number, Placement['turnDeg']?])[]) =>
    tidiness(
      box,
      places.map(([item, x, y, turnDeg = 0]) => put(item, x, y, turnDeg)),
      usualHouse,
    );

  it('neighbours on a common edge cost nothing, a hair off what a tape shows costs half, and more further off', () => {
    const [a, b] = [amp('a'), amp('b', 0.2, 0.14)];
    const off = (byM: number) => judged([a, 0.2, 0.1], [b, 0.5, 0.1 + byM]).alignment;
    expect(off(0)).toBe(0);
    expect(off(usualHouse.tapeM / 2)).toBe(0);
    expect(off(usualHouse.tapeM)).toBeGreaterThanOrEqual(usualHouse.alignmentM);
    expect(off(-0.03)).toBeGreaterThan(off(-usualHouse.tapeM));
    // The middles in line, or the upper edges, are as good.
    expect(off(0.02)).toBe(0);
    expect(off(0.04)).toBe(0);
  });

  it('like gaps cost less than unlike ones, and a part in the middle of the board less than one beside it', () => {
    const [a, b, c] = [amp('a', 0.1), amp('b', 0.1), amp('c', 0.1)];
    const even = judged([a, 0.25, 0.16], [b, 0.45, 0.16], [c, 0.65, 0.16]).gaps;
    const uneven = judged([a, 0.25, 0.16], [b, 0.42, 0.16], [c, 0.65, 0.16]).gaps;
    expect(even).toBeCloseTo(0, 9);
    // Gaps of 70 and 130 mm.
    expect(uneven).toBeCloseTo(usualHouse.gaps * 0.06, 9);
  });

  it('parts of one kind: turned across costs, mirrored costs nothing where they are alike', () => {
    const [a, b] = [amp('a'), amp('b')];
    expect(judged([a, 0.1, 0.1], [b, 0.5, 0.1]).pairs).toBe(0);
    expect(judged([a, 0.1, 0.1], [b, 0.5, 0.1, 180]).pairs).toBe(0);
    expect(judged([a, 0.1, 0.1], [b, 0.5, 0.1, 90]).pairs).toBeGreaterThan(0);
    expect(judged([a, 0.1, 0.1], [amp('c', 0.2), 0.5, 0.1, 180]).pairs).toBeGreaterThan(0);
  });

  it('a ground bar costs by how far it stands from its distribution', () => {
    const bar: Item = { ...amp('bar', 0.1, 0.04), kind: 'distribution', shares: 'ground' };
    const block: Item = { ...amp('block', 0.1, 0.06), kind: 'distribution', shares: 'feed' };
    expect(judged([bar, 0.1, 0.1], [block, 0.23, 0.1]).companions).toBe(0);
    // 500 mm apart, 60 of them free.
    expect(judged([bar, 0.1, 0.1], [block, 0.7, 0.1]).companions).toBeCloseTo(usualHouse.companion * 0.44, 9);
  });
});

describe('what a proud shop would not hang on its wall', () => {
  const places = (items: readonly Item[], heads = [{ id: 'f', xM: 0.5, yM: 0.25, radiusM: 0.008 }]) => {
    const links = items.flatMap(({ id }): Link[] => [
      { id: `${id}-in`, from: { exit: 'left' }, to: { item: id, terminal: `${id}.IN` }, layer: 'signal' },
      { id: `${id}-feed`, from: { exit: 'right' }, to: { item: id, terminal: `${id}.B+` }, layer: 'power' },
    ]);
    const task = { board: { shape: wide, heads }, items, given: [], links };
    const { proposals } = tidyLayouts(task, noStacks, { rules: usualScore });
    const placements = proposals[0]?.placements ?? [];
    expect(checkPlacements(task.board, items, placements, usualScore)).toEqual([]);
    return { placements, task };
  };
  const bodies = (items: readonly Item[], placements: readonly Placement[]) =>
    placements.flatMap((at) => {
      const item = items.find(({ id }) => id === at.item);
      return item ? [bodyOf(item, at)] : [];
    });

  it('no part stands at the edge while the board has room', () => {
    for (const items of [[amp('a')], [amp('a'), amp('b')], [amp('a'), amp('b'), amp('c', 0.08, 0.06)]]) {
      const { placements } = places(items);
      for (const { minX, maxX, minY, maxY } of bodies(items, placements))
        expect(Math.min(minX, 1 - maxX, minY, 0.5 - maxY)).toBeGreaterThanOrEqual(usualHouse.marginM - 1e-9);
    }
  });

  it('no head of a fixing closes a terminal or stands before the panel of the gains', () => {
    const items = [amp('a'), amp('b')];
    const heads = [0.25, 0.5, 0.75].map((xM, at) => ({ id: `f${at}`, xM, yM: 0.25, radiusM: 0.008 }));
    const { placements } = places(items, heads);
    const around = scoreBoard(wide, heads);
    const placed = items.flatMap((item) => {
      const at = placements.find((one) => one.item === item.id);
      return at ? [place(item, at, usualScore.partGapM)] : [];
    });
    expect(scoreLayout(around, placed, [], usualScore).parts.heads).toBe(0);
  });

  it('two like amplifiers stand in line and are turned alike or mirrored', () => {
    const items = [amp('a'), amp('b')];
    const { placements } = places(items);
    const placed = items.flatMap((item) => {
      const at = placements.find((one) => one.item === item.id);
      return at ? [place(item, at, usualScore.partGapM)] : [];
    });
    expect(tidiness(boxOf(wide.outline), placed, usualHouse).pairs).toBe(0);
  });
});
