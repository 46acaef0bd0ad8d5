import { type Fault, faultOf, isPositive } from '../../model/fault.ts';
import { commonPractice, type Figure, type Traced, traced } from '../../model/trace.ts';

/**
 * One stretch of a speaker run, both conductors of one size. A run that goes on in another size has several.
 */
export interface SpeakerLeg {
  /** Way from end to end, once; both conductors are counted here. */
  readonly lengthM: number;
  /** Resistance of one conductor per metre, at the temperature to be judged at. */
  readonly ohmPerM: number;
}

/** What is known of a speaker run and of the amplifier channel that feeds it. */
export interface SpeakerRun {
  readonly channel: string;
  readonly loadOhm: number;
  readonly legs: readonly SpeakerLeg[];
  /** The maker's damping factor and the load it is stated at; left out where the part doesn't carry it. */
  readonly amplifierDamping?: { readonly factor: number; readonly atOhm: number };
  /** Two outputs in series feed a bridged load; the damping is then that of one of them. */
  readonly bridged?: boolean;
}

export interface SpeakerWireLoss {
  /** Both conductors of all legs. */
  readonly wireOhm: Traced<number>;
  /** Level at the speaker below that at the amplifier, as a positive number. */
  readonly lossDb: Traced<number>;
  /** Part of the amplifier's power that warms the wire. */
  readonly lostShare: Traced<number>;
  /** Load over all that stands in series with it; null where nothing does. */
  readonly damping: Traced<number> | null;
}

export type SpeakerRunFault = Fault<'speaker-run-unclear'>;

const dividerCitation = "Ohm's and Kirchhoff's laws (voltage divider)";

function runFault({ channel, loadOhm, legs, amplifierDamping }: SpeakerRun): SpeakerRunFault | null {
  const clear =
    isPositive(loadOhm) &&
    legs.every(({ lengthM, ohmPerM }) => Number.isFinite(lengthM) && lengthM >= 0 && isPositive(ohmPerM)) &&
    (!amplifierDamping || (isPositive(amplifierDamping.factor) && isPositive(amplifierDamping.atOhm)));
  if (clear) return null;
  return faultOf(
    'speaker-run-unclear',
    [channel],
    `the speaker run of channel ${channel} has a load, length, size or damping factor that is not above zero`,
    'write the load, the length of each leg and its conductor size',
  );
}

/**
 * Loss in a speaker run. Wire: Rw = sum of 2 * L * r over the legs (ohm). Level: loss = 20 log10((R + Rw) /
 * R) (dB), the amplifier taken as a voltage source and the speaker as its nominal load. Damping at the
 * speaker's terminals: R / (Ro + Rw), Ro = atOhm / factor, twice that when bridged; null where nothing stands
 * in series. Without a damping factor in the part Ro counts as 0, and the trace says `assumed`.
 */
export function speakerWireLoss(run: SpeakerRun): SpeakerWireLoss | SpeakerRunFault {
  const fault = runFault(run);
  if (fault) return fault;
  const wireOhm = run.legs.reduce((sum, { lengthM, ohmPerM }) => sum + 2 * lengthM * ohmPerM, 0);
  const inputs: readonly Figure[] = [
    ['R', run.loadOhm, 'ohm'],
    ['Rw', wireOhm, 'ohm'],
  ];
  return {
    wireOhm: traced(wireOhm, 'ohm', {
      rule: 'speaker-wire-resistance',
      formula: 'Rw = sum over the legs of 2 * L * r',
      citation: 'Resistance of a conductor by length',
      inputs: run.legs.flatMap(({ lengthM, ohmPerM }) => [
        ['L', lengthM, 'm'],
        ['r', ohmPerM, 'ohm/m'],
      ]),
    }),
    lossDb: traced(20 * Math.log10((run.loadOhm + wireOhm) / run.loadOhm), 'dB', {
      rule: 'speaker-wire-loss',
      formula: 'loss = 20 * log10((R + Rw) / R)',
      citation: dividerCitation,
      inputs,
    }),
    lostShare: traced(wireOhm / (run.loadOhm + wireOhm), '1', {
      rule: 'speaker-wire-heat',
      formula: 'share = Rw / (R + Rw)',
      citation: dividerCitation,
      inputs,
    }),
    damping: damping(run, wireOhm),
  };
}

function damping(run: SpeakerRun, wireOhm: number): Traced<number> | null {
  const { amplifierDamping: known, loadOhm, bridged = false } = run;
  const outputOhm = known ? ((bridged ? 2 : 1) * known.atOhm) / known.factor : 0;
  if (outputOhm + wireOhm === 0) return null;
  return traced(loadOhm / (outputOhm + wireOhm), '1', {
    origin: known ? 'computed' : 'assumed',
    rule: 'damping-at-terminals',
    formula: known
      ? `D = R / (Ro + Rw), Ro = ${bridged ? '2 * ' : ''}Rd / factor`
      : 'D = at most R / Rw, the amplifier taken as without resistance of its own',
    citation: known ? `the amplifier's data; ${dividerCitation}` : `${dividerCitation}; ${commonPractice}`,
    ...(known ? {} : { mark: 'cp' as const }),
    inputs: [
      ['R', loadOhm, 'ohm'],
      ['Rw', wireOhm, 'ohm'],
      ...(known ? [['factor', known.factor] as const, ['Rd', known.atOhm, 'ohm'] as const] : []),
    ],
  });
}

/** The level of one path before it is compared: what it loses in its wire, and how loud its speaker is. */
export interface PathLevel {
  readonly path: string;
  readonly lossDb: number;
  /**
   * Power at the speaker over the power of the reference, in dB, and sensitivity: whatever else sets paths
   * apart.
   */
  readonly otherDb?: number;
}

/**
 * How far each path is below the loudest one, in dB (0 for the loudest): level = other - loss. Two paths of
 * one pair, such as left and right doors, should differ by little.
 */
export function levelDifferences(
  paths: readonly PathLevel[],
): readonly { readonly path: string; readonly belowDb: Traced<number> }[] {
  const levels = paths.map(({ lossDb, otherDb = 0 }) => otherDb - lossDb);
  const loudest = Math.max(...levels);
  return paths.map(({ path, lossDb, otherDb = 0 }) => ({
    path,
    belowDb: traced(loudest - (otherDb - lossDb), 'dB', {
      rule: 'level-difference',
      formula: 'below = Lmax - (other - loss)',
      citation: 'Levels in dB add along a path',
      inputs: [
        ['Lmax', loudest, 'dB'],
        ['other', otherDb, 'dB'],
        ['loss', lossDb, 'dB'],
      ],
    }),
  }));
}
