import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../lib/board/random.ts';
import type { RouteEnd, RouteWire } from '../../../lib/board/route/route.ts';
import { caseCount } from '../../long-run.ts';
import { shapeOf } from '../shapes.ts';
import { routeWires } from '../usual-board.ts';

/** A board of 50 mm by 50 mm with five tracks each way, 10 mm apart: x and y of 5, 15, 25, 35, 45 mm. */
const small = shapeOf({ rectangle: { width: '50 mm', height: '50 mm' } });
const coarse = { pitchM: 0.01, bendM: 0, nearness: 0, crossingM: 0 };
const at = (column: number, row: number) => ({ xM: 0.005 + column * 0.01, yM: 0.005 + row * 0.01 });
const pin = (id: string, [column, row]: readonly [number, number]) => ({
  id,
  centre: at(column, row),
  radiusM: 0.001,
});

type Cell = readonly [number, number];

/** Every simple path from cell to cell tried, the shortest kept; the first and last steps may not turn back. */
function shortestByTrial(start: Cell, goal: Cell, pins: readonly Cell[]): number {
  const blocked = new Set(pins.map(String));
  let best = Infinity;
  const go = ([x, y]: Cell, from: Cell, seen: ReadonlySet<string>, steps: number): void => {
    if (steps >= best) return;
    if (x === goal[0] && y === goal[1]) {
      // The goal's terminal is one cell further right: a wire may not arrive from there.
      if (from[0] !== goal[0] + 1) best = steps;
      return;
    }
    for (const next of [
      [x + 1, y],
      [x - 1, y],
      [x, y + 1],
      [x, y - 1],
    ] as const) {
      const out = next[0] < 0 || next[1] < 0 || next[0] > 4 || next[1] > 4;
      const back = next[0] === from[0] && next[1] === from[1];
      if (out || back || seen.has(String(next)) || blocked.has(String(next))) continue;
      go(next, [x, y], new Set([...seen, String(next)]), steps + 1);
    }
  };
  go(start, [start[0] - 1, start[1]], new Set([String(start)]), 0);
  return best;
}

describe('the length of a route', () => {
  it('is that of the best of all paths, on 300 small boards with pins in the way', () => {
    const cell = fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(
        fc.uniqueArray(cell, { maxLength: 9, selector: String }),
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 0, max: 4 }),
        (pins, fromRow, toRow) => {
          const [start, goal] = [
            [1, fromRow],
            [3, toRow],
          ] as const;
          const free = pins.filter((one) => ![start, goal].some((end) => String(end) === String(one)));
          const best = shortestByTrial(start, goal, free);
          const wire: RouteWire = {
            id: 'w',
            from: { ...at(0, fromRow), faces: 'right' },
            to: { ...at(4, toRow), faces: 'left' },
            layer: 'signal',
            diameterM: 0.002,
          };
          const { routes, faults } = routeWires(
            { shape: small, barriers: free.map((one) => pin(String(one), one)), wires: [wire] },
            coarse,
          );
          if (best === Infinity) {
            expect(routes).toEqual([]);
            expect(faults).toEqual([expect.objectContaining({ rule: 'wire-without-way' })]);
            expect(faults[0]?.of.length).toBeGreaterThan(1);
          } else expect(routes[0]?.lengthM).toBeCloseTo((best + 2) * 0.01, 9);
        },
      ),
      { numRuns: caseCount({ all: 300, some: 100 }), seed: 7 },
    );
  });
});

const board = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const wire = (id: string, from: RouteWire['from'], to: RouteWire['to'], layer: RouteWire['layer']) => ({
  id,
  from,
  to,
  layer,
  diameterM: layer === 'power' ? 0.009 : 0.004,
});

describe('routes of several wires', () => {
  it('go straight where nothing is in the way, with one bend where one is needed', () => {
    const { routes } = routeWires({
      shape: board,
      barriers: [],
      wires: [
        wire('p', { xM: 0.1, yM: 0.1, faces: 'right' }, { xM: 0.5, yM: 0.3, faces: 'bottom' }, 'power'),
      ],
    });
    expect(routes).toEqual([
      {
        wire: 'p',
        points: [
          { xM: 0.1, yM: 0.1 },
          { xM: 0.5, yM: 0.1 },
          { xM: 0.5, yM: 0.3 },
        ],
        lengthM: expect.closeTo(0.6, 9),
        layer: 'power',
        bends: 1,
      },
    ]);
  });

  /** The legs of the only way of a wire that bends to 40 mm. */
  const stiffLegs = (to: RouteEnd): number[] => {
    const stiff = {
      ...wire('p', { xM: 0.1, yM: 0.1, faces: 'right' }, to, 'power'),
      bendRadiusM: 0.04,
    };
    const { routes, faults } = routeWires({ shape: board, barriers: [], wires: [stiff] });
    expect(faults).toEqual([]);
    const points = routes[0]?.points ?? [];
    return points
      .slice(1)
      .map((b, at) => Math.hypot(b.xM - (points[at]?.xM ?? 0), b.yM - (points[at]?.yM ?? 0)));
  };

  it('leave straight wire for each bend: a radius at an end, two between bends', () => {
    const legs = stiffLegs({ xM: 0.2, yM: 0.22, faces: 'right' });
    expect(legs.length).toBeGreaterThan(2);
    for (const [at, leg] of legs.entries()) {
      const bends = Number(at > 0) + Number(at < legs.length - 1);
      expect(leg).toBeGreaterThanOrEqual(bends * 0.04 - 0.0005);
    }
  });

  it('go on beside their line at any distance, with straight wire before and behind it to be eased over', () => {
    const [before, aside, behind, ...more] = stiffLegs({ xM: 0.3, yM: 0.115, faces: 'left' });
    expect(more).toEqual([]);
    expect(aside).toBeCloseTo(0.015, 9);
    expect(Math.min(before ?? 0, behind ?? 0)).toBeGreaterThanOrEqual(0.04 - 0.0005);
  });

  it('say which bend is too tight where no way has room for it', () => {
    const stiff = {
      ...wire('p', { xM: 0.1, yM: 0.1, faces: 'right' }, { xM: 0.16, yM: 0.2, faces: 'bottom' }, 'power'),
      bendRadiusM: 0.2,
    };
    const { routes, faults } = routeWires({ shape: board, barriers: [], wires: [stiff] });
    expect(routes).toHaveLength(1);
    expect(faults.map(({ rule, level, of }) => [rule, level, of])).toEqual([
      ['bend-too-tight', 'caution', ['p']],
    ]);
  });

  it('leave the board straight over their side', () => {
    const { routes } = routeWires({
      shape: board,
      barriers: [],
      wires: [wire('s', { xM: 0.3, yM: 0.2, faces: 'top' }, { exit: 'left' }, 'signal')],
    });
    const last = routes[0]?.points.at(-1);
    expect(last?.xM).toBeCloseTo(0, 9);
    expect(routes[0]?.bends).toBe(1);
  });

  it('cross once where ends are exchanged, at a right angle, and not at all where they are not', () => {
    const ends = (rows: readonly [number, number]) =>
      rows.map((yM, index) =>
        wire(
          `w${index}`,
          { xM: 0.05, yM: 0.15 + 0.1 * index, faces: 'right' },
          { xM: 0.55, yM, faces: 'left' },
          'speaker',
        ),
      );
    // A wall from edge to edge but for a gate of 60 mm keeps the wires from going round each other.
    const barriers = [
      { id: 'low', box: { minX: 0.29, maxX: 0.31, minY: 0, maxY: 0.17 } },
      { id: 'high', box: { minX: 0.29, maxX: 0.31, minY: 0.23, maxY: 0.4 } },
      // Parts that the wires come out of, edge to edge, so that none leads round behind the other's end.
      { id: 'from', box: { minX: 0, maxX: 0.05, minY: 0, maxY: 0.4 } },
      { id: 'to', box: { minX: 0.55, maxX: 0.6, minY: 0, maxY: 0.4 } },
    ];
    const straight = routeWires({ shape: board, barriers, wires: ends([0.15, 0.25]) });
    expect(straight.crossings).toEqual([]);
    const exchanged = routeWires({ shape: board, barriers, wires: ends([0.25, 0.15]) });
    expect(exchanged.crossings).toEqual([expect.objectContaining({ wires: ['w0', 'w1'] })]);
    expect(exchanged.crossings.length).toBeLessThanOrEqual(exchanged.firstCrossings);
  });

  it('leave from a terminal at the very edge', () => {
    const wires = [
      wire('near', { xM: 0.004, yM: 0.2, faces: 'left' }, { exit: 'left' }, 'signal'),
      wire('at', { xM: 0.3, yM: 0.4, faces: 'top' }, { exit: 'top' }, 'signal'),
    ];
    const { routes, faults } = routeWires({ shape: board, barriers: [], wires });
    expect(faults).toEqual([]);
    expect(routes.map(({ lengthM, bends }) => [lengthM, bends])).toEqual([
      [expect.closeTo(0.004, 9), 0],
      [expect.closeTo(0, 9), 0],
    ]);
  });

  it('leave side by side, not one over the other, and not through a fixing at the edge', () => {
    const wires = [0, 1, 2, 3].map((index) =>
      wire(`w${index}`, { xM: 0.1 + 0.05 * index, yM: 0.2, faces: 'right' }, { exit: 'top' }, 'speaker'),
    );
    const barriers = [0.02, 0.1, 0.2, 0.3, 0.4].map((xM) => ({
      id: `fixing-${xM}`,
      centre: { xM, yM: 0.392 },
      radiusM: 0.007,
    }));
    const { routes } = routeWires({ shape: board, barriers, wires });
    const exits = routes.map(({ points }) => points.at(-1)?.xM ?? 0).toSorted((a, b) => a - b);
    expect(exits).toHaveLength(4);
    for (const [index, xM] of exits.entries()) {
      expect(xM - (exits[index - 1] ?? -1)).toBeGreaterThan(0.004 - 1e-9);
      for (const { centre } of barriers) expect(Math.abs(xM - centre.xM)).toBeGreaterThan(0.009);
    }
  });

  it('keep signal away from power where there is room', () => {
    const wires = [
      wire('p', { xM: 0.05, yM: 0.2, faces: 'right' }, { xM: 0.55, yM: 0.2, faces: 'left' }, 'power'),
      wire('s', { xM: 0.05, yM: 0.24, faces: 'top' }, { xM: 0.55, yM: 0.24, faces: 'top' }, 'signal'),
    ];
    // Asked for twice as much as the house does, there is room for it above.
    const { routes } = routeWires({ shape: board, barriers: [], wires }, { powerToSignalM: 0.1524 });
    const signal = routes.find((route) => route.wire === 's');
    const highest = Math.max(...(signal?.points.map(({ yM }) => yM) ?? [0]));
    expect(highest - 0.2).toBeGreaterThan(0.15);
  });

  it('say what stands in the way, and lay the rest', () => {
    const wall = { id: 'amp', box: { minX: 0.28, maxX: 0.32, minY: 0, maxY: 0.4 } };
    const { routes, faults } = routeWires({
      shape: board,
      barriers: [wall],
      wires: [
        wire('a', { xM: 0.1, yM: 0.2, faces: 'right' }, { xM: 0.5, yM: 0.2, faces: 'left' }, 'power'),
        wire('b', { xM: 0.1, yM: 0.3, faces: 'right' }, { exit: 'left' }, 'signal'),
      ],
    });
    expect(routes.map((route) => route.wire)).toEqual(['b']);
    expect(faults).toEqual([
      expect.objectContaining({ rule: 'wire-without-way', of: ['a', 'amp'], level: 'stop' }),
    ]);
  });

  it('never run into a part, never share a track, and come out the same each time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10000 }), (seed) => {
        const random = seeded(seed);
        const boxes = Array.from({ length: 4 }, (_, index) => {
          const [x, y] = [0.06 + index * 0.13 + random() * 0.02, 0.08 + random() * 0.12];
          return { id: `amp-${index}`, box: { minX: x, maxX: x + 0.07, minY: y, maxY: y + 0.1 } };
        });
        const wires = boxes.flatMap(({ id, box }, index) => {
          const next = boxes[(index + 1) % boxes.length]?.box ?? box;
          return [
            wire(
              `${id}.p`,
              { xM: box.maxX, yM: box.minY + 0.02, faces: 'right' },
              { xM: next.minX, yM: next.minY + 0.05, faces: 'left' },
              'power',
            ),
            wire(`${id}.s`, { xM: box.minX + 0.03, yM: box.maxY, faces: 'top' }, { exit: 'top' }, 'signal'),
          ];
        });
        const task = { shape: board, barriers: boxes, wires };
        const found = routeWires(task);
        expect(routeWires(task)).toEqual(found);
        expect(found.routes.length + found.faults.length).toBe(wires.length);
        const stretches = found.routes.flatMap(({ wire: name, points }) =>
          points.slice(1).map((b, index) => ({ name, a: points[index] ?? b, b })),
        );
        for (const { a, b } of stretches) {
          const upright = a.xM === b.xM;
          expect(upright || a.yM === b.yM).toBe(true);
          for (const { box } of boxes) {
            const clear =
              Math.max(a.xM, b.xM) <= box.minX ||
              Math.min(a.xM, b.xM) >= box.maxX ||
              Math.max(a.yM, b.yM) <= box.minY ||
              Math.min(a.yM, b.yM) >= box.maxY;
            expect(clear).toBe(true);
          }
        }
        for (const one of stretches)
          for (const two of stretches) {
            if (one.name >= two.name) continue;
            const level = one.a.yM === one.b.yM && two.a.yM === two.b.yM && one.a.yM === two.a.yM;
            const upright = one.a.xM === one.b.xM && two.a.xM === two.b.xM && one.a.xM === two.a.xM;
            const axis = level ? 'xM' : 'yM';
            const apart =
              Math.max(one.a[axis], one.b[axis]) <= Math.min(two.a[axis], two.b[axis]) ||
              Math.max(two.a[axis], two.b[axis]) <= Math.min(one.a[axis], one.b[axis]);
            expect(!(level || upright) || apart).toBe(true);
          }
      }),
      { numRuns: 12, seed: 8 },
    );
  });
});
