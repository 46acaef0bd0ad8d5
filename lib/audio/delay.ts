import { type Fault, faultOf, isPositive } from '../model/fault.ts';
import { type Figure, type Traced, traced } from '../model/trace.ts';

export type DelayFault = Fault<
  'air-temperature-unlikely' | 'distance-unclear' | 'sample-rate-unclear' | 'speaker-twice'
>;

const leastC = -40;
const greatestC = 85;

/**
 * Speed of sound in dry air in m/s at an air temperature in degrees Celsius: c = 343.2 * sqrt(T / 293.15), T
 * in kelvin (ISO 9613-1). Refused outside -40 to 85 C, which no cabin is tuned at.
 */
export function speedOfSound(airC: number): Traced<number> | Fault<'air-temperature-unlikely'> {
  if (!(airC >= leastC && airC <= greatestC))
    return faultOf(
      'air-temperature-unlikely',
      [],
      `an air temperature of ${airC} C is outside ${leastC} to ${greatestC} C`,
      'write the temperature of the air in the cabin, such as 20 C',
    );
  return traced(343.2 * Math.sqrt((airC + 273.15) / 293.15), 'm/s', {
    rule: 'speed-of-sound',
    formula: 'c = 343.2 * sqrt((t + 273.15) / 293.15)',
    citation: 'ISO 9613-1',
    inputs: [['t', airC, 'C']],
  });
}

/** A speaker and its way to the listener. */
export interface SpeakerDistance {
  readonly speaker: string;
  readonly distanceM: number;
}

export interface DelayRequest {
  readonly speakers: readonly SpeakerDistance[];
  readonly airC: number;
  readonly sampleRateHz: number;
}

export interface SpeakerDelay {
  readonly speaker: string;
  readonly delayMs: Traced<number>;
  /** Whole samples, the nearest. */
  readonly delaySamples: Traced<number>;
  /** What rounding to whole samples leaves, at most half a sample. */
  readonly residueMs: Traced<number>;
}

/**
 * Delay of each speaker that lets its sound arrive with that of the farthest one, which gets 0:
 * t = (dmax - d) / c in ms, and round(t * fs) samples. In the order of the speakers given.
 */
export function speakerDelays(request: DelayRequest): readonly SpeakerDelay[] | DelayFault {
  const fault = distancesFault(request);
  if (fault) return fault;
  const speed = speedOfSound(request.airC);
  if ('fault' in speed) return speed;
  const farthestM = Math.max(...request.speakers.map(({ distanceM }) => distanceM));
  return request.speakers.map((one) => delayOf(one, farthestM, speed.value, request.sampleRateHz));
}

function delayOf(
  { speaker, distanceM }: SpeakerDistance,
  farthestM: number,
  speedMPerS: number,
  sampleRateHz: number,
): SpeakerDelay {
  const delayMs = (1000 * (farthestM - distanceM)) / speedMPerS;
  const samples = Math.round((delayMs / 1000) * sampleRateHz);
  const atRate: readonly Figure[] = [
    ['t', delayMs, 'ms'],
    ['fs', sampleRateHz, 'Hz'],
  ];
  return {
    speaker,
    delayMs: traced(delayMs, 'ms', {
      rule: 'speaker-delay',
      formula: 't = 1000 * (dmax - d) / c',
      citation: 'Time of flight; c after ISO 9613-1',
      inputs: [
        ['dmax', farthestM, 'm'],
        ['d', distanceM, 'm'],
        ['c', speedMPerS, 'm/s'],
      ],
    }),
    delaySamples: traced(samples, 'samples', {
      rule: 'speaker-delay-samples',
      formula: 'n = round(t * fs / 1000)',
      citation: 'Definition of the sampling rate',
      inputs: atRate,
    }),
    residueMs: traced(delayMs - (1000 * samples) / sampleRateHz, 'ms', {
      rule: 'speaker-delay-residue',
      formula: 'rest = t - 1000 * n / fs',
      citation: 'Definition of the sampling rate',
      inputs: [...atRate, ['n', samples]],
    }),
  };
}

function distancesFault({ speakers, sampleRateHz }: DelayRequest): DelayFault | null {
  if (!isPositive(sampleRateHz))
    return faultOf(
      'sample-rate-unclear',
      [],
      `a sampling rate of ${sampleRateHz} Hz is not above zero`,
      "write the processor's sampling rate in its part, such as 48 kHz",
    );
  const seen = new Set<string>();
  for (const { speaker, distanceM } of speakers) {
    if (seen.has(speaker))
      return faultOf(
        'speaker-twice',
        [speaker],
        `${speaker} has two distances`,
        'keep one distance a speaker',
      );
    seen.add(speaker);
    if (!(Number.isFinite(distanceM) && distanceM >= 0))
      return faultOf(
        'distance-unclear',
        [speaker],
        `the distance of ${speaker} from the listener is not a length of 0 m or more`,
        'measure from the middle of the cone to between the ears',
      );
  }
  return null;
}
