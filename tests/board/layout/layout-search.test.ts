import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlacements } from '../../../lib/board/layout/check-placements.ts';
import { type Item, type Placement, turnedSize, turns } from '../../../lib/board/layout/item.ts';
import { place } from '../../../lib/board/layout/placed.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { scoreLayout } from '../../../lib/board/layout/score/score-ledger.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import { caseCount } from '../../long-run.ts';
import { outsideCheck } from '../../outside-check.ts';
import { outlines, shapeOf } from '../shapes.ts';
import { scoreBoard, searchHouse, searchLayouts, usualLayout } from '../usual-board.ts';

const byTrial = outsideCheck('layouts-by-trial');

const rules = { partGapM: 0.0127, powerToSignalM: 0.15 };

const amp = (id: string, widthM = 0.3, depthM = 0.2): Item => ({
  id,
  widthM,
  depthM,
  heightM: 0.06,
  massKg: 4,
  rooms: { left: { accessM: 0.05 }, right: { bendM: 0.05 }, top: { airM: 0.025 } },
  terminals: [
    { id: 'IN', side: 'left', alongM: depthM / 2, layer: 'signal' },
    { id: 'B+', side: 'right', alongM: depthM / 2, layer: 'power' },
  ],
});
const block = (id: string): Item => ({
  id,
  widthM: 0.1,
  depthM: 0.06,
  heightM: 0.04,
  massKg: 0.4,
  rooms: { top: { accessM: 0.05 } },
  terminals: [{ id: 'OUT', side: 'bottom', alongM: 0.05, layer: 'power' }],
});
const link = (id: string, from: Link['from'], to: Link['to'], layer: Link['layer']): Link => ({
  id,
  from,
  to,
  layer,
});

describe('proposed layouts', () => {
  it('never overlap, leave the outline or cover a control, on outlines with notches and openings', () => {
    fc.assert(
      fc.property(outlines, fc.integer({ min: 1, max: 1000 }), (outline, seed) => {
        const shape = shapeOf(outline);
        const items = [amp('a', 0.18, 0.12), amp('b', 0.15, 0.1), block('c'), block('d')];
        const links = [
          link('1', { item: 'a', terminal: 'IN' }, { exit: 'left' }, 'signal'),
          link('2', { item: 'a', terminal: 'B+' }, { item: 'c', terminal: 'OUT' }, 'power'),
          link('3', { item: 'b', terminal: 'B+' }, { item: 'd', terminal: 'OUT' }, 'power'),
        ];
        const { proposals, evaluations } = searchLayouts(
          { board: { shape }, items, given: [], links },
          { seed, evaluations: 1500, starts: 2, rules },
        );
        expect(evaluations).toBeLessThanOrEqual(1502);
        for (const { placements, score } of proposals) {
          expect(placements.map(({ item }) => item)).toEqual(['a', 'b', 'c', 'd']);
          const hard = checkPlacements({ shape }, items, placements, rules).filter(
            ({ level, rule }) => level === 'stop' || rule === 'item-over-opening',
          );
          expect(hard).toEqual([]);
          const sum = Object.values(score.parts).reduce((all, part) => all + part, 0);
          expect(score.total).toBeCloseTo(sum, 9);
        }
        const totals = proposals.map(({ score }) => score.total);
        expect(totals).toEqual(totals.toSorted((a, b) => a - b));
      }),
      { numRuns: caseCount({ all: 20, some: 8 }), seed: 10 },
    );
  });

  it('come out the same for the same seed, and keep what is given where it is', () => {
    const shape = shapeOf({ rectangle: { width: '700 mm', height: '400 mm' } });
    const items = [amp('a'), block('b'), block('c')];
    const given: Placement[] = [{ item: 'a', xM: 0.2, yM: 0.1, turnDeg: 0, heightM: 0 }];
    const links = [link('1', { item: 'a', terminal: 'B+' }, { item: 'b', terminal: 'OUT' }, 'power')];
    const task = { board: { shape }, items, given, links };
    const once = searchLayouts(task, { seed: 5, evaluations: 2000 });
    expect(searchLayouts(task, { seed: 5, evaluations: 2000 })).toEqual(once);
    expect(once.proposals).toHaveLength(3);
    for (const { placements } of once.proposals) {
      expect(placements.map(({ item }) => item)).toEqual(['b', 'c']);
      expect(
        checkPlacements({ shape }, items, [...given, ...placements], usualLayout).filter(
          ({ level }) => level === 'stop',
        ),
      ).toEqual([]);
    }
  });
});

/** The least score of every way to place up to two items on the lattice. */
function exhaustiveBest(
  shape: ReturnType<typeof shapeOf>,
  items: readonly Item[],
  links: readonly Link[],
  stepM: number,
): number {
  const box = boxOf(shape.outline);
  const board = scoreBoard(shape);
  const judged = { ...rules, house: searchHouse };
  const ways = (item: Item) =>
    turns.flatMap((turnDeg) => {
      const size = turnedSize(item, turnDeg);
      const list: Placement[] = [];
      for (let x = 0; x * stepM + size.xM <= box.maxX + 1e-9; x += 1)
        for (let y = 0; y * stepM + size.yM <= box.maxY + 1e-9; y += 1)
          list.push({ item: item.id, xM: x * stepM, yM: y * stepM, turnDeg, heightM: 0 });
      return list.map((at) => place(item, at, rules.partGapM));
    });
  const [first = [], second = []] = items.map(ways);
  let best = Infinity;
  for (const a of first)
    for (const b of second) {
      const { total, broken } = scoreLayout(board, [a, b], links, judged);
      if (broken <= 1e-9 && total < best) best = total;
    }
  return best;
}

describe('the search against trying every layout', () => {
  it('is within 5 % of the best on small boards', () => {
    const size = fc.integer({ min: 6, max: 9 });
    fc.assert(
      fc.property(
        fc.integer({ min: 9, max: 12 }),
        size,
        fc.integer({ min: 3, max: 5 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom('left' as const, 'right' as const, 'top' as const, 'bottom' as const),
        (wide, high, ampWide, seed, exit) => {
          const stepM = 0.05;
          const shape = shapeOf({
            rectangle: { width: `${wide * 50} mm`, height: `${high * 50} mm` },
          });
          const items = [amp('a', ampWide * 0.05, 0.1), block('b')];
          const links = [
            link('1', { item: 'a', terminal: 'IN' }, { exit }, 'signal'),
            link('2', { item: 'a', terminal: 'B+' }, { item: 'b', terminal: 'OUT' }, 'power'),
          ];
          const best = exhaustiveBest(shape, items, links, stepM);
          const { proposals } = searchLayouts(
            { board: { shape }, items, given: [], links },
            { seed, stepM, rules },
          );
          expect(best).toBeLessThan(Infinity);
          const found = byTrial.differs(proposals[0]?.score.total ?? Infinity, best);
          expect(found).toBeGreaterThan(best - 1e-9);
          expect(found).toBeLessThanOrEqual(best * 1.05);
        },
      ),
      { numRuns: caseCount({ all: 15, some: 6 }), seed: 11 },
    );
  });
});

describe('parts that cannot fit', () => {
  const shape = shapeOf({ rectangle: { width: '500 mm', height: '300 mm' } });
  const search = (items: Item[], given: Placement[] = []) =>
    searchLayouts({ board: { shape }, items, given, links: [] }, { evaluations: 2000 });

  it('one that is larger than the board: by how much, turned the better way', () => {
    expect(search([amp('long', 0.1, 0.56)]).faults).toEqual([
      expect.objectContaining({ rule: 'item-does-not-fit', of: ['long'], value: expect.closeTo(0.06, 9) }),
    ]);
  });

  it('two that fit only each alone: the one in the way, and by how much', () => {
    const bare = (id: string): Item => ({ ...amp(id, 0.45, 0.2), rooms: {}, terminals: [] });
    const { proposals, faults } = search([bare('a'), bare('b')]);
    expect(proposals).toEqual([]);
    // 2 x 200 mm in 300 mm: 100 mm are missing, on a lattice of half an inch.
    expect(faults).toEqual([expect.objectContaining({ rule: 'item-does-not-fit', level: 'stop' })]);
    expect(faults[0]?.value).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(faults[0]?.value).toBeLessThan(0.1 + 0.0127);
  });

  it('a given overlap does not keep the rest from being placed', () => {
    const given: Placement[] = ['a', 'b'].map((item, at) => ({
      item,
      xM: 0.01 * at,
      yM: 0,
      turnDeg: 0,
      heightM: 0,
    }));
    expect(search([block('a'), block('b'), block('c')], given).proposals.length).toBeGreaterThan(0);
  });
});
