import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airHeatCapacity } from '../../lib/heat/air-flow.ts';
import { cavityAir, type WarmCavity } from '../../lib/heat/cavity-air.ts';
import { openingsFor } from '../../lib/heat/openings-for.ts';

/** A cavity whose walls pass next to nothing: air alone takes its heat away. */
const sealed = (lossW: number): WarmCavity => ({
  ...{ lossW, outsideC: 20, surfaceM2: 1e-9, passesWM2K: 3.5, fanM3S: 0, openings: [] },
});
const door = { widthM: 1, heightM: 2, stepM: 0.001 };

describe('openings that a warm cavity asks for', () => {
  // CIBSE Guide A, quoted from memory: one of 1 m by 1 m exchanges 0.6 x 1 / 3 x sqrt(9.80665 x 1 x 10 / 298.15) =
  // 0.1147 m3/s at 10 K. One of 2^(2/3) = 1.587 m exchanges twice as much.
  test('are as high as the published formula asks, rounded up to the step', () => {
    const carriedW = airHeatCapacity(30) * 0.1147 * 10;
    expect(openingsFor(sealed(carriedW * 0.999), 10, door, 1)).toEqual({ widthM: 1, heightM: 1 });
    expect(openingsFor(sealed(carriedW * 1.999), 10, door, 1)?.heightM).toBeCloseTo(1.587, 3);
    expect(openingsFor(sealed(carriedW * 1.999), 10, door, 2)).toEqual({ widthM: 1, heightM: 1 });
  });

  test('are none where there is no room for them, or the air outside is too warm already', () => {
    const carriedW = airHeatCapacity(30) * 0.1147 * 10;
    expect(openingsFor(sealed(carriedW * 0.999), 10, { ...door, heightM: 0.999 }, 1)).toBeNull();
    expect(openingsFor(sealed(carriedW * 0.999), 10, { ...door, heightM: 1 }, 1)).not.toBeNull();
    expect(openingsFor(sealed(carriedW), 0, door, 2)).toBeNull();
  });

  test('keep the air as cool as was asked, and not with a step less', () => {
    const cavities = fc.record({
      lossW: fc.double({ min: 40, max: 400, noNaN: true }),
      outsideC: fc.double({ min: 20, max: 60, noNaN: true }),
      surfaceM2: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
      riseK: fc.double({ min: 5, max: 30, noNaN: true }),
      there: fc.boolean(),
    });
    fc.assert(
      fc.property(cavities, ({ lossW, outsideC, surfaceM2, riseK, there }) => {
        const openings = there ? [{ widthM: 0.05, heightM: 0.05 }] : [];
        const cavity = { lossW, outsideC, surfaceM2, passesWM2K: 3.5, fanM3S: 0, openings };
        const room = { widthM: 0.5, heightM: 3, stepM: 0.01 };
        const opening = openingsFor(cavity, riseK, room, 2);
        if (!opening) return;
        const rise = (heightM: number) =>
          cavityAir({ ...cavity, openings: [...openings, ...[1, 2].map(() => ({ ...opening, heightM }))] })
            .riseK;
        expect(rise(opening.heightM)).toBeLessThanOrEqual(riseK + 1e-6);
        expect(rise(opening.heightM - 0.01)).toBeGreaterThan(riseK);
      }),
    );
  });
});
