import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlacements } from '../../../../lib/board/layout/check-placements.ts';
import { bodyOf, type Item, type Placement } from '../../../../lib/board/layout/item.ts';
import { shapeOf } from '../../shapes.ts';
import { searchLayouts, searchStacked } from '../../usual-board.ts';

const gapM = 0.0127;
const rules = { partGapM: gapM, powerToSignalM: 0.15 };
const limits = { layerM: 0.018, topM: 0.15 };
const railM = 0.038;

const plain = (id: string, widthM: number, depthM: number, heightM: number): Item => ({
  ...{ id, widthM, depthM, heightM, massKg: 1, rooms: {}, terminals: [] },
});
const amp = (id: string, widthM = 0.3, depthM = 0.2): Item => ({
  ...plain(id, widthM, depthM, 0.06),
  raising: { clearanceM: gapM, railWidthM: railM },
});
const bar = (id: string, widthM = 0.1, depthM = 0.06): Item => ({
  ...plain(id, widthM, depthM, 0.03),
  beneath: { wires: [] },
});

interface Pair {
  readonly upper: Placement;
  readonly lower: Placement;
}

/** Every two of a layout of which one stands over the other, measured afresh from corners. */
function stacksOf(items: readonly Item[], placements: readonly Placement[]): Pair[] {
  const box = (at: Placement) => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) throw new Error(at.item);
    return bodyOf(item, at);
  };
  return placements.flatMap((upper) =>
    placements.flatMap((lower) => {
      const [a, b] = [box(upper), box(lower)];
      const apart = a.minX >= b.maxX || b.minX >= a.maxX || a.minY >= b.maxY || b.minY >= a.maxY;
      return upper.heightM > 0 && upper !== lower && !apart ? [{ upper, lower }] : [];
    }),
  );
}

describe('a part raised over another', () => {
  // 330 x 230 mm hold the amplifier (300 x 200 mm) and nothing beside it.
  const shape = shapeOf({ rectangle: { width: '330 mm', height: '230 mm' } });
  const search = (items: readonly Item[], given: readonly Placement[] = [], limit = limits) =>
    searchStacked({ board: { shape }, items, given, links: [] }, limit, {
      seed: 3,
      evaluations: 3000,
      rules,
    });

  it('has room where the two have none side by side, the upper by whole layers of the sheet', () => {
    const items = [amp('amp'), bar('bar')];
    const { proposals, faults } = search(items);
    expect(faults).toEqual([]);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { placements } of proposals) {
      // 30 mm and 12.7 mm of clearance take three layers of 18 mm.
      expect(placements.map(({ heightM }) => heightM)).toEqual([expect.closeTo(0.054, 9), 0]);
      expect(stacksOf(items, placements).map(({ upper, lower }) => [upper.item, lower.item])).toEqual([
        ['amp', 'bar'],
      ]);
      expect(checkPlacements({ shape }, items, placements, rules)).toEqual([]);
    }
  });

  it('leaves the wires of the lower part that come from elsewhere past the edge of the upper one', () => {
    const items = [amp('amp'), { ...bar('bar'), beneath: { wires: [{ side: 'top' as const, from: null }] } }];
    const { proposals } = search(items);
    expect(proposals.length).toBeGreaterThan(0);
    for (const { placements } of proposals) {
      const [over, under] = placements;
      if (!over || !under) throw new Error('nothing is placed');
      // The amplifier can't be turned on this board, so the side stands out at its upper or its lower edge.
      const outM = { 0: under.yM + 0.06 - (over.yM + 0.2), 90: -1, 180: over.yM - under.yM, 270: -1 };
      expect(outM[under.turnDeg]).toBeGreaterThanOrEqual(-1e-9);
    }
  });

  it('leaves a layout alone that is found side by side', () => {
    const roomy = shapeOf({ rectangle: { width: '700 mm', height: '400 mm' } });
    const task = { board: { shape: roomy }, items: [amp('amp'), bar('bar')], given: [], links: [] };
    expect(searchStacked(task, limits, { seed: 3, evaluations: 3000 })).toEqual(
      searchLayouts(task, { seed: 3, evaluations: 3000 }),
    );
  });

  it('is the same for the same seed', () => {
    expect(search([amp('amp'), bar('bar')])).toEqual(search([amp('amp'), bar('bar')]));
  });

  it.each<readonly [string, readonly Item[], typeof limits]>([
    [
      'what has to be reached lies beneath',
      [amp('amp'), { ...plain('bar', 0.1, 0.06, 0.03), faceAccess: true }],
      limits,
    ],
    ['the space is not deep enough', [amp('amp'), bar('bar')], { ...limits, topM: 0.11 }],
    ['the part beneath leaves no room for rails', [amp('amp'), bar('bar', 0.26, 0.19)], limits],
    [
      'the screws of the upper part would go through the lower',
      [
        {
          ...amp('amp'),
          mountingHoles: [0.08, 0.15, 0.22].flatMap((xM) =>
            [0.04, 0.1, 0.16].map((yM) => ({ id: `${xM} ${yM}`, xM, yM, diameterM: 0.004 })),
          ),
        },
        bar('bar', 0.1, 0.08),
      ],
      limits,
    ],
    [
      'its feed comes from the vehicle by a side that would be covered',
      [
        amp('amp'),
        {
          ...bar('bar'),
          beneath: {
            wires: [
              { side: 'left', from: null },
              { side: 'right', from: null },
              { side: 'top', from: null },
            ],
          },
        },
      ],
      limits,
    ],
    [
      'the wire between the two would have to be made beneath',
      [
        amp('amp'),
        {
          ...bar('bar'),
          beneath: {
            wires: [
              { side: 'left', from: 'amp' },
              { side: 'right', from: 'amp' },
              { side: 'top', from: 'amp' },
            ],
          },
        },
      ],
      limits,
    ],
  ])('is not proposed where %s; the message tells by how much there is no room', (_, items, limit) => {
    const { proposals, faults } = search(items, [], limit);
    expect(proposals).toEqual([]);
    expect(faults).toEqual([expect.objectContaining({ rule: 'item-does-not-fit', level: 'stop' })]);
    expect(faults[0]?.value).toBeGreaterThan(0);
  });

  it('never stands over what may not lie beneath, keeps its clearance, and has its rails and its screws free', () => {
    let stacked = 0;
    const side = fc.integer({ min: 6, max: 30 }).map((steps) => steps / 100);
    fc.assert(
      fc.property(
        fc.tuple(side, side),
        fc.array(fc.tuple(side, side, fc.boolean(), fc.boolean()), { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 1, max: 100 }),
        ([width, depth], others, seed) => {
          const items = [
            amp('amp', width, depth),
            ...others.map(([w, d, low, face], at): Item => {
              const item = low ? bar(`p${at}`, w, d) : plain(`p${at}`, w, d, 0.02);
              return { ...item, faceAccess: face && !low, rooms: { top: { toolM: 0.05 } } };
            }),
          ];
          const { proposals } = searchStacked({ board: { shape }, items, given: [], links: [] }, limits, {
            ...{ seed, evaluations: 800, starts: 2, rules },
          });
          for (const { placements } of proposals) {
            const stops = checkPlacements({ shape }, items, placements, rules);
            expect(stops.filter(({ level }) => level === 'stop')).toEqual([]);
            for (const { upper, lower } of stacksOf(items, placements)) {
              stacked += 1;
              const [over, under] = [upper, lower].map((at) => items.find(({ id }) => id === at.item));
              if (!over || !under) throw new Error('unknown item');
              expect(under.beneath).toBeDefined();
              expect(upper.heightM - under.heightM).toBeGreaterThanOrEqual(gapM - 1e-9);
              const [a, b] = [bodyOf(over, upper), bodyOf(under, lower)];
              const railWidthM = Math.min(railM, (a.maxX - a.minX) / 2);
              expect(b.minX).toBeGreaterThanOrEqual(a.minX + railWidthM + gapM - 1e-9);
              expect(b.maxX).toBeLessThanOrEqual(a.maxX - railWidthM - gapM + 1e-9);
            }
          }
        },
      ),
      { numRuns: 40, seed: 12 },
    );
    expect(stacked).toBeGreaterThan(0);
  });
});
