import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holeLines, holeRoom } from '../../../lib/board/cut/hole-room.ts';
import type { Drilling } from '../../../lib/board/cut/holes-short.ts';
import { checkPlacements, type FixingHead } from '../../../lib/board/layout/check-placements.ts';
import {
  bodyOf,
  type Item,
  type Placement,
  sides,
  turnedSize,
  turns,
} from '../../../lib/board/layout/item.ts';
import { caseCount } from '../../long-run.ts';
import { flattenPolygon, outlines, shapeOf } from '../shapes.ts';
import { searchLayouts } from '../usual-board.ts';

const rules = { partGapM: 0.0127, powerToSignalM: 0.15 };
const pilotM = 0.003;
const holeM = 0.005;
/** What the holes of these parts keep away from, each drilled to its pilot. */
const drillingOf = (...items: readonly Item[]): Drilling => ({
  ...{ toEdgeM: 0.012, toCornerM: 0 },
  drilledM: new Map(items.flatMap(({ mountingHoles = [] }) => mountingHoles.map(({ id }) => [id, pilotM]))),
});

/** A part with a hole so far in from each of its corners. */
const holed = (id: string, widthM: number, depthM: number, insetM: number): Item => ({
  ...{ id, widthM, depthM, heightM: 0.05, massKg: 1, rooms: {} },
  terminals: [{ id: `${id}.T`, side: 'top', alongM: widthM / 2, layer: 'power' }],
  mountingHoles: [insetM, widthM - insetM].flatMap((xM) =>
    [insetM, depthM - insetM].map((yM) => ({ id: `${id} ${xM} ${yM}`, xM, yM, diameterM: holeM })),
  ),
});

/** The four holes of such a part where it stands: the same inset from the corners of its footprint, however turned. */
function holesAt(item: Item, at: Placement, insetM: number): { readonly x: number; readonly y: number }[] {
  const { minX, maxX, minY, maxY } = bodyOf(item, at);
  return [minX + insetM, maxX - insetM].flatMap((x) => [minY + insetM, maxY - insetM].map((y) => ({ x, y })));
}

describe('the room of a hole', () => {
  it('is that of another geometry library, inside and out, on outlines with arcs, notches and openings', () => {
    const spot = fc.tuple(fc.integer({ min: 5, max: 95 }), fc.integer({ min: 5, max: 95 }));
    fc.assert(
      fc.property(outlines, fc.array(spot, { minLength: 1, maxLength: 8 }), (outline, spots) => {
        const shape = shapeOf(outline);
        const polygon = flattenPolygon(shape.outline, ...shape.cutouts);
        const lines = holeLines(shape);
        const { xmax, ymax } = polygon.box;
        for (const [x, y] of spots) {
          const at = { xM: (x / 100) * xmax, yM: (y / 100) * ymax };
          const point = new Flatten.Point(at.xM, at.yM);
          const lineM = Math.min(...[...polygon.edges].map((edge) => edge.shape.distanceTo(point)[0]));
          const roomM = polygon.contains(point) ? lineM : -lineM;
          expect(holeRoom({ ...at, diameterM: 0.008 }, lines).toEdgeM).toBeCloseTo(roomM - 0.004, 7);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('mounting holes of proposed layouts', () => {
  it('one part: as few near an edge as at the best place of the lattice, and none where one has none', () => {
    const stepM = 0.01;
    const size = fc.integer({ min: 4, max: 20 }).map((n) => n / 100);
    // The board is larger than the part by up to 60 mm: with 24 mm more than the part has round its holes, all are lawful.
    const spare = fc.integer({ min: 0, max: 30 }).map((n) => n / 500);
    const seen = new Set<boolean>();
    fc.assert(
      fc.property(size, size, spare, spare, fc.integer({ min: 3, max: 20 }), (w, d, moreX, moreY, inset) => {
        const insetM = inset / 1000;
        const [wide, high] = [w + moreX, d + moreY];
        const shape = shapeOf({
          rectangle: { width: `${wide * 1000} mm`, height: `${high * 1000} mm` },
        });
        const item = holed('a', w, d, insetM);
        const near = (at: Placement): number =>
          holesAt(item, at, insetM).filter(
            ({ x, y }) => Math.min(x, wide - x, y, high - y) - pilotM / 2 < 0.012 - 1e-9,
          ).length;
        const every = turns.flatMap((turnDeg) => {
          const { xM, yM } = turnedSize(item, turnDeg);
          const list: Placement[] = [];
          for (let x = 0; x * stepM + xM <= wide + 1e-9; x += 1)
            for (let y = 0; y * stepM + yM <= high + 1e-9; y += 1)
              list.push({ item: 'a', xM: x * stepM, yM: y * stepM, turnDeg, heightM: 0 });
          return list;
        });
        const fewest = Math.min(...every.map(near));
        const task = { board: { shape }, items: [item], given: [], links: [], drilling: drillingOf(item) };
        const { proposals } = searchLayouts(task, { stepM, rules, evaluations: 3000 });
        expect(proposals.length).toBeGreaterThan(0);
        for (const { placements } of proposals) expect(placements.map((at) => near(at))).toEqual([fewest]);
        seen.add(fewest === 0);
      }),
      { numRuns: 60 },
    );
    // Both kinds of board were drawn: those that have a lawful place, and those that have none.
    expect(seen.size).toBe(2);
  });

  it('several parts on a board with room for them: none near an edge or a corner, none over the head of a fixing', () => {
    const part = fc.tuple(
      fc.integer({ min: 60, max: 160 }),
      fc.integer({ min: 50, max: 120 }),
      fc.integer({ min: 4, max: 12 }),
    );
    const head = fc.tuple(fc.integer({ min: 40, max: 860 }), fc.integer({ min: 40, max: 560 }));
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 2, maxLength: 4 }),
        fc.array(head, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 1000 }),
        (parts, at, seed) => {
          const shape = shapeOf({ rectangle: { width: '900 mm', height: '600 mm' } });
          const heads = at.map(([x, y], n): FixingHead => {
            return { id: `f${n}`, xM: x / 1000, yM: y / 1000, radiusM: 0.007 };
          });
          const items = parts.map(([w, d, inset], n) => holed(`p${n}`, w / 1000, d / 1000, inset / 1000));
          const board = { shape, heads };
          // Each part is drawn to an edge of the board.
          const links = items.map(({ id }, n) => ({
            id,
            from: { item: id, terminal: `${id}.T` },
            to: { exit: sides[n % 4] ?? 'left' },
            layer: 'speaker' as const,
          }));
          const { proposals } = searchLayouts(
            { board, items, given: [], links, drilling: { ...drillingOf(...items), toCornerM: 0.025 } },
            { seed, rules, evaluations: 2000, starts: 2 },
          );
          expect(proposals.length).toBeGreaterThan(0);
          for (const { placements } of proposals) {
            expect(checkPlacements(board, items, placements, rules)).toEqual([]);
            for (const [n, placement] of placements.entries()) {
              const item = items[n];
              if (!item) throw new Error(placement.item);
              const { minX, maxX, minY, maxY } = bodyOf(item, placement);
              for (const { xM, yM } of heads) {
                const away = Math.hypot(Math.max(minX - xM, 0, xM - maxX), Math.max(minY - yM, 0, yM - maxY));
                expect(away).toBeGreaterThanOrEqual(0.007 - 1e-9);
              }
              for (const { x, y } of holesAt(item, placement, (parts[n]?.[2] ?? 0) / 1000)) {
                const [toX, toY] = [Math.min(x, 0.9 - x), Math.min(y, 0.6 - y)];
                expect(Math.min(toX, toY) - pilotM / 2).toBeGreaterThanOrEqual(0.012 - 1e-9);
                expect(Math.hypot(toX, toY) - pilotM / 2).toBeGreaterThanOrEqual(0.025 - 1e-9);
              }
            }
          }
        },
      ),
      { numRuns: caseCount({ all: 30, some: 12 }) },
    );
  });

  it('a placement that is given stays, its holes near the edge or not, and the others are lawful all the same', () => {
    const shape = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
    const items = [holed('a', 0.2, 0.1, 0.005), holed('b', 0.2, 0.1, 0.005)];
    const given: Placement[] = [{ item: 'a', xM: 0, yM: 0, turnDeg: 0, heightM: 0 }];
    const { proposals } = searchLayouts(
      { board: { shape }, items, given, links: [], drilling: drillingOf(...items) },
      { rules, evaluations: 2000 },
    );
    expect(proposals.length).toBeGreaterThan(0);
    for (const { placements } of proposals) {
      expect(placements.map(({ item }) => item)).toEqual(['b']);
      for (const at of placements)
        for (const { x, y } of holesAt(items[1] ?? items[0] ?? holed('b', 0, 0, 0), at, 0.005))
          expect(Math.min(x, 0.6 - x, y, 0.4 - y) - pilotM / 2).toBeGreaterThanOrEqual(0.012 - 1e-9);
    }
  });
});

describe('heads of fixings', () => {
  const shape = shapeOf({ rectangle: { width: '300 mm', height: '200 mm' } });
  const head: FixingHead = { id: 'f1', xM: 0.15, yM: 0.1, radiusM: 0.006 };

  it('a part that has nowhere to stand but on one has no place, and is told so', () => {
    const { proposals, faults } = searchLayouts({
      board: { shape, heads: [head] },
      items: [holed('a', 0.25, 0.15, 0.01)],
      given: [],
      links: [],
    });
    expect(proposals).toEqual([]);
    expect(faults).toEqual([
      expect.objectContaining({
        rule: 'item-does-not-fit',
        of: ['a'],
        message: expect.stringMatching(/clear of/),
      }),
    ]);
  });
});

describe('what else the rules fault', () => {
  it('parts keep the gap that they ask for where the board has it, though wires would be shorter without', () => {
    const shape = shapeOf({ rectangle: { width: '500 mm', height: '300 mm' } });
    const items = [holed('a', 0.1, 0.08, 0.01), holed('b', 0.1, 0.08, 0.01)];
    const links = Array.from({ length: 12 }, (_, n) => ({
      id: `w${n}`,
      from: { item: 'a', terminal: 'a.T' },
      to: { item: 'b', terminal: 'b.T' },
      layer: 'speaker' as const,
    }));
    // Twelve wires weigh more than the missing millimetres did: 10 mm on this lattice, of 12.7 mm.
    const { proposals } = searchLayouts(
      { board: { shape }, items, given: [], links },
      { stepM: 0.01, rules, evaluations: 4000 },
    );
    expect(proposals.length).toBeGreaterThan(0);
    for (const { placements } of proposals)
      expect(checkPlacements({ shape }, items, placements, rules)).toEqual([]);
  });

  it('a wire made to a length reaches, though the balance of the board draws its ends apart', () => {
    const shape = shapeOf({ rectangle: { width: '1500 mm', height: '300 mm' } });
    const ballast: Item = { ...holed('c', 0.2, 0.2, 0.01), massKg: 0.1 };
    const items = [holed('a', 0.1, 0.08, 0.01), holed('b', 0.1, 0.08, 0.01), ballast];
    // Each is drawn to its own edge by five wires, and they are joined by one of 600 mm.
    const links = (['a', 'b'] as const).flatMap((item) =>
      Array.from({ length: 5 }, (_, n) => ({
        id: `${item}${n}`,
        from: { item, terminal: `${item}.T` },
        to: { exit: item === 'a' ? ('left' as const) : ('right' as const) },
        layer: 'speaker' as const,
      })),
    );
    const joint = {
      id: 'joint',
      from: { item: 'a', terminal: 'a.T' },
      to: { item: 'b', terminal: 'b.T' },
      layer: 'speaker' as const,
    };
    const apart = (longestM?: number): number => {
      const made = longestM === undefined ? joint : { ...joint, longestM };
      const { proposals } = searchLayouts(
        { board: { shape }, items, given: [], links: [...links, made] },
        { rules, evaluations: 4000 },
      );
      const [a, b] = (proposals[0]?.placements ?? []).map((at) => {
        const item = items.find(({ id }) => id === at.item) ?? ballast;
        const { minX, maxX, minY, maxY } = bodyOf(item, at);
        // The terminal is in the middle of a side: where it faces left or right, half the part's width off the middle.
        return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
      });
      return a && b ? Math.abs(a.x - b.x) + Math.abs(a.y - b.y) : Infinity;
    };
    expect(apart()).toBeGreaterThan(1);
    // Middles stand no further from the terminals than half a part each.
    expect(apart(0.6)).toBeLessThan(0.6 + 0.1);
  });

  it('a part that the job raises does not stand over the hand room of controls where there is room beside', () => {
    const shape = shapeOf({ rectangle: { width: '500 mm', height: '260 mm' } });
    const knobs: Item = { ...holed('knobs', 0.2, 0.1, 0.01), rooms: { top: { accessM: 0.08 } } };
    const items = [knobs, holed('up', 0.15, 0.1, 0.01)];
    const given: Placement[] = [{ item: 'knobs', xM: 0, yM: 0, turnDeg: 0, heightM: 0 }];
    // A wire to the left of the board draws the raised part over the knobs.
    const links = [
      {
        id: 'w',
        from: { item: 'up', terminal: 'up.T' },
        to: { exit: 'left' as const },
        layer: 'power' as const,
      },
    ];
    const { proposals } = searchLayouts(
      { board: { shape }, items, given, heightsM: { up: 0.1 }, links },
      { rules, evaluations: 3000 },
    );
    expect(proposals.length).toBeGreaterThan(0);
    for (const { placements } of proposals)
      expect(checkPlacements({ shape }, items, [...given, ...placements], rules)).toEqual([]);
  });
});
