import { type Fault, faultOf, isPositive } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';

/** Where the subsonic filter of a ported enclosure belongs, fourth order (24 dB per octave). */
export interface SubsonicCorner {
  readonly order: 4;
  readonly fromHz: Traced<number>;
  readonly toHz: Traced<number>;
}

/**
 * Corner of the subsonic filter of a ported enclosure, in Hz: 0.7 to 0.8 of its tuning. Common practice, no
 * source.
 */
export function subsonicCorner(
  enclosure: string,
  tuningHz: number,
): SubsonicCorner | Fault<'tuning-unknown'> {
  if (!isPositive(tuningHz))
    return faultOf(
      'tuning-unknown',
      [enclosure],
      `the tuning of the ported enclosure ${enclosure} is not a frequency above 0 Hz`,
      "write the enclosure's tuning in its part, such as 34 Hz",
    );
  const at = (share: number) =>
    traced(share * tuningHz, 'Hz', {
      rule: 'subsonic-corner',
      formula: 'fs = k * fb',
      citation: commonPractice,
      mark: 'cp',
      inputs: [
        ['k', share],
        ['fb', tuningHz, 'Hz'],
      ],
    });
  return { order: 4, fromHz: at(0.7), toHz: at(0.8) };
}
