import { add } from './complex.ts';
import type { Response } from './filters.ts';

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
