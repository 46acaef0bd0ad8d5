import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gapM, roomInsideM } from '../../../lib/board/shape/ring-gap.ts';
import {
  flangeWidthM,
  freeStretch,
  lineAcross,
  onRib,
  type RibObstacle,
  ribRing,
  ribSection,
  ringsAlong,
} from '../../../lib/board/strength/rib.ts';
import { outsideCheck } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';

const byHand = outsideCheck('rooms-by-hand');
const clearanceM = 0.006;
const { region } = shapeOf({ rectangle: { width: '600 mm', height: '400 mm' } });
const square = (xM: number, yM: number, reachM: number): RibObstacle => ({
  of: 'f',
  what: 'f',
  ring: [
    { xM: xM - reachM, yM: yM - reachM },
    { xM: xM + reachM, yM: yM - reachM },
    { xM: xM + reachM, yM: yM + reachM },
    { xM: xM - reachM, yM: yM + reachM },
  ],
});
const level = (yM: number, widthM = 0.012) => ({ ...lineAcross(region, 'level', yM), widthM });

describe('the stretch on which a rib is free', () => {
  it('reaches over the whole board, 6 mm short of its edges', () => {
    const free = freeStretch(level(0.2), region, [], clearanceM);
    expect(free?.from.xM).toBeCloseTo(0.006, 6);
    expect(free?.to.xM).toBeCloseTo(0.594, 6);
  });

  it('ends 6 mm before what is in its way, and takes the longer side', () => {
    const free = freeStretch(level(0.2), region, [square(0.2, 0.2, 0.025)], clearanceM);
    expect(byHand.differs(free?.from.xM ?? 0, 0.231)).toBeCloseTo(0.231, 6);
    expect(free?.to.xM).toBeCloseTo(0.594, 6);
  });

  it('passes what it keeps 6 mm from', () => {
    const free = freeStretch(
      level(0.2),
      region,
      [square(0.2, 0.2 + 0.006 + 0.006 + 0.025, 0.025 - 1e-6)],
      clearanceM,
    );
    expect(free?.from.xM).toBeCloseTo(0.006, 6);
  });

  it('lies flush with an edge, but not past it', () => {
    expect(freeStretch(level(0.006), region, [], clearanceM)).not.toBeNull();
    expect(freeStretch(level(0.005), region, [], clearanceM)).toBeNull();
    expect(freeStretch(level(-0.1), region, [], clearanceM)).toBeNull();
  });

  it('is none where both clearances leave less than a hair of the board', () => {
    const short = (mm: number) => {
      const own = shapeOf({ rectangle: { width: `${mm} mm`, height: '400 mm' } }).region;
      return freeStretch({ ...lineAcross(own, 'level', 0.2), widthM: 0.012 }, own, [], clearanceM);
    };
    expect(short(12.0005)).toBeNull();
    expect(short(12.01)?.from.xM).toBeCloseTo(0.006, 6);
  });

  it('takes the first of two that are as long', () => {
    const free = freeStretch(level(0.2), region, [square(0.3, 0.2, 0.025)], clearanceM);
    expect([free?.from.xM, free?.to.xM].map((m) => m?.toFixed(6))).toEqual(['0.006000', '0.269000']);
  });

  it('stops before a cut-out', () => {
    const cut = shapeOf({
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [{ cut: 'window', x: '400 mm', y: '150 mm', width: '100 mm', height: '100 mm' }],
    });
    const free = freeStretch(level(0.2), cut.region, [], clearanceM);
    expect(free?.to.xM).toBeCloseTo(0.394, 6);
  });

  it('is clear of everything, whatever stands there', () => {
    const obstacle = fc
      .tuple(
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0.005, max: 0.05, noNaN: true }),
      )
      .map(([x, y, reach]) => square(x, y, reach));
    const at = fc.double({ min: 0.03, max: 0.37, noNaN: true });
    const width = fc.double({ min: 0.01, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(fc.array(obstacle, { maxLength: 6 }), at, width, (obstacles, yM, widthM) => {
        const line = level(yM, widthM);
        const free = freeStretch(line, region, obstacles, clearanceM);
        if (!free) return;
        const ring = ribRing({ ...free, widthM });
        for (const piece of region) expect(roomInsideM(ring, piece.outer)).toBeGreaterThan(-1e-5);
        for (const one of obstacles) expect(gapM(ring, one.ring)).toBeGreaterThan(0.006 - 1e-5);
      }),
    );
  });
});

describe('a point of a rib', () => {
  const slant = { from: { xM: 0.1, yM: 0.1 }, to: { xM: 0.4, yM: 0.5 }, widthM: 0.02 };

  it('is so far along and so far to the left: 3, 4, 5', () => {
    const point = onRib(slant, 0.25, 0.05);
    expect(point.xM).toBeCloseTo(0.1 + 0.15 - 0.04, 9);
    expect(point.yM).toBeCloseTo(0.1 + 0.2 + 0.03, 9);
  });

  it('of a rib without length lies to the right of it', () => {
    const bare = { from: slant.from, to: slant.from };
    expect(onRib(bare, 0.02, 0.01)).toEqual({ xM: 0.1 + 0.02, yM: 0.1 + 0.01 });
  });

  it('cut across into two, each half is as long and as wide as the other', () => {
    const [one, two] = ringsAlong(slant, 2);
    expect(ribRing(slant)[0]).toEqual(one?.[0]);
    expect(one?.[1]?.xM).toBeCloseTo(two?.[0]?.xM ?? Number.NaN, 9);
    expect(two?.[2]?.yM).toBeCloseTo(ribRing(slant)[2]?.yM ?? Number.NaN, 9);
    const [a, b] = [one?.[0], one?.[1]];
    expect(Math.hypot((b?.xM ?? 0) - (a?.xM ?? 0), (b?.yM ?? 0) - (a?.yM ?? 0))).toBeCloseTo(0.25, 9);
  });
});

describe('the strips of a section', () => {
  it.each([
    {
      said: 'one strip on its edge',
      size: [0.012, 0.04, 0.012],
      is: { form: 'on-edge', strips: 1, cutWidthM: 0.04 },
    },
    {
      said: 'two beside each other',
      size: [0.024, 0.04, 0.012],
      is: { form: 'on-edge', strips: 2, cutWidthM: 0.04 },
    },
    {
      said: 'one that lies flat',
      size: [0.1, 0.018, 0.018],
      is: { form: 'flat', strips: 1, cutWidthM: 0.1 },
    },
    {
      said: 'flat, though its width is whole layers as well',
      size: [0.06, 0.012, 0.012],
      is: { form: 'flat', strips: 1, cutWidthM: 0.06 },
    },
    { said: 'two flat ones', size: [0.1, 0.036, 0.018], is: { form: 'flat', strips: 2, cutWidthM: 0.1 } },
    {
      said: '3/4 in taken for 19 mm',
      size: [0.019, 0.04, 0.01905],
      is: { form: 'on-edge', strips: 1, cutWidthM: 0.04 },
    },
  ])('$said', ({ size: [widthM = 0, heightM = 0, thicknessM = 0], is }) => {
    expect(ribSection(widthM, heightM, thicknessM)).toEqual(is);
  });

  it('is none where neither side is whole layers', () => {
    expect(ribSection(0.02, 0.03, 0.012)).toBeNull();
  });
});

describe('the flange of a glued rib', () => {
  const rib = { from: { xM: 0.1, yM: 0.2 }, to: { xM: 0.5, yM: 0.2 }, widthM: 0.018 };

  it('is a tenth of the span beside its own width (EN 1995-1-1, Table 9.1, quoted from memory)', () => {
    expect(flangeWidthM(rib, [], region)).toBeCloseTo(0.018 + 0.04, 9);
  });

  it('spans from fixing to fixing', () => {
    expect(flangeWidthM(rib, [{ xM: 0.3, yM: 0.05 }], region)).toBeCloseTo(0.018 + 0.02, 9);
  });

  it('spans no further for a fixing beyond its ends', () => {
    for (const xM of [0.02, 0.58])
      expect(flangeWidthM(rib, [{ xM, yM: 0.05 }], region)).toBeCloseTo(0.018 + 0.04, 9);
  });

  it('spans the greatest of its stretches, in whatever order the fixings come', () => {
    const feet = [0.4, 0.15].map((xM) => ({ xM, yM: 0.2 }));
    expect(flangeWidthM(rib, feet, region)).toBeCloseTo(0.018 + 0.025, 9);
  });

  it('ends with the material', () => {
    const atEdge = { ...rib, from: { xM: 0.1, yM: 0.009 }, to: { xM: 0.5, yM: 0.009 } };
    expect(flangeWidthM(atEdge, [], region)).toBeCloseTo(0.009 + 0.029, 6);
  });
});
