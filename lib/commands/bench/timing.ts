/** Seconds since some moment, the only clock that the benchmark reads. */
export type Clock = () => number;

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
export async function secondsOf(clock: Clock, run: () => unknown): Promise<number> {
  const start = clock();
  let onceS = 0;
  do onceS = await reading(clock, run, 1);
  while (clock() - start < warmS);
  const repeats = Math.max(1, Math.ceil(leastS / Math.max(onceS, 1e-7)));
  const count = onceS > longS ? readingsOfLong : readings;
  const times: number[] = [];
  for (let k = 0; k < count; k += 1) times.push(await reading(clock, run, repeats));
  return Math.min(...times);
}

async function reading(clock: Clock, run: () => unknown, repeats: number): Promise<number> {
  const start = clock();
  for (let k = 0; k < repeats; k += 1) {
    const result = run();
    // Waiting for what is no promise would cost more than a small run itself.
    if (result instanceof Promise) await result;
  }
  return (clock() - start) / repeats;
}
