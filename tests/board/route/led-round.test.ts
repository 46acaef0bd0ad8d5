import { describe, expect, it } from 'vitest';
import { isLedRound, quartersRound } from '../../../lib/board/route/led-round.ts';
import { distance, type Point } from '../../../lib/board/shape/point.ts';

const way = (...points: readonly (readonly [number, number])[]) => {
  const all = points.map(([xM, yM]): Point => ({ xM, yM }));
  return { points: all, lengthM: all.reduce((sum, p, at) => sum + distance(all[at - 1] ?? p, p), 0) };
};

// Counted by hand.
describe('a wire that is led round', () => {
  const straight = way([0, 0], [0.5, 0], [0.5, 0.3]);
  const stairs = way([0, 0], [0.1, 0], [0.1, 0.1], [0.2, 0.1], [0.2, 0.2], [0.3, 0.2]);
  const back = way([0, 0], [0.1, 0], [0.1, 0.1], [0, 0.1]);
  const hook = way([0, 0], [0.1, 0], [0.1, 0.1], [-0.1, 0.1], [-0.1, -0.3]);
  const ring = way([0, 0], [0.1, 0], [0.1, 0.1], [0.05, 0.1], [0.05, -0.1], [0.3, -0.1]);

  it('is told by its quarter turns one way, what it turned back taken off', () => {
    expect([straight, stairs, back, hook, ring].map(quartersRound)).toEqual([1, 1, 2, 3, 4]);
    expect(quartersRound(way([0, 0], [1, 0]))).toBe(0);
    expect(quartersRound({ points: [...hook.points].reverse() })).toBe(3);
  });

  it('turns by three quarters at least: what goes out, along and back in does not', () => {
    expect([straight, stairs, back].map(isLedRound)).toEqual([false, false, false]);
    expect([hook, ring].map(isLedRound)).toEqual([true, true]);
  });

  it('or is more than 1.8 times as long as straight, and 25 cm longer', () => {
    const far = (outM: number, overM: number) => way([0, 0], [0, outM], [overM, outM], [overM, 0]);
    expect(isLedRound(far(0.2, 0.3))).toBe(true);
    // 0.44 m for 0.2 m is 24 cm more; 0.8 m for 0.5 m is 1.6 times as long.
    expect(isLedRound(far(0.12, 0.2))).toBe(false);
    expect(isLedRound(far(0.15, 0.5))).toBe(false);
  });
});
