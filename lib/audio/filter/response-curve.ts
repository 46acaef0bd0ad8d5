import { add, type Response } from './complex.ts';
import { levelDb } from './filter-response.ts';

/** Frequencies to look at: how many, from where to where. */
export interface Sampling {
  readonly fromHz: number;
  readonly toHz: number;
  readonly points: number;
}

/** Frequencies evenly spaced on a logarithmic axis, both ends included exactly. */
export function frequencies({ fromHz, toHz, points }: Sampling): readonly number[] {
  return Array.from({ length: points }, (_, index) =>
    index === points - 1 ? toHz : fromHz * (toHz / fromHz) ** (index / (points - 1)),
  );
}

/**
 * The sum of paths at the listener, as complex pressures, each speaker taken as flat and equally loud: what
 * the filters, gains, delays and polarities make of the sum, and no more.
 */
export function sumResponse(responses: readonly Response[]): Response {
  return (frequencyHz) => responses.map((response) => response(frequencyHz)).reduce(add, { re: 0, im: 0 });
}

/** The range that a path is searched in for its highest level, in Hz: what lies below hearing makes an amplifier clip too. */
const searchedHz = { from: 5, to: 20_000 } as const;
/** An inner point divides its stretch by this share (the golden section). */
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * The highest level of a response from 5 Hz to 20 kHz, in dB: sampled 24 times an octave and at `marks` (the corners
 * and centres of its parts), then narrowed down about the best sample by golden section.
 */
export function highestLevelDb(response: Response, marks: readonly number[]): number {
  const { from, to } = searchedHz;
  const points = Math.ceil(24 * Math.log2(to / from)) + 1;
  const inside = marks.filter((hz) => hz > from && hz < to);
  const sampled = [...frequencies({ fromHz: from, toHz: to, points }), ...inside].toSorted((a, b) => a - b);
  const level = (hz: number) => levelDb(response(hz));
  const levels = sampled.map(level);
  const best = levels.indexOf(Math.max(...levels));
  const at = sampled[best] ?? from;
  let [low, high] = [sampled[best - 1] ?? at, sampled[best + 1] ?? at];
  for (let step = 0; step < 40; step += 1) {
    const [left, right] = [high / (high / low) ** golden, low * (high / low) ** golden];
    if (level(left) > level(right)) high = right;
    else low = left;
  }
  return Math.max(level(at), level(Math.sqrt(low * high)));
}
