import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isPoint, type RouteEnd } from '../../../../lib/board/route/route.ts';
import {
  type Berth,
  type Berthed,
  leastCrossings,
} from '../../../../lib/commands/bench/fixed/least-crossings.ts';
import { fewestByWaysRound, part, room, shareRound, wiresByLot } from '../../../board/route/ways-round.ts';

const at = (disc: string, place: number): Berth => ({ disc, place });

/** Wires between a part and the strips round it, by where they end at either. */
function berthed(seed: number, count: number): Berthed[] {
  const share = (end: RouteEnd, within: typeof part) => (isPoint(end) ? shareRound(within, end) : Number.NaN);
  return wiresByLot(seed, count).map(
    ({ from, to }): Berthed => [at('part', share(from, part)), at('outside', -share(to, room))],
  );
}

describe('the bound of crossings', () => {
  it('is never more than the fewest over every way round the part, and none only where nothing need cross', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.integer({ min: 2, max: 6 }), (seed, count) => {
        const fewest = fewestByWaysRound(wiresByLot(seed, count));
        const bound = leastCrossings(berthed(seed, count));
        expect(bound).toBeLessThanOrEqual(fewest);
        expect(bound > 0).toBe(fewest > 0);
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  it('is one for two wires whose ends alternate round one part', () => {
    const around = (...places: readonly [number, number, number, number]): Berthed[] => [
      [at('amp', places[0]), at('amp', places[1])],
      [at('amp', places[2]), at('amp', places[3])],
    ];
    expect(leastCrossings(around(1, 3, 2, 4))).toBe(1);
    expect(leastCrossings(around(1, 2, 3, 4))).toBe(0);
  });

  it('is none for wires that may leave a side in any order, and one where they must leave by three sides the other way round', () => {
    const out = (...places: readonly number[]): Berthed[] =>
      places.map((place, port) => [at('amp', port), at('outside', place)]);
    expect(leastCrossings(out(0, 0, 0))).toBe(0);
    // About the room outside, the sides follow each other the other way round than the ports about the part.
    expect(leastCrossings(out(0, -1, -2))).toBe(0);
    expect(leastCrossings(out(0, 1, 2))).toBe(1);
  });
});
