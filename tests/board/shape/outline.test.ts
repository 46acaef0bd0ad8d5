import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardArea, boardCentroid, boardMass } from '../../../lib/board/area-and-mass.ts';
import { momentsOf } from '../../../lib/board/shape/bulge.ts';
import { offset } from '../../../lib/board/shape/offset.ts';
import { drawOutline } from '../../../lib/board/shape/outline.ts';
import { regionArea } from '../../../lib/board/shape/region.ts';
import { narrowestWeb } from '../../../lib/board/shape/web.ts';
import { caseCount } from '../../long-run.ts';
import { outsideCheck } from '../../outside-check.ts';
import { flattenPolygon, mm, outlines, shapeOf, written } from '../shapes.ts';
import { mirrorLoop } from './mirror-loop.ts';

const inFlatten = outsideCheck('areas-in-flatten');

const rectangle = { width: '36 in', height: '18 in' };
const inch2 = 0.0254 ** 2;

describe('area of an outline', () => {
  it('equals that of @flatten-js/core on 500 outlines with arcs, notches and openings', () => {
    fc.assert(
      fc.property(outlines, (outline) => {
        const shape = shapeOf(outline);
        const other = flattenPolygon(shape.outline, ...shape.cutouts);
        expect(inFlatten.differs(boardArea(shape).value, other.area())).toBeCloseTo(other.area(), 9);
      }),
      { numRuns: caseCount({ all: 500, some: 150 }), seed: 1 },
    );
  });

  it('takes each cut off the base: areas of plane figures, worked by hand', () => {
    const shape = shapeOf({
      rectangle,
      cuts: [
        { cut: 'corner', corner: 'lower-left', dx: '3 in', dy: '4 in' },
        { cut: 'corner', corner: 'upper-right', radius: '2 in' },
        { cut: 'notch', edge: 'top', from: 'right', offset: '6 in', width: '4 in', depth: '3 in' },
        { cut: 'step', corner: 'lower-right', dx: '5 in', dy: '2 in' },
        { cut: 'slot', x: '10 in', y: '9 in', length: '4 in', width: '1 in', turn: '30 deg' },
        { cut: 'hole', from: 'lower-right', x: '2 in', y: '4 in', diameter: '1/2 in', purpose: 'wire' },
      ],
    });
    const expected = 36 * 18 - 6 - (4 - Math.PI) - 12 - 10 - (3 + Math.PI / 4) - Math.PI / 16;
    expect(boardArea(shape).value / inch2).toBeCloseTo(expected, 4);
    // The rounded corner is one arc of a quarter turn: bulge tan(90 deg / 4), DXF reference, group code 42.
    expect(shape.outline.filter(({ bulge }) => bulge !== 0)).toEqual([
      { xM: 0.9144, yM: 0.4064, bulge: expect.closeTo(Math.SQRT2 - 1, 9) },
    ]);
    expect(boardMass(shape, 0.018, 680).value).toBeCloseTo(expected * inch2 * 0.018 * 680, 5);
  });

  it('knows the centroid of a half disc, 4 r / 3 pi from its flat side', () => {
    const half = momentsOf([
      { xM: -1, yM: 0, bulge: 0 },
      { xM: 1, yM: 0, bulge: 1 },
    ]);
    expect(half.areaM2).toBeCloseTo(Math.PI / 2, 12);
    expect(half.yM3 / half.areaM2).toBeCloseTo(4 / (3 * Math.PI), 12);
    expect(half.xM3).toBeCloseTo(0, 12);
  });

  it('is the same mirrored, and its centroid is mirrored with it', () => {
    fc.assert(
      fc.property(outlines, (outline) => {
        const shape = shapeOf(outline);
        const mirrored = {
          ...shape,
          outline: mirrorLoop(shape.outline, 0.3),
          cutouts: shape.cutouts.map((loop) => mirrorLoop(loop, 0.3)),
        };
        expect(boardArea(mirrored).value).toBeCloseTo(boardArea(shape).value, 12);
        expect(boardCentroid(mirrored).xM).toBeCloseTo(0.6 - boardCentroid(shape).xM, 9);
      }),
      { numRuns: 100, seed: 2 },
    );
  });
});

describe('offset of an outline', () => {
  it('lies at its distance from the line, as @flatten-js/core measures it', () => {
    fc.assert(
      fc.property(outlines, fc.integer({ min: -12, max: 25 }), (outline, distanceMm) => {
        fc.pre(distanceMm !== 0);
        const shape = shapeOf(outline);
        const lines = flattenPolygon(shape.outline, ...shape.cutouts);
        const moved = offset([shape.outline, ...shape.cutouts], distanceMm / 1000, 0.0005);
        const reach = Math.abs(distanceMm) / 1000;
        expect(Math.sign(regionArea(moved) - regionArea(shape.region))).toBe(Math.sign(distanceMm));
        for (const { xM, yM } of moved[0]?.outer.filter((_, at) => at % 7 === 0) ?? []) {
          const [found] = lines.distanceTo(new Flatten.Point(xM, yM));
          expect(found).toBeGreaterThan(reach - 0.00051);
          // A corner of the polygon round a disc stands out by the tolerance at most; inward corners may stand further.
          if (distanceMm > 0) expect(found).toBeLessThan(reach + 0.00051);
        }
      }),
      { numRuns: caseCount({ all: 500, some: 100 }), seed: 3 },
    );
  });

  it('of a square grown by r has area a^2 + 4 a r + pi r^2 (Steiner)', () => {
    const { outline } = shapeOf({ rectangle: { width: '300 mm', height: '300 mm' } });
    const grown = regionArea(offset([outline], 0.05, 1e-6));
    expect(grown).toBeCloseTo(0.09 + 4 * 0.3 * 0.05 + Math.PI * 0.0025, 6);
    expect(regionArea(offset([outline], -0.05))).toBeCloseTo(0.04, 8);
  });
});

describe('measuring from another corner', () => {
  it('moves no hole', () => {
    const hole = { cut: 'hole', diameter: '10 mm', purpose: 'wire' };
    const at = (from: string | undefined, x: number, y: number) =>
      shapeOf({
        rectangle: { width: '600 mm', height: '400 mm' },
        cuts: [{ ...hole, ...(from ? { from } : {}), x: mm(x), y: mm(y) }],
      }).holes[0];
    const first = at(undefined, 120, 90);
    for (const other of [
      at('lower-left', 120, 90),
      at('lower-right', 480, 90),
      at('upper-right', 480, 310),
      at('upper-left', 120, 310),
    ])
      expect([other?.xM, other?.yM]).toEqual([
        expect.closeTo(first?.xM ?? 0, 12),
        expect.closeTo(first?.yM ?? 0, 12),
      ]);
  });
});

describe('moving the datum', () => {
  it('changes no area and no web', () => {
    const corners = [
      [0, 0],
      [400, 0],
      [500, 300],
      [200, 380],
      [0, 300],
    ] as const;
    const shapeAt = (dx: number, dy: number) =>
      shapeOf({
        polygon: corners.map(([x, y]) => [mm(x + dx), mm(y + dy)]),
        cuts: [
          { cut: 'notch', edge: 2, offset: '100 mm', width: '50 mm', depth: '40 mm' },
          { cut: 'arc-corner', radius: '20 mm', corners: [1, 4] },
          { cut: 'window', x: mm(80 + dx), y: mm(90 + dy), width: '70 mm', height: '60 mm', radius: '8 mm' },
          { cut: 'slot', x: mm(250 + dx), y: mm(200 + dy), length: '90 mm', width: '20 mm', turn: '40 deg' },
        ],
      });
    const still = shapeAt(0, 0);
    const web = narrowestWeb(still).value;
    fc.assert(
      fc.property(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 }), (dx, dy) => {
        const moved = shapeAt(dx, dy);
        expect(boardArea(moved).value).toBeCloseTo(boardArea(still).value, 8);
        expect(narrowestWeb(moved).value).toBeCloseTo(web, 6);
        expect(boardCentroid(moved).xM).toBeCloseTo(boardCentroid(still).xM + dx / 1000, 7);
      }),
      { numRuns: 20, seed: 14 },
    );
  });
});

describe('cuts that cannot be made', () => {
  const faultsOf = (cuts: unknown[], base: object = { rectangle }) =>
    drawOutline(written({ ...base, cuts })).faults.map(({ rule, of, value, limit }) => ({
      rule,
      of,
      value,
      limit,
    }));

  it('names a notch wider than the board, and makes the rest', () => {
    const cuts = [
      { cut: 'notch', id: 'spare-wheel', edge: 'left', offset: '0 in', width: '20 in', depth: '2 in' },
      { cut: 'corner', corner: 'lower-left', dx: '2 in', dy: '2 in' },
    ];
    expect(faultsOf(cuts)).toEqual([
      {
        rule: 'notch-wider-than-edge',
        of: ['spare-wheel'],
        value: expect.closeTo(0.508, 9),
        limit: expect.closeTo(0.4572, 9),
      },
    ]);
    const { shape } = drawOutline(written({ rectangle, cuts }));
    expect(shape && boardArea(shape).value / inch2).toBeCloseTo(36 * 18 - 2, 6);
  });

  it.each([
    [{ cut: 'notch', edge: 'top', offset: '30 in', width: '8 in', depth: '2 in' }, 'notch-past-end-of-edge'],
    [{ cut: 'notch', edge: 'top', offset: '3 in', width: '8 in', depth: '18 in' }, 'board-in-pieces'],
    [{ cut: 'notch', edge: 'top', offset: '3 in', width: '8 in', depth: '19 in' }, 'cut-outside-board'],
    [{ cut: 'notch', edge: 7, offset: '3 in', width: '8 in', depth: '1 in' }, 'cut-without-place'],
    [
      { cut: 'notch', edge: 'top', from: 'bottom', offset: '3 in', width: '8 in', depth: '1 in' },
      'cut-without-place',
    ],
    [{ cut: 'corner', corner: 'upper-left', dx: '37 in', dy: '1 in' }, 'corner-cut-longer-than-edge'],
    [{ cut: 'corner', corner: 'upper-left', radius: '19 in' }, 'corner-radius-too-large'],
    [{ cut: 'step', corner: 'upper-left', dx: '0 in', dy: '1 in' }, 'cut-without-size'],
    [{ cut: 'slot', x: '35 in', y: '9 in', length: '4 in', width: '1 in' }, 'cut-outside-board'],
    [{ cut: 'slot', x: '15 in', y: '9 in', length: '1 in', width: '4 in' }, 'slot-wider-than-long'],
    [{ cut: 'window', x: '40 in', y: '2 in', width: '2 in', height: '2 in' }, 'cut-outside-board'],
    [{ cut: 'window', x: '-1 in', y: '-1 in', width: '40 in', height: '20 in' }, 'cut-outside-board'],
    [{ cut: 'hole', x: '0.1 in', y: '2 in', diameter: '1/2 in', purpose: 'wire' }, 'cut-outside-board'],
  ])('%o', (cut, rule) => {
    expect(faultsOf([cut])).toEqual([expect.objectContaining({ rule, of: [`${cut.cut}-1`] })]);
  });

  it('tells two cuts that take the same material', () => {
    const window = { cut: 'window', x: '5 in', y: '5 in', width: '4 in', height: '4 in' };
    expect(faultsOf([window, { ...window, x: '8 in' }])).toEqual([
      expect.objectContaining({ rule: 'cuts-overlap', of: ['window-2', 'window-1'] }),
    ]);
  });

  it('refuses a polygon that crosses itself, folds back or has no area', () => {
    const polygon = (...points: [number, number][]) => ({
      polygon: points.map(([x, y]) => [mm(x), mm(y)]),
    });
    const bow = polygon([0, 0], [100, 100], [100, 0], [0, 100]);
    const flat = polygon([0, 0], [100, 0], [200, 0]);
    const doubled = polygon([0, 0], [100, 0], [100, 0], [0, 100]);
    for (const [base, rule] of [
      [bow, 'outline-crosses-itself'],
      [flat, 'outline-crosses-itself'],
      [doubled, 'outline-edge-without-length'],
    ] as const)
      expect(drawOutline(written(base))).toEqual({
        shape: null,
        faults: [expect.objectContaining({ rule })],
      });
  });

  it('cuts polygons by the numbers of their corners and edges, whichever way round they were written', () => {
    const corners = [
      ['0 mm', '0 mm'],
      ['400 mm', '0 mm'],
      ['500 mm', '300 mm'],
      ['0 mm', '300 mm'],
    ];
    const cuts = [{ cut: 'notch', edge: 2, offset: '100 mm', width: '50 mm', depth: '40 mm' }];
    const area = (polygon: unknown, list: unknown) => boardArea(shapeOf({ polygon, cuts: list })).value;
    const whole = 0.3 * 0.45;
    expect(area(corners, cuts)).toBeCloseTo(whole - 0.002, 8);
    // Reversed, the slanted edge from corner 2 to corner 3 keeps its number.
    expect(area(corners.toReversed(), cuts)).toBeCloseTo(whole - 0.002, 8);
  });
});
