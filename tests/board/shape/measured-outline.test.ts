import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, shapeOf } from '../shapes.ts';

describe('a notch measured in a vehicle', () => {
  const rectangle = { width: '38 in', height: '18 in' };
  const corners = (outline: unknown) =>
    shapeOf(outline).outline.map(({ xM, yM }) => [
      Math.round((xM / 0.0254) * 1e6) / 1e6,
      Math.round((yM / 0.0254) * 1e6) / 1e6,
    ]);
  const notched = (cut: Record<string, unknown>) => corners({ rectangle, cuts: [{ cut: 'notch', ...cut }] });

  it('from the right end is the notch from the left end, 38 - 25 - 8 = 5 in from it', () => {
    const size = { edge: 'bottom', width: '8 in', depth: '5 1/4 in' };
    const fromRight = notched({ ...size, from: 'right', offset: '5 in' });
    expect(fromRight).toEqual(notched({ ...size, from: 'left', offset: '25 in' }));
    expect(fromRight).toContainEqual([25, 5.25]);
    expect(fromRight).toContainEqual([33, 5.25]);
  });

  it('from the top of a side is measured downwards', () => {
    const fromTop = notched({ edge: 'left', from: 'top', offset: '3 in', width: '2 1/2 in', depth: '1 in' });
    expect(fromTop).toContainEqual([1, 15]);
    expect(fromTop).toContainEqual([1, 12.5]);
  });

  it('in millimetres is the same as in fractions of an inch', () => {
    const cut = { edge: 'bottom', offset: '25 in', width: '8 in', depth: '5 1/4 in' };
    expect(notched({ ...cut, offset: '635 mm', width: '203.2 mm', depth: '133.35 mm' })).toEqual(
      notched(cut),
    );
  });
});

it('moving the datum changes no distance between any two corners and holes', () => {
  const inMm = (max: number) => fc.integer({ min: 60, max });
  fc.assert(
    fc.property(
      fc.record({ dx: fc.integer({ min: -900, max: 900 }), dy: fc.integer({ min: -900, max: 900 }) }),
      fc.record({ width: fc.integer({ min: 400, max: 900 }), height: fc.integer({ min: 300, max: 600 }) }),
      fc.record({ x: inMm(340), y: inMm(240), offset: inMm(200) }),
      ({ dx, dy }, { width, height }, { x, y, offset }) => {
        const points = (byX: number, byY: number) => {
          const at = (px: number, py: number) => [mm(px + byX), mm(py + byY)];
          const { outline, holes } = shapeOf({
            polygon: [at(0, 0), at(width, 0), at(width, height), at(0, height)],
            cuts: [
              {
                cut: 'notch',
                edge: 'bottom',
                from: 'right',
                offset: mm(offset),
                width: mm(50),
                depth: mm(20),
              },
              { cut: 'hole', x: mm(x + byX), y: mm(y + byY), diameter: mm(6), purpose: 'wire' },
            ],
          });
          return [...outline, ...holes];
        };
        const [still, moved] = [points(0, 0), points(dx, dy)];
        const between = (all: readonly { xM: number; yM: number }[]) =>
          all
            .flatMap((a, nth) => all.slice(nth + 1).map((b) => Math.hypot(a.xM - b.xM, a.yM - b.yM)))
            .toSorted((a, b) => a - b);
        const [before, after] = [between(still), between(moved)];
        expect(after).toHaveLength(before.length);
        for (const [nth, distanceM] of before.entries()) expect(after[nth]).toBeCloseTo(distanceM, 8);
      },
    ),
    { numRuns: 100 },
  );
});
