import { describe, expect, test } from 'vitest';
import { kinkedBend, tightestBend } from '../../../lib/board/route/bends.ts';

const way = (...points: readonly (readonly [number, number])[]) => ({
  points: points.map(([xM, yM]) => ({ xM, yM })),
});
/** A turn back 10 mm away, and a jog of 10 mm in a way that goes on. */
const back = way([0, 0], [0.1, 0], [0.1, 0.01], [0, 0.01]);
const jog = way([0, 0], [0.1, 0], [0.1, 0.01], [0.2, 0.01]);

// By hand. A turn back 10 mm away is a half circle of 5 mm, however it is laid.
describe('a bend that kinks a wire', () => {
  test('is told of a turn back below the radius, and not at it', () => {
    expect(kinkedBend(back, 0.0056)).toMatchObject({ radiusM: expect.closeTo(0.005, 9), bends: 2 });
    expect(kinkedBend(back, 0.005)).toBeNull();
  });

  test('is told of a bend whose end is too near', () => {
    const stub = way([0, 0], [0.01, 0], [0.01, 0.1]);
    expect(kinkedBend(stub, 0.0106)).toMatchObject({ radiusM: expect.closeTo(0.01, 9), bends: 1 });
    expect(kinkedBend(stub, 0.01)).toBeNull();
  });

  // Two arcs over 200 mm: (10^2 + 200^2) / (4 x 10) = 1002.5 mm; the ways to both ends have 100 mm for their bends.
  test('is none where a jog can be eased over the straight wire before and behind it', () => {
    expect(kinkedBend(jog, 0.1)).toBeNull();
    expect(kinkedBend(jog, 0.101)).toMatchObject({ radiusM: expect.closeTo(0.1, 9), bends: 1 });
  });

  // The stretch of 20 mm between two jogs has 10 mm for each of its bends; each jog, over half of it on both sides, more:
  // (10^2 + 20^2) / (4 x 10) = 12.5 mm.
  test('is told of a jog that another one leaves too little wire', () => {
    const twice = way([0, 0], [0.1, 0], [0.1, 0.01], [0.12, 0.01], [0.12, 0.02], [0.3, 0.02]);
    expect(kinkedBend(twice, 0.0125 + 0.0006)?.radiusM).toBeCloseTo(0.01, 9);
    expect(kinkedBend(twice, 0.01)).toBeNull();
  });

  test('is none before the edge of the board, where the wire goes on', () => {
    const out = way([0, 0], [0.1, 0], [0.1, 0.01]);
    expect(kinkedBend(out, 0.02)?.radiusM).toBeCloseTo(0.01, 9);
    expect(kinkedBend(out, 0.02, { from: false, to: true })).toBeNull();
    expect(kinkedBend(out, 0.02, { from: true, to: false })?.radiusM).toBeCloseTo(0.01, 9);
  });
});

describe('a bend that is tighter than is good', () => {
  test('is a turn back below twice the radius, and no jog with the radius of straight wire before and behind it', () => {
    expect(tightestBend(back, 0.04)?.radiusM).toBeCloseTo(0.005, 9);
    for (const asideM of [0.001, 0.01, 0.05, 0.0799])
      expect(tightestBend(way([0, 0], [0.04, 0], [0.04, asideM], [0.08, asideM]), 0.04)).toBeNull();
  });

  // (20^2 + 20^2) / (4 x 20) = 10 mm.
  test('is a jog with less straight wire than that', () => {
    const short = way([0, 0], [0.01, 0], [0.01, 0.02], [0.1, 0.02]);
    expect(tightestBend(short, 0.0106)?.radiusM).toBeCloseTo(0.01, 9);
    expect(tightestBend(short, 0.01)).toBeNull();
  });
});
