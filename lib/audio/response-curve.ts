import { add, type Complex } from './complex.ts';
import { type AudioFault, audioFault, isPositive } from './fault.ts';
import { type FilterFault, levelDb, type Path, pathResponse, type Response } from './filters.ts';

/** One point of a drawn response. */
export interface CurvePoint {
  readonly frequencyHz: number;
  readonly levelDb: number;
  /** Between -180 and 180. */
  readonly phaseDeg: number;
}

export interface Curves {
  readonly paths: readonly { readonly id: string; readonly points: readonly CurvePoint[] }[];
  readonly sum: readonly CurvePoint[];
}

export interface Sampling {
  readonly fromHz: number;
  readonly toHz: number;
  readonly points: number;
}

/** From 10 Hz to 20 kHz, 24 points an octave and both ends. */
export const audibleBand: Sampling = { fromHz: 10, toHz: 20_000, points: 265 };

export type CurveFault = FilterFault | AudioFault<'curve-range-unclear'>;

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

/** Sampled responses of each path and of their sum, for drawing. */
export function responseCurves(
  paths: readonly Path[],
  sampling: Sampling = audibleBand,
): Curves | CurveFault {
  const { fromHz, toHz, points } = sampling;
  if (
    !(isPositive(fromHz) && Number.isFinite(toHz) && toHz > fromHz && Number.isInteger(points) && points >= 2)
  )
    return audioFault(
      'curve-range-unclear',
      [],
      `a response can't be drawn from ${fromHz} Hz to ${toHz} Hz with ${points} points`,
      'draw from a lower to a higher frequency with two points or more',
    );
  const responses: { readonly id: string; readonly response: Response }[] = [];
  for (const path of paths) {
    const response = pathResponse(path);
    if ('fault' in response) return response;
    responses.push({ id: path.id, response });
  }
  const at = frequencies(sampling);
  const sample = (response: Response) => at.map((frequencyHz) => point(frequencyHz, response(frequencyHz)));
  return {
    paths: responses.map(({ id, response }) => ({ id, points: sample(response) })),
    sum: sample(sumResponse(responses.map(({ response }) => response))),
  };
}

function point(frequencyHz: number, response: Complex): CurvePoint {
  return {
    frequencyHz,
    levelDb: levelDb(response),
    phaseDeg: (Math.atan2(response.im, response.re) * 180) / Math.PI,
  };
}
