import { type Fault, faultOf, isPositive } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';

/** Where the subsonic filter of a ported enclosure belongs, fourth order (24 dB per octave). */
export interface SubsonicCorner {
  readonly order: 4;
  readonly fromHz: Traced<number>;
  readonly toHz: Traced<number>;
}

/**
 * An octave below the tuning the cone has long been let go: a filter down there, such as one at its far stop, guards
 * nothing. Common practice, no source.
 */
export const guardsFrom = 0.5;

/**
 * Corner of the subsonic filter of a ported enclosure, in Hz: shares of its tuning, house rules. Common
 * practice, no source.
 */
export function subsonicCorner(
  enclosure: string,
  tuningHz: number,
  share: { readonly from: number; readonly to: number },
): SubsonicCorner | Fault<'tuning-unknown'> {
  if (!isPositive(tuningHz))
    return faultOf(
      'tuning-unknown',
      [enclosure],
      `the tuning of the ported enclosure ${enclosure} is not a frequency above 0 Hz`,
      "write the enclosure's tuning in its part, such as 34 Hz",
    );
  const at = (k: number) =>
    traced(k * tuningHz, 'Hz', {
      rule: 'subsonic-corner',
      formula: 'fs = k * fb',
      citation: commonPractice,
      mark: 'cp',
      inputs: [
        ['k', k],
        ['fb', tuningHz, 'Hz'],
      ],
    });
  return { order: 4, fromHz: at(share.from), toHz: at(share.to) };
}
