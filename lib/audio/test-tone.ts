import type { Traced } from '../model/trace.ts';
import { type AudioFault, audioFault, isPositive } from './fault.ts';
import { commonPractice, input, traced } from './traced.ts';

/** What a path plays: corners of its filters, left out where it has none. */
export interface TonePath {
  readonly channel: string;
  /**
   * The tone that the shop uses for a path of this kind: 50 Hz for bass, 1 kHz for others, unless it sets its
   * own.
   */
  readonly usualHz: number;
  readonly highPassHz?: number;
  readonly lowPassHz?: number;
  /**
   * How far below full scale the tone is recorded, 0 or more: what a full-scale passage asks for beyond the
   * tone.
   */
  readonly overlapDb: number;
}

export interface TestTone {
  readonly frequencyHz: Traced<number>;
  /** Level of the recorded tone against full scale, 0 or below. */
  readonly levelDb: Traced<number>;
}

export type ToneFault = AudioFault<'band-empty' | 'overlap-unclear'>;

/**
 * The test tone to set the gain of a path with. Frequency: the usual one (common practice); where the path's
 * filters shut that out, the geometric middle of its band, or one octave inside its only corner. Level: the
 * overlap below full scale.
 */
export function testTone(path: TonePath): TestTone | ToneFault {
  const fault = toneFault(path);
  if (fault) return fault;
  const { usualHz, highPassHz = 0, lowPassHz = Number.POSITIVE_INFINITY, overlapDb } = path;
  const inside = usualHz > highPassHz && usualHz < lowPassHz;
  const corners = [
    ...(isPositive(highPassHz) ? [input('HP', highPassHz, 'Hz')] : []),
    ...(Number.isFinite(lowPassHz) ? [input('LP', lowPassHz, 'Hz')] : []),
  ];
  return {
    frequencyHz: traced(inside ? usualHz : insideBand(highPassHz, lowPassHz), {
      unit: 'Hz',
      rule: 'test-tone-frequency',
      formula: inside
        ? `f = ${usualHz} Hz, which lies inside the band`
        : `f = middle of the band, as ${usualHz} Hz lies outside: sqrt(HP * LP); 2 * HP or LP / 2 with one corner`,
      citation: commonPractice,
      mark: 'cp',
      inputs: corners,
    }),
    // Zero is written without a sign.
    levelDb: traced(overlapDb === 0 ? 0 : -overlapDb, {
      unit: 'dB',
      rule: 'test-tone-level',
      formula: 'level = -overlap, against full scale',
      citation: commonPractice,
      mark: 'cp',
      inputs: [input('overlap', overlapDb, 'dB')],
    }),
  };
}

function insideBand(highPassHz: number, lowPassHz: number): number {
  if (!Number.isFinite(lowPassHz)) return 2 * highPassHz;
  return highPassHz > 0 ? Math.sqrt(highPassHz * lowPassHz) : lowPassHz / 2;
}

function toneFault(path: TonePath): ToneFault | null {
  const { channel, usualHz, highPassHz = 0, lowPassHz = Number.POSITIVE_INFINITY, overlapDb } = path;
  if (!(highPassHz >= 0 && lowPassHz > highPassHz && isPositive(usualHz)))
    return audioFault(
      'band-empty',
      [channel],
      `the high-pass of channel ${channel} at ${highPassHz} Hz is not below its low-pass at ${lowPassHz} Hz`,
      'correct the corners, so that the path plays something',
    );
  if (!(Number.isFinite(overlapDb) && overlapDb >= 0 && overlapDb <= 20))
    return audioFault(
      'overlap-unclear',
      [channel],
      `a gain overlap of ${overlapDb} dB on channel ${channel} is outside 0 to 20 dB`,
      'write how far below full scale the test tone is recorded, such as 5 dB',
    );
  return null;
}
