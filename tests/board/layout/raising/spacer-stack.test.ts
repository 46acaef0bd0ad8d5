import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StackPart, spacerStack } from '../../../../lib/board/layout/raising/spacer-stack.ts';

const mm = (n: number): number => n / 1000;
const spacer = (part: string, high: number, quantity = 10): StackPart => ({
  ...{ part, heightM: mm(high), form: 'spacer', quantity },
});
const thin = (part: string, high: number, quantity = 10): StackPart => ({
  ...{ part, heightM: mm(high), form: 'packing', quantity },
});
const layerM = mm(18);
const toleranceM = mm(0.5);

describe('the stack of a height', () => {
  it('is the spacer of that height where there is one, before a pad that would have to be sawn', () => {
    expect(spacerStack(mm(18), layerM, [spacer('s18', 18)], toleranceM)).toEqual({
      ...{ layers: 0, parts: [{ part: 's18', count: 1 }], makesM: mm(18) },
    });
    expect(spacerStack(mm(18), layerM, [], toleranceM)).toEqual({ layers: 1, parts: [], makesM: mm(18) });
  });

  it('is a spacer and packing where none is of that height: 25.4 and 1.6 mm for 27 mm', () => {
    const shelf = [spacer('s25', 25.4), spacer('s12', 12), thin('w16', 1.6), thin('p1', 1)];
    expect(spacerStack(mm(27), layerM, shelf, toleranceM)).toEqual({
      layers: 0,
      parts: [
        { part: 's25', count: 1 },
        { part: 'w16', count: 1 },
      ],
      makesM: mm(27),
    });
  });

  it('is never too low, though that were nearer: 25.4 mm is no 25.5 mm, 25.9 mm is', () => {
    const near = [spacer('low', 25.4), spacer('high', 25.9)];
    expect(spacerStack(mm(25.5), layerM, near, toleranceM)?.parts).toEqual([{ part: 'high', count: 1 }]);
    expect(spacerStack(mm(25.5), layerM, [spacer('low', 25.4)], toleranceM)).toBeNull();
    expect(spacerStack(mm(25.3), layerM, [spacer('high', 25.9)], toleranceM)).toBeNull();
  });

  it('takes no more of a part than there is, and no tower of washers', () => {
    expect(spacerStack(mm(3), layerM, [thin('p1', 1, 2)], toleranceM)).toBeNull();
    expect(spacerStack(mm(3), layerM, [thin('p1', 1, 3)], toleranceM)?.parts).toEqual([
      { part: 'p1', count: 3 },
    ]);
    expect(spacerStack(mm(5), layerM, [thin('p1', 1)], toleranceM)).toBeNull();
  });

  it('does what every choice of a few parts says: fewest pieces, then least too high', () => {
    const heights = fc.uniqueArray(fc.integer({ min: 5, max: 300 }), { minLength: 1, maxLength: 4 });
    let made = 0;
    fc.assert(
      fc.property(
        heights,
        fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 10, max: 500 }),
        (tenths, counts, asked) => {
          const shelf = tenths.map((high, at): StackPart => {
            const quantity = counts[at] ?? 0;
            return high < 40 ? thin(`p${at}`, high / 10, quantity) : spacer(`s${at}`, high / 10, quantity);
          });
          const found = spacerStack(mm(asked / 10), layerM, shelf, toleranceM);
          // Tenths of a millimetre, so that sums are whole numbers: 5 of them are the tolerance.
          let best: readonly [number, number] | null = null;
          const each = (at: number, pieces: number, sum: number, thinOnes: number): void => {
            if (pieces > 8 || thinOnes > 4 || sum > asked + 5) return;
            if (at === tenths.length) {
              for (let layers = 0; pieces + layers <= 8; layers += 1) {
                const [all, high] = [pieces + layers, sum + 180 * layers];
                if (all === 0 || high < asked || high > asked + 5) continue;
                if (!best || all < best[0] || (all === best[0] && high < best[1])) best = [all, high];
              }
              return;
            }
            const high = tenths[at] ?? 0;
            for (let count = 0; count <= (counts[at] ?? 0); count += 1)
              each(at + 1, pieces + count, sum + count * high, thinOnes + (high < 40 ? count : 0));
          };
          each(0, 0, 0, 0);
          const took = found ? found.layers + found.parts.reduce((sum, { count }) => sum + count, 0) : 0;
          expect(found && [took, Math.round(found.makesM * 10000)]).toEqual(best);
          if (found) made += 1;
          for (const { part, count } of found?.parts ?? [])
            expect(count).toBeLessThanOrEqual(shelf.find((one) => one.part === part)?.quantity ?? 0);
        },
      ),
      { numRuns: 300 },
    );
    expect(made).toBeGreaterThan(20);
  });
});
