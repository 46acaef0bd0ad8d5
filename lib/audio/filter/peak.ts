import type { Response } from './complex.ts';
import { type Complex, multiply, reciprocal } from './complex.ts';

/** One band of an equaliser, or the boost of an amplifier: it raises or lowers the level about its centre. */
export interface Peak {
  /** Null where nobody tells it. */
  readonly centreHz: number | null;
  /** At the centre; below zero for a cut. */
  readonly gainDb: number;
  /** Its sharpness; null where nobody tells it, so that only the level at its centre is known. */
  readonly q: number | null;
}

/** A peak whose whole response is known. */
export type ShapedPeak = Peak & { readonly centreHz: number; readonly q: number };

/** True for a peak whose response is known at every frequency. */
export function isShaped(peak: Peak): peak is ShapedPeak {
  return peak.centreHz !== null && peak.q !== null;
}

/**
 * Complex response of a peaking equaliser of second order: H = (1 - w^2 + j w A / Q) / (1 - w^2 + j w / (A Q)), with
 * w = f / fc and A = 10^(gain / 40). |H| is the gain at the centre and 1 far from it (Bristow-Johnson, Audio EQ
 * Cookbook, the analogue prototype of its peaking equaliser).
 */
export function peakResponse({ centreHz, gainDb, q }: ShapedPeak): Response {
  const a = 10 ** (gainDb / 40);
  return (frequencyHz): Complex => {
    const w = frequencyHz / centreHz;
    const re = 1 - w * w;
    return multiply({ re, im: (w * a) / q }, reciprocal({ re, im: w / (a * q) }));
  };
}
