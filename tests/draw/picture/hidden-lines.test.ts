import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ring } from '../../../lib/board/shape/point.ts';
import { between, type SpacePoint, sight } from '../../../lib/draw/picture/axonometry.ts';
import { hidingOf } from '../../../lib/draw/picture/hidden-lines.ts';
import { edgesOf, type Prism, type Stroke } from '../../../lib/draw/picture/prism.ts';

function rectangle(xM: number, yM: number, widthM: number, depthM: number): Ring {
  return [
    { xM, yM },
    { xM: xM + widthM, yM },
    { xM: xM + widthM, yM: yM + depthM },
    { xM, yM: yM + depthM },
  ];
}

function box(xM: number, yM: number, widthM: number, depthM: number, fromM: number, toM: number): Prism {
  return {
    subject: 'box',
    outline: { outer: rectangle(xM, yM, widthM, depthM), openings: [] },
    fromM,
    toM,
  };
}

const lengthOf = ({ from, to }: Stroke): number =>
  Math.hypot(to.xM - from.xM, to.yM - from.yM, to.zM - from.zM);
const totalOf = (strokes: readonly Stroke[]): number => strokes.reduce((sum, one) => sum + lengthOf(one), 0);

/** How deep a place lies in a body, metres, by how often its rings go round the place; below zero outside it. */
function depthIn({ outline: { outer, openings }, fromM, toM }: Prism, { xM, yM, zM }: SpacePoint): number {
  const rings = [outer, ...openings];
  let turns = 0;
  let nearest = Math.min(zM - fromM, toM - zM);
  const isLevel = nearest > 0;
  for (const [nth, ring] of rings.entries())
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length] ?? a;
      const along =
        ((xM - a.xM) * (b.xM - a.xM) + (yM - a.yM) * (b.yM - a.yM)) /
        ((b.xM - a.xM) ** 2 + (b.yM - a.yM) ** 2);
      const share = Math.min(1, Math.max(0, along));
      const off = Math.hypot(xM - a.xM - share * (b.xM - a.xM), yM - a.yM - share * (b.yM - a.yM));
      nearest = isLevel ? Math.min(nearest, off) : nearest;
      const angle = Math.atan2(
        (a.xM - xM) * (b.yM - yM) - (a.yM - yM) * (b.xM - xM),
        (a.xM - xM) * (b.xM - xM) + (a.yM - yM) * (b.yM - yM),
      );
      turns += nth === 0 ? angle : -angle;
    });
  return Math.abs(turns) > Math.PI && isLevel ? nearest : -1;
}

/** How deep the line of sight from a place to the eye comes to lie in any of the bodies, at steps of a fifth of a millimetre. */
function deepest(bodies: readonly Prism[], place: SpacePoint): number {
  let most = -1;
  for (let step = 1; step <= 1500; step += 1) {
    const by = step * 0.0002;
    const at = {
      xM: place.xM + by * sight[0],
      yM: place.yM + by * sight[1],
      zM: place.zM + by * sight[2],
    };
    for (const body of bodies) if (at.zM < body.toM) most = Math.max(most, depthIn(body, at));
  }
  return most;
}

const mm = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 1000);
const bodies = fc.array(
  fc
    .record({
      x: mm(0, 150),
      y: mm(0, 100),
      w: mm(20, 90),
      d: mm(20, 60),
      from: fc.constantFrom(0, 0, 0.02),
      h: mm(10, 60),
      open: fc.boolean(),
    })
    .map(({ x, y, w, d, from, h, open }): Prism => {
      const body = box(x, y, w, d, from, from + h);
      const openings = open ? [rectangle(x + w / 3, y + d / 3, w / 3, d / 3)] : [];
      return { ...body, outline: { ...body.outline, openings } };
    }),
  { minLength: 2, maxLength: 5 },
);

describe('lines hidden by bodies', () => {
  test('are none of a box that stands alone: nine edges are turned to the eye, three are not', () => {
    const alone = box(0, 0, 0.2, 0.1, 0, 0.05);
    const edges = edgesOf(alone);
    expect(edges).toHaveLength(9);
    const shown = edges.flatMap(hidingOf([alone]).shown);
    // All round above, below right and top, and uprights at three of four corners.
    expect(totalOf(shown)).toBeCloseTo(2 * 0.3 + 0.3 + 3 * 0.05, 9);
  });

  test('end where the outline of a nearer body is', () => {
    const high = box(0, 0, 0.1, 0.1, 0, 0.1);
    const before = { from: { xM: -0.1, yM: 0.05, zM: 0 }, to: { xM: 0.05, yM: 0.05, zM: 0 } };
    const left = hidingOf([high]).shown(before);
    // To the left of the body the ground is hidden as far as its upper edge is seen to lean over it.
    expect(totalOf(left)).toBeCloseTo(0.1 - (sight[0] / sight[2]) * 0.1, 9);
  });

  test('are seen through an opening, and not beside it', () => {
    const plate: Prism = {
      subject: 'plate',
      outline: { outer: rectangle(0, 0, 0.3, 0.3), openings: [rectangle(0.1, 0.1, 0.1, 0.1)] },
      fromM: 0,
      toM: 0.001,
    };
    const behind = { from: { xM: 0.01, yM: 0.15, zM: -0.0001 }, to: { xM: 0.29, yM: 0.15, zM: -0.0001 } };
    const seenM = totalOf(hidingOf([plate]).shown(behind));
    expect(seenM).toBeGreaterThan(0.098);
    expect(seenM).toBeLessThan(0.1);
  });

  test('are those that a nearer body covers, and no others, whatever stands there', () => {
    fc.assert(
      fc.property(bodies, (made) => {
        const hiding = hidingOf(made);
        for (const edge of made.flatMap(edgesOf)) {
          const shown = hiding.shown(edge);
          for (const piece of shown)
            for (const share of [0.1, 0.5, 0.9])
              expect(deepest(made, between(piece.from, piece.to, share))).toBeLessThan(0.0003);
          for (const gap of gapsOf(edge, shown))
            expect(deepest(made, between(gap.from, gap.to, 0.5))).toBeGreaterThan(-1);
        }
      }),
      { numRuns: 15 },
    );
  });
});

/** What is left out of a stroke, but for slivers that the steps of the check may miss. */
function gapsOf(edge: Stroke, shown: readonly Stroke[]): Stroke[] {
  const stops = [edge.from, ...shown.flatMap(({ from, to }) => [from, to]), edge.to];
  return stops.flatMap((from, index) => {
    const to = stops[index + 1];
    return index % 2 === 0 && to && lengthOf({ from, to }) > 0.002 ? [{ from, to }] : [];
  });
}
