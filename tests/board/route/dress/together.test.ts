import { describe, expect, test } from 'vitest';
import { bundlesTooMany, strayedM } from '../../../../lib/board/route/dress/together.ts';
import { type RouteWire, routeThrough } from '../../../../lib/board/route/route.ts';
import type { Laid } from '../../../../lib/board/route/tracks.ts';
import { shapeOf } from '../../shapes.ts';
import { routeWires } from '../../usual-board.ts';

const shape = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const amplifier = { id: 'amp', box: { minX: 0.2, maxX: 0.4, minY: 0.2, maxY: 0.3 } };

const out = (id: string, xMm: number, rest: Partial<RouteWire> = {}): RouteWire => ({
  id,
  from: { xM: xMm / 1000, yM: 0.2, faces: 'bottom' },
  to: { exit: 'right' },
  layer: 'speaker',
  diameterM: 0.003,
  bendRadiusM: 0.012,
  ...rest,
});

/** Nine wires are many: they are dressed. Six of them only fill the board. */
const others = [0, 1, 2, 3, 4, 5].map((nth) => out(`o${nth}`, 220 + 10 * nth, { to: { exit: 'left' } }));

const laidAs = (wires: readonly RouteWire[]): Laid[] => {
  const { routes, faults } = routeWires({ shape, barriers: [amplifier], wires });
  expect(faults).toEqual([]);
  return routes.flatMap((route): Laid[] => {
    const wire = wires.find(({ id }) => id === route.wire);
    return wire ? [{ wire, route }] : [];
  });
};

describe('wires that belong together', () => {
  test('a run leaves in one bundle where there is room', () => {
    const run = [300, 340, 390].map((xMm, nth) => out(`r${nth}`, xMm, { run: 'right-front' }));
    expect(bundlesTooMany(laidAs([...others, ...run]))).toBe(0);
  });

  test('plus and minus run beside each other all the way but where their terminals lie apart', () => {
    const pair = [
      out('plus', 330, { mate: 'minus' }),
      out('minus', 345, { mate: 'plus' }),
      out('alone', 390, { to: { exit: 'bottom' } }),
    ];
    // From the terminals to where both have turned, either way: their distance and their bends, each once.
    expect(strayedM(laidAs([...others, ...pair]))).toBeLessThan(2 * (0.015 + 2 * 0.03));
  });
});

describe('what is too many bundles, and how far a pair is parted', () => {
  const straight = (id: string, yMm: number, rest: Partial<RouteWire>): Laid => {
    const wire = out(id, 100, { from: { xM: 0.1, yM: yMm / 1000, faces: 'right' }, ...rest });
    return {
      wire,
      route: routeThrough(wire, [
        { xM: 0.1, yM: yMm / 1000 },
        { xM: 0.6, yM: yMm / 1000 },
      ]),
    };
  };

  test('is told at more than 30 mm, side by side and by run', () => {
    const at = (...ysMm: number[]) => ysMm.map((yMm, nth) => straight(`w${nth}`, yMm, { run: 'front' }));
    expect(bundlesTooMany(at(100, 130, 160))).toBe(0);
    expect(bundlesTooMany(at(100, 131, 200))).toBe(2);
    expect(bundlesTooMany([...at(100), straight('x', 200, { run: 'rear' })])).toBe(0);
  });

  test('is told of the length that each has no other wire of its pair beside it', () => {
    const pair = (apartMm: number) => [
      straight('plus', 100, { mate: 'minus' }),
      straight('minus', 100 + apartMm, { mate: 'plus' }),
    ];
    expect(strayedM(pair(30))).toBeCloseTo(0, 9);
    expect(strayedM(pair(31))).toBeCloseTo(1, 9);
  });
});
