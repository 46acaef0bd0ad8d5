import type { Lane } from './lane.ts';
import type { Stretch } from './walls.ts';

/** That a leg steps aside: which of a jam's, where along it, and whether the part before that place lies higher. */
export interface Split {
  readonly lane: Lane;
  readonly alongM: number;
  readonly firstIsHigher: boolean;
}

/**
 * Where a leg of a jam may step aside: what holds the lowest from below stands at one place, what holds the highest from
 * above at another, and each hands it on to the next beside that place. The leg with most room between the two; null
 * where every one is held from both sides at once.
 */
export function splitIn(jam: readonly Lane[], leastM: (lane: Lane) => number): Split | null {
  const { lows, highs } = heldIn(jam);
  let best: Split | null = null;
  let mostM = 0;
  jam.forEach((lane, at) => {
    const [low, high] = [lows[at], highs[at]];
    if (!low || !high) return;
    for (const [first, second, firstIsHigher] of [
      [low, high, true],
      [high, low, false],
    ] as const) {
      const gapM = second[0] - first[1] - leastM(lane);
      if (gapM <= mostM) continue;
      mostM = gapM;
      best = { lane, alongM: (first[1] + second[0]) / 2, firstIsHigher };
    }
  });
  return best;
}

/** Where along each lane of a jam it is held from below and from above (m). */
export function heldIn(jam: readonly Lane[]): {
  readonly lows: readonly Stretch[];
  readonly highs: readonly Stretch[];
} {
  return {
    lows: handedOn(jam, (lane) => lane.bounds.lowBy),
    highs: handedOn(jam.toReversed(), (lane) => lane.bounds.highBy).toReversed(),
  };
}

/** Where along each lane of a jam it is held, from the first one on. */
function handedOn(jam: readonly Lane[], byOf: (lane: Lane) => Stretch): Stretch[] {
  const held: Stretch[] = [];
  jam.forEach((lane, at) => {
    const [before, by] = [jam[at - 1], held[at - 1]];
    held.push(before && by ? common(common(lane.span, before.span), by) : common(lane.span, byOf(lane)));
  });
  return held;
}

/** What two stretches have in common; the end of the first that is nearest to the second where they are apart. */
function common(one: Stretch, other: Stretch): Stretch {
  const [from, to] = [Math.max(one[0], other[0]), Math.min(one[1], other[1])];
  if (from <= to) return [from, to];
  const nearestM = other[0] > one[1] ? one[1] : one[0];
  return [nearestM, nearestM];
}
