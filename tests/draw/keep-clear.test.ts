import { describe, expect, it } from 'vitest';
import { clearBands, hatchStrokes } from '../../lib/draw/board/keep-clear.ts';
import { at, boxHolds, grown } from '../../lib/draw/paper.ts';
import type { KeepClear, KeepClearKind } from '../../lib/model/plan/board.ts';
import { keepClearKinds } from '../../lib/model/plan/board.ts';

const box = { leftMm: 50, topMm: 40, rightMm: 90, bottomMm: 60 };
const view = { ratio: 5, datum: at(0, 100), mirrored: false } as const;
const room = (kind: KeepClearKind, side: KeepClear['side'], depthM: number): KeepClear => ({
  kind,
  side,
  depthM,
});

describe('the strips to keep clear', () => {
  it('are to scale: 1 in and 6 in at 1:5 end 5.08 mm and 30.48 mm from the item', () => {
    const bands = clearBands(box, [room('tool', 'right', 0.1524), room('air', 'right', 0.0254)], view);
    expect(bands.map(({ kinds }) => kinds)).toEqual([['air'], ['tool']]);
    expect(bands[0]?.box).toMatchObject({ leftMm: 90, rightMm: expect.closeTo(95.08, 9) });
    expect(bands[1]?.box).toMatchObject({
      leftMm: expect.closeTo(95.08, 9),
      rightMm: expect.closeTo(120.48, 9),
      topMm: 40,
      bottomMm: 60,
    });
  });

  it('that end together share one strip', () => {
    const bands = clearBands(box, [room('control', 'top', 0.0762), room('connector', 'top', 0.0762)], view);
    expect(bands).toHaveLength(1);
    expect(bands[0]?.kinds.toSorted()).toEqual(['connector', 'control']);
  });

  it('are hatched inside themselves, each stroke at 45 degrees', () => {
    for (const kind of keepClearKinds) {
      const strokes = hatchStrokes(box, kind);
      expect(strokes.length).toBeGreaterThan(10);
      for (const [from, to] of strokes) {
        if (!from || !to) throw new Error('A stroke has two ends.');
        expect(
          boxHolds(grown(box, 1e-9), {
            leftMm: from.xMm,
            rightMm: to.xMm,
            topMm: Math.min(from.yMm, to.yMm),
            bottomMm: Math.max(from.yMm, to.yMm),
          }),
        ).toBe(true);
        expect(Math.abs(to.yMm - from.yMm)).toBeCloseTo(to.xMm - from.xMm, 9);
      }
    }
  });
});
