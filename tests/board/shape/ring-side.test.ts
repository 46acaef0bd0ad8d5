import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toSideM } from '../../../lib/board/shape/ring-side.ts';
import type { Edge } from '../../../lib/model/vocabulary.ts';

const at = (xM: number, yM: number) => ({ xM, yM });
/** 1.2 m by 0.5 m, its upper left corner cut off at 45 degrees over 0.1 m. */
const space = [at(0, 0), at(1.2, 0), at(1.2, 0.5), at(0.1, 0.5), at(0, 0.4)];

describe('the way to a side of an outline', () => {
  test('is straight to the place that is told', () => {
    // A triangle of 3, 4 and 5.
    for (const told of [
      toSideM(space, 'right', at(0.9, 0), 0.4),
      toSideM(space, 'bottom', at(0.5, 0.3), 0.1),
    ]) {
      expect(told.leastM).toBeCloseTo(0.5, 12);
      expect(told.mostM).toBeCloseTo(0.5, 12);
    }
  });

  test('lies between the square one and that to the far corner where no place is told', () => {
    const { leastM, mostM } = toSideM(space, 'right', at(0.9, 0.1));
    expect(leastM).toBeCloseTo(0.3, 12);
    expect(mostM).toBeCloseTo(0.5, 12);
  });

  test('goes to a cut corner from both sides that it lies between', () => {
    // The far end of the cut on the left side stands at 0.1 and 0.5: 0.3 across and 0.4 up.
    expect(toSideM(space, 'left', at(0.4, 0.1)).mostM).toBeCloseTo(0.5, 12);
    expect(toSideM(space, 'left', at(0.05, 0.05), 0.45).mostM).toBeCloseTo(0.4, 12);
  });

  test('is no longer than the most, and no shorter than the least, wherever along the side it comes in, whichever way round the outline is written', () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom<Edge>('left', 'right', 'top', 'bottom'),
        unit,
        unit,
        unit,
        (side, x, y, along) => {
          const from = at(x * 1.2, y * 0.5);
          const placeM = along * (side === 'top' || side === 'bottom' ? 1.2 : 0.5);
          const any = toSideM(space, side, from);
          const told = toSideM(space.toReversed(), side, from, placeM);
          expect(told.mostM).toBeLessThanOrEqual(any.mostM + 1e-9);
          expect(told.leastM).toBeGreaterThanOrEqual(any.leastM - 1e-9);
        },
      ),
    );
  });
});
