import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Apart, type Place, type Pull, solvePlaces } from '../../../../lib/board/route/lanes/solve.ts';

const most = 6;

/** A few places from 0 to 6 in order, some of which keep apart, some drawn to each other or to a line. */
const small = fc.record({
  places: fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 2, max: most })), {
    minLength: 3,
    maxLength: 4,
  }),
  aparts: fc.array(fc.tuple(fc.nat(3), fc.nat(3), fc.integer({ min: 1, max: 2 })), { maxLength: 4 }),
  pulls: fc.array(fc.tuple(fc.nat(3), fc.integer({ min: -1, max: 3 }), fc.integer({ min: 0, max: most })), {
    maxLength: 4,
  }),
});

interface Task {
  readonly places: readonly Place[];
  readonly aparts: readonly Apart[];
  readonly pulls: readonly Pull[];
}

function taskOf({ places, aparts, pulls }: typeof small extends fc.Arbitrary<infer T> ? T : never): Task {
  const count = places.length;
  return {
    places: places.map(([lowM, highM]) => ({ lowM, highM: Math.max(lowM, highM), wishM: lowM })),
    aparts: aparts.flatMap(([a, b, byM]) => (a < b && b < count ? [{ low: a, high: b, byM }] : [])),
    pulls: pulls.flatMap(([place, to, lineM]) =>
      place < count && to < count && place !== to ? [{ place, to, lineM, weight: 1 }] : [],
    ),
  };
}

function fits({ places, aparts }: Task, at: readonly number[]): boolean {
  const inBounds = places.every(({ lowM, highM }, one) => {
    const own = at[one] ?? Number.NaN;
    return own >= lowM - 1e-6 && own <= highM + 1e-6;
  });
  return inBounds && aparts.every(({ low, high, byM }) => (at[high] ?? 0) - (at[low] ?? 0) >= byM - 1e-6);
}

function lengthOf({ pulls }: Task, at: readonly number[]): number {
  return pulls.reduce(
    (sum, { place, to, lineM }) => sum + Math.abs((at[place] ?? 0) - (to < 0 ? lineM : (at[to] ?? 0))),
    0,
  );
}

/** Every way to put places on whole numbers: of such bounds one of the best solutions is among them. */
function everyWay(count: number): number[][] {
  const digits = Array.from({ length: most + 1 }, (_, digit) => digit);
  return count === 0
    ? [[]]
    : everyWay(count - 1).flatMap((before) => digits.map((digit) => [...before, digit]));
}

describe('places between bounds, in order', () => {
  it('are found wherever trying every way finds some, and keep all bounds', () => {
    fc.assert(
      fc.property(small, (drawn) => {
        const task = taskOf(drawn);
        const possible = everyWay(task.places.length).some((at) => fits(task, at));
        const solved = solvePlaces(task.places, task.aparts, task.pulls);
        expect('placesM' in solved).toBe(possible);
        if ('placesM' in solved) expect(fits(task, solved.placesM)).toBe(true);
      }),
      { numRuns: 120, seed: 3 },
    );
  });

  it('lie so that what is drawn together is never longer than where each began', () => {
    fc.assert(
      fc.property(small, (drawn) => {
        const task = taskOf(drawn);
        const [still, pulled] = [[], task.pulls].map((pulls) => solvePlaces(task.places, task.aparts, pulls));
        if (!still || !pulled || !('placesM' in still) || !('placesM' in pulled)) return;
        expect(lengthOf(task, pulled.placesM)).toBeLessThanOrEqual(lengthOf(task, still.placesM) + 1e-6);
      }),
      { numRuns: 120, seed: 4 },
    );
  });

  it('are pushed along by one that is drawn more than they are held', () => {
    const places = [0, 1].map((lowM) => ({ lowM, highM: 10, wishM: lowM }));
    const pulls = [
      { place: 0, to: -1, lineM: 6, weight: 2 },
      { place: 1, to: -1, lineM: 1, weight: 1 },
    ];
    const solved = solvePlaces(places, [{ low: 0, high: 1, byM: 1 }], pulls);
    expect(solved).toEqual({ placesM: [6, 7] });
  });

  it('are told as a jam, from the lowest to the highest, where there is too little room between two walls', () => {
    const places = Array.from({ length: 3 }, () => ({ lowM: 0, highM: 1.9, wishM: 0 }));
    const aparts = [
      { low: 0, high: 1, byM: 1 },
      { low: 1, high: 2, byM: 1 },
    ];
    expect(solvePlaces(places, aparts, [])).toEqual({ jam: [0, 1, 2] });
    const wider = places.map((place) => ({ ...place, highM: 2 }));
    expect(solvePlaces(wider, aparts, [])).toEqual({ placesM: [0, 1, 2] });
  });
});
