import type { Prediction } from './readings.ts';

/** Limits as far on either side of a prediction. */
export function around(predicted: number | null, tolerance: number): Pick<Prediction, 'least' | 'greatest'> {
  if (predicted === null) return { least: null, greatest: null };
  const least = predicted - tolerance;
  // A drop or a delay that is above zero is not asked to be below it.
  return { least: predicted >= 0 ? Math.max(0, least) : least, greatest: predicted + tolerance };
}

/** True where a reading lies within its limits; null where it has none. */
export function isWithin(
  { least, greatest }: Pick<Prediction, 'least' | 'greatest'>,
  reading: number,
): boolean | null {
  if (least === null && greatest === null) return null;
  const slack = 1e-9 * Math.max(1, Math.abs(reading));
  return (least === null || reading >= least - slack) && (greatest === null || reading <= greatest + slack);
}
