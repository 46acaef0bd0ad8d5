/** What a hand sets a knob to, by the frequency below which the step holds (Hz): common practice, no source. */
const handSteps: readonly (readonly [belowHz: number, stepHz: number])[] = [
  [100, 5],
  [1000, 10],
  [Number.POSITIVE_INFINITY, 100],
];

/**
 * The lowest frequency (Hz) at or above one that a hand sets a knob to by its scale: to 5 Hz below 100 Hz, to 10 Hz below
 * 1 kHz, to 100 Hz from there on. Upwards, since a high-pass at it protects a speaker; what plays below ends at the
 * same frequency, so that the step opens no gap between them. Common practice, no source.
 */
export function settableHz(hz: number): number {
  const step = handSteps.find(([belowHz]) => hz < belowHz)?.[1] ?? 1;
  return Math.ceil(hz / step - 1e-9) * step;
}
