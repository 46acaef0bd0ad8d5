import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outward, type Side } from '../../../lib/board/layout/item.ts';
import type { RouteWire } from '../../../lib/board/route/route.ts';
import type { Point } from '../../../lib/board/shape/point.ts';
import { caseCount, casesOf } from '../../long-run.ts';
import { fewestAmongThree, threeParts, threeShape, wiresAmong } from '../layout/three-parts.ts';
import { shapeOf } from '../shapes.ts';
import { routeWires } from '../usual-board.ts';
import { type Cell, fewestByAllTracks, type TrackWire } from './all-tracks.ts';
import { boardHeightM, boardWidthM, fewestByWaysRound, strips, wiresByLot } from './ways-round.ts';

type Terminal = Point & { readonly faces: Side };

describe('crossings of up to eight wires against every way round a part', () => {
  const shape = shapeOf({ rectangle: { width: `${boardWidthM} m`, height: `${boardHeightM} m` } });
  it.each([2, 3, 4, 5, 6, 7, 8])('of %i wires are the fewest that there can be', (count) => {
    for (const seed of casesOf([1, 2], (one) => one === 1 || count < 7)) {
      const wires = wiresByLot(100 * count + seed, count);
      const { crossings, faults } = routeWires({ shape, barriers: strips, wires }, { pitchM: 0.0125 });
      expect(faults).toEqual([]);
      expect({ seed, crossings: crossings.length }).toEqual({ seed, crossings: fewestByWaysRound(wires) });
    }
  });
});

describe('crossings on a square of five by five tracks with pins against every choice of paths at once', () => {
  /** A square of 50 mm between terminal strips 10 mm wide: tracks at 15, 25, 35, 45 and 55 mm. */
  const shape = shapeOf({ rectangle: { width: '70 mm', height: '70 mm' } });
  const frame = [
    { id: 'left', box: { minX: 0, maxX: 0.01, minY: 0, maxY: 0.07 } },
    { id: 'right', box: { minX: 0.06, maxX: 0.07, minY: 0, maxY: 0.07 } },
    { id: 'low', box: { minX: 0, maxX: 0.07, minY: 0, maxY: 0.01 } },
    { id: 'high', box: { minX: 0, maxX: 0.07, minY: 0.06, maxY: 0.07 } },
  ];
  const at = (track: number) => 0.015 + 0.01 * track;
  /** A terminal at the end of a track, and the cell and step by which a wire comes out of it. */
  const ends = (['right', 'left', 'top', 'bottom'] as const).flatMap((faces) =>
    [0, 1, 2, 3, 4].map((track) => {
      const level = faces === 'right' || faces === 'left';
      const near = faces === 'right' || faces === 'top';
      const [edge, cell] = [near ? 0.01 : 0.06, near ? 0 : 4];
      const terminal: Terminal = level
        ? { xM: edge, yM: at(track), faces }
        : { xM: at(track), yM: edge, faces };
      const { xM, yM } = outward[faces];
      const first: Cell = level ? [cell, track] : [track, cell];
      return { terminal, first, step: [xM, yM] as Cell };
    }),
  );

  it('are the fewest that there can be wherever all three wires find room', () => {
    const drawn = fc.shuffledSubarray(ends, { minLength: 6, maxLength: 6 });
    const pins = fc.uniqueArray(fc.tuple(fc.nat(4), fc.nat(4)), {
      minLength: 2,
      maxLength: 4,
      selector: String,
    });
    let [tried, laid] = [0, 0];
    fc.assert(
      fc.property(drawn, pins, (six, blocked) => {
        const cells = six.map(({ first }) => String(first));
        fc.pre(new Set(cells).size === 6);
        const free = blocked.filter((cell) => !cells.includes(String(cell)));
        const pairs = [0, 2, 4].flatMap((k) => {
          const [from, to] = [six[k], six[k + 1]];
          return from && to ? [{ from, to }] : [];
        });
        const fewest = fewestByAllTracks(
          pairs.map(({ from, to }): TrackWire => {
            const out: Cell = [-to.step[0], -to.step[1]];
            return { start: from.first, inward: from.step, goal: to.first, outward: out };
          }),
          free,
        );
        fc.pre(fewest < Infinity);
        const wires = pairs.map(({ from, to }, index): RouteWire => {
          return {
            id: `w${index}`,
            from: from.terminal,
            to: to.terminal,
            layer: 'speaker',
            diameterM: 0.002,
          };
        });
        const barriers = [
          ...frame,
          ...free.map(([x, y]) => ({
            id: `pin-${x}-${y}`,
            centre: { xM: at(x), yM: at(y) },
            radiusM: 0.001,
          })),
        ];
        const { crossings, faults } = routeWires({ shape, barriers, wires }, { pitchM: 0.01 });
        tried += 1;
        if (faults.length > 0) return;
        laid += 1;
        expect(crossings).toHaveLength(fewest);
      }),
      { numRuns: caseCount({ all: 15, some: 5 }), seed: 4 },
    );
    // Five tracks are hardly enough for three wires: laid one after the other, two find no room.
    expect(tried - laid).toBeLessThanOrEqual(2);
  });
});

describe('crossings of more than eight wires', () => {
  it('are never more than those of the first laying', () => {
    fc.assert(
      fc.property(fc.integer({ min: 9, max: 13 }), fc.nat(1000), (count, seed) => {
        const wires = wiresAmong(seed, count, 0);
        const found = routeWires({ shape: threeShape, barriers: threeParts, wires }, { pitchM: 0.01 });
        expect(found.routes.length + found.faults.length).toBeGreaterThanOrEqual(count);
        if (found.faults.length === 0)
          expect(found.crossings.length).toBeLessThanOrEqual(found.firstCrossings);
      }),
      { numRuns: caseCount({ all: 8, some: 2 }), seed: 6 },
    );
  });
});

describe('crossings of eight wires among three parts, with room to spare', () => {
  it.each(casesOf([13, 22], (_, index) => index === 0))(
    'of draw %i are the fewest of every way round the parts',
    (seed) => {
      const wires = wiresAmong(80 + seed, 8, 0.01);
      const { crossings, faults } = routeWires(
        { shape: threeShape, barriers: threeParts, wires },
        { pitchM: 0.0063, clearanceM: 0.001 },
      );
      expect(faults).toEqual([]);
      expect(crossings).toHaveLength(fewestAmongThree(wires));
    },
  );
});
