/** Seconds since some moment, the only clock that the benchmark reads. */
export type Clock = () => number;

/** What is timed; where it returns a promise, until that is kept. */
export type Run = () => unknown;

/** One line of the benchmark. */
export interface BenchRow {
  readonly id: string;
  readonly what: string;
  readonly value: number;
  /** `ms`, `times` for a ratio, `uV` for how far two answers lie apart, `crossings` of lines in a drawing. */
  readonly unit: 'ms' | 'times' | 'uV' | 'crossings';
  /** What the ratio is held against, where there is a target. */
  readonly target?: string;
}

/** Readings that the quickest is taken from: what else the machine does only adds. Fewer of a run that takes long. */
const readings = 15;
const readingsOfLong = 3;
const longS = 1;
/** A run shorter than this is repeated within one reading of the clock (s). */
const leastS = 0.05;
/** A run is repeated this long before it counts, so that the engine has compiled it (s). */
const warmS = 1;

/** Seconds that one run takes: the quickest of several readings, once warm. */
export async function secondsOf(clock: Clock, run: Run): Promise<number> {
  const [seconds = Number.NaN] = await secondsOfEach(clock, [run]);
  return seconds;
}

/**
 * Seconds that each run takes, as `secondsOf`, with their readings in turns: a machine that is slower for a while is
 * so for all of them, and their ratios keep.
 */
export async function secondsOfEach(clock: Clock, runs: readonly Run[]): Promise<number[]> {
  const measured = [];
  for (const run of runs) measured.push({ run, ...(await warm(clock, run)), times: [] as number[] });
  for (let k = 0; k < readings; k += 1)
    for (const { run, repeats, count, times } of measured)
      if (k < count) times.push(await reading(clock, run, repeats));
  return measured.map(({ times }) => Math.min(...times));
}

/** Warms a run up: how often it is then repeated within a reading, and how many readings are taken of it. */
async function warm(clock: Clock, run: Run): Promise<{ repeats: number; count: number }> {
  const start = clock();
  let onceS = 0;
  do onceS = await reading(clock, run, 1);
  while (clock() - start < warmS);
  const repeats = Math.max(1, Math.ceil(leastS / Math.max(onceS, 1e-7)));
  return { repeats, count: onceS > longS ? readingsOfLong : readings };
}

async function reading(clock: Clock, run: Run, repeats: number): Promise<number> {
  const start = clock();
  for (let k = 0; k < repeats; k += 1) {
    const result = run();
    // Waiting for what is no promise would cost more than a small run itself.
    if (result instanceof Promise) await result;
  }
  return (clock() - start) / repeats;
}
