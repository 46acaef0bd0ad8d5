/** Seconds since some moment, the only clock that the benchmark reads. */
export type Clock = () => number;

/** What is timed; where it returns a promise, until that is kept. */
export type Run = () => unknown;

/** Repeats something so many times; seconds that one of them takes. */
export type Reading = (repeats: number) => Promise<number>;

/** One line of the benchmark. */
export interface BenchRow {
  readonly id: string;
  readonly what: string;
  readonly value: number;
  /** `ms`, `times` for a ratio, `uV` for how far two answers lie apart, otherwise what is counted, or metres of wire. */
  readonly unit: 'ms' | 'times' | 'uV' | 'crossings' | 'wires' | 'bends' | 'm' | 'pairs' | 'bundles';
  /** What the figure is held against, where anything is. */
  readonly goal?: Goal;
}

/** What a figure is held against. */
export interface Goal {
  readonly says: string;
  /** Left out where the figure alone does not tell. */
  readonly met?: boolean;
}

/** The goal of a figure that is to be no more than this. */
export function atMost(value: number, most: number): Goal {
  return { says: `at most ${most}`, met: value <= most };
}

/** A goal and whether it is met, as the tables print them. */
export function goalText(goal: Goal | undefined): string {
  if (!goal) return '';
  return goal.met === undefined ? goal.says : `${goal.says}: ${goal.met ? 'met' : 'not met'}`;
}

/** Readings that the quickest is taken from: what else the machine does only adds. Fewer of a run that takes long. */
const readings = 15;
const readingsOfLong = 3;
const longS = 1;
/** A run shorter than this is repeated within one reading of the clock (s). */
const leastS = 0.05;
/** A clock may not tell a shorter run from none (s). */
const leastOnceS = 1e-6;
/** A run is repeated this long before it counts, so that the engine has compiled it (s). */
const warmS = 1;

/** Seconds that one run takes: the quickest of several readings, once warm. */
export async function secondsOf(clock: Clock, run: Run): Promise<number> {
  const [seconds = Number.NaN] = await secondsOfEach([readingOf(clock, run)]);
  return seconds;
}

/**
 * Seconds of each as `secondsOf`, with their readings in turns: a machine that is slower for a while is so for all of
 * them, and their ratios keep.
 */
export async function secondsOfEach(all: readonly Reading[]): Promise<number[]> {
  const warmed = [];
  for (const reading of all) warmed.push({ reading, ...(await warm(reading)), times: [] as number[] });
  for (let k = 0; k < readings; k += 1)
    for (const { reading, repeats, count, times } of warmed)
      if (k < count) times.push(await reading(repeats));
  return warmed.map(({ times }) => Math.min(...times));
}

/** Warms up: how many repeats a reading then has, and how many readings are taken. */
async function warm(reading: Reading): Promise<{ repeats: number; count: number }> {
  let onceS = 0;
  for (let spentS = 0; spentS < warmS; spentS += Math.max(onceS, leastOnceS)) onceS = await reading(1);
  const repeats = Math.max(1, Math.ceil(leastS / Math.max(onceS, leastOnceS)));
  return { repeats, count: onceS > longS ? readingsOfLong : readings };
}

/** A reading of a run by a clock. */
export function readingOf(clock: Clock, run: Run): Reading {
  return async (repeats) => {
    const start = clock();
    for (let k = 0; k < repeats; k += 1) {
      const result = run();
      // Waiting for what is no promise would cost more than a small run itself.
      if (result instanceof Promise) await result;
    }
    return (clock() - start) / repeats;
  };
}
