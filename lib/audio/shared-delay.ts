import { type Traced, traced } from '../model/trace.ts';
import type { SpeakerDelay } from './delay.ts';

/** Speakers that one delay is set for, since they hang on one output. */
export interface SharedDelay {
  readonly delayMs: Traced<number>;
  readonly delaySamples: Traced<number>;
  readonly off: readonly {
    readonly speaker: string;
    readonly askedMs: number;
    /** What is set less what the speaker asks for: above zero it comes late. */
    readonly offMs: number;
    /** The way of the sound in that time. */
    readonly offM: number;
  }[];
}

/**
 * The delay for speakers that share an output: half-way between the least and the greatest that they ask for, so that
 * the one that is off most is off least; and how far each is off, in ms and in m of the way of the sound.
 */
export function sharedDelay(
  speakers: readonly Pick<SpeakerDelay, 'speaker' | 'delayMs'>[],
  { sampleRateHz, speedMPerS }: { readonly sampleRateHz: number; readonly speedMPerS: number },
): SharedDelay {
  const asked = speakers.map(({ delayMs }) => delayMs.value);
  const [leastMs, greatestMs] = [Math.min(...asked), Math.max(...asked)];
  const delayMs = (leastMs + greatestMs) / 2;
  return {
    delayMs: traced(delayMs, 'ms', {
      rule: 'shared-delay',
      formula: 't = (tmin + tmax) / 2',
      citation: 'Half-way between what the speakers on one output ask for',
      inputs: [
        ['tmin', leastMs, 'ms'],
        ['tmax', greatestMs, 'ms'],
      ],
    }),
    delaySamples: traced(Math.round((delayMs / 1000) * sampleRateHz), 'samples', {
      rule: 'speaker-delay-samples',
      formula: 'n = round(t * fs / 1000)',
      citation: 'Definition of the sampling rate',
      inputs: [
        ['t', delayMs, 'ms'],
        ['fs', sampleRateHz, 'Hz'],
      ],
    }),
    off: speakers.map(({ speaker, delayMs: { value } }) => ({
      speaker,
      askedMs: value,
      offMs: delayMs - value,
      offM: ((delayMs - value) / 1000) * speedMPerS,
    })),
  };
}
