import { type Fault, faultOf, isPositive } from '../model/fault.ts';
import { commonPractice, type Figure, type Traced, traced } from '../model/trace.ts';

/** What the gain of one channel is set for. */
export interface GainRequest {
  readonly channel: string;
  readonly loadOhm: number;
  /** What the amplifier delivers for sure into that load at rated supply. */
  readonly powerW: number;
  /** The most that the speakers on the channel together may get; left out where nothing limits it. */
  readonly speakersW?: number;
  /** Supply voltage that the rated power is stated at: 14.4 V unless its maker says otherwise. */
  readonly ratedSupplyV: number;
  /** Supply at the amplifier while the gain is set. */
  readonly supplyV: number;
  /** A regulated amplifier keeps its power; any other loses it with the square of the supply voltage. */
  readonly regulated: boolean;
  /** How far below full scale the tone is recorded, 0 or more. */
  readonly overlapDb: number;
  /** How far below that it is to play beside others (dB), 0 or below; 0 where left out. */
  readonly levelDb?: number;
  /** Level of everything in the path at the tone, against its highest level after commissioning: 0 or below. */
  readonly pathDb: number;
}

export interface GainTarget {
  readonly channel: string;
  readonly targetPowerW: Traced<number>;
  /** RMS at the terminals, at the frequency that the path lets through best. */
  readonly targetV: Traced<number>;
  /** What to turn the control up to on a true-RMS meter: rounded down to 0.1 V. */
  readonly meterV: Traced<number>;
  /** RMS at which the amplifier clips a sine at this supply. */
  readonly clipV: Traced<number>;
  /** How far the tone stays below clipping. */
  readonly toneMarginDb: Traced<number>;
  /** How far a full-scale passage stays below clipping: below zero by what the overlap gives away. */
  readonly fullScaleMarginDb: Traced<number>;
}

export type GainFault = Fault<'gain-unclear'>;

function gainFault(request: GainRequest): GainFault | null {
  const {
    channel,
    loadOhm,
    powerW,
    speakersW = 1,
    supplyV,
    ratedSupplyV,
    overlapDb,
    pathDb,
    levelDb = 0,
  } = request;
  const positive = [loadOhm, powerW, speakersW, supplyV, ratedSupplyV].every(isPositive);
  const isLevel = Number.isFinite(levelDb) && levelDb <= 0;
  if (positive && Number.isFinite(overlapDb) && overlapDb >= 0 && Number.isFinite(pathDb) && isLevel)
    return null;
  return faultOf(
    'gain-unclear',
    [channel],
    `the gain of channel ${channel} can't be set: its load, power, supply, overlap or the level of its path is missing or out of range`,
    'give the channel a load that its amplifier may drive, and the supply voltage at which it is set',
  );
}

const powerLaw = "Ohm's law, P = V^2 / R";

function availablePower({ powerW, supplyV, ratedSupplyV, regulated }: GainRequest): Traced<number> {
  const share = regulated ? 1 : Math.min(1, supplyV / ratedSupplyV) ** 2;
  return traced(powerW * share, 'W', {
    rule: 'power-at-supply',
    formula: regulated ? 'Pa = P, the amplifier is regulated' : 'Pa = P * (U / Ur)^2, at most P',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['P', powerW, 'W'],
      ['U', supplyV, 'V'],
      ['Ur', ratedSupplyV, 'V'],
    ],
  });
}

/**
 * Target for the gain control of one channel, speakers off, tone at its recorded level. V = sqrt(P * R), P
 * the lesser of what the amplifier has for sure at this supply and of what the speakers may get, times 10^(G / 10) where
 * it is to play G beside others (dB, 0 or below). The meter shows V * 10^(L / 20), rounded down, L the level of the path
 * at the tone against its highest: V is reached where the path lets most through, and nowhere passed. The amplifier clips
 * at sqrt(Pa * R); the margin is 20 log10(Vclip / V), less the overlap for a full-scale passage.
 */
export function gainTarget(request: GainRequest): GainTarget | GainFault {
  const fault = gainFault(request);
  if (fault) return fault;
  const { channel, loadOhm, speakersW, levelDb = 0 } = request;
  const available = availablePower(request);
  const powerW = Math.min(available.value, speakersW ?? available.value) * 10 ** (levelDb / 10);
  const targetV = rms(powerW, loadOhm, 'gain-target-voltage', 'V = sqrt(P * R)');
  const clipV = rms(available.value, loadOhm, 'clipping-voltage', 'Vclip = sqrt(Pa * R)');
  return {
    channel,
    targetPowerW: traced(powerW, 'W', {
      rule: 'gain-target-power',
      formula: `P = the lesser of Pa (amplifier) and Ps (speakers)${levelDb === 0 ? '' : ', times 10^(G / 10)'}`,
      citation: "the parts' data",
      inputs: [
        ['Pa', available.value, 'W'],
        ...(speakersW === undefined ? [] : [['Ps', speakersW, 'W'] as const]),
        ...(levelDb === 0 ? [] : [['G', levelDb, 'dB'] as const]),
      ],
    }),
    targetV,
    meterV: meterReading(targetV.value, request.pathDb),
    clipV,
    ...margins(clipV.value, targetV.value, request.overlapDb),
  };
}

function rms(powerW: number, loadOhm: number, rule: string, formula: string): Traced<number> {
  return traced(Math.sqrt(powerW * loadOhm), 'V', {
    rule,
    formula,
    citation: powerLaw,
    inputs: [
      [rule === 'clipping-voltage' ? 'Pa' : 'P', powerW, 'W'],
      ['R', loadOhm, 'ohm'],
    ],
  });
}

function meterReading(targetV: number, pathDb: number): Traced<number> {
  // No path may raise the reading past the target, nor a rounding error lower it by a tenth.
  const volts = targetV * 10 ** (Math.min(0, pathDb) / 20);
  return traced(Math.floor(volts * 10 * (1 + 1e-12)) / 10, 'V', {
    rule: 'gain-meter-reading',
    formula: 'reading = V * 10^(L / 20), rounded down to 0.1 V; true RMS',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['V', targetV, 'V'],
      ['L', Math.min(0, pathDb), 'dB'],
    ],
  });
}

function margins(
  clipV: number,
  targetV: number,
  overlapDb: number,
): Pick<GainTarget, 'toneMarginDb' | 'fullScaleMarginDb'> {
  const toneDb = 20 * Math.log10(clipV / targetV);
  const inputs: readonly Figure[] = [
    ['Vclip', clipV, 'V'],
    ['V', targetV, 'V'],
  ];
  return {
    toneMarginDb: traced(toneDb, 'dB', {
      rule: 'clipping-margin-tone',
      formula: 'margin = 20 * log10(Vclip / V)',
      citation: 'Definition of the level in dB',
      inputs,
    }),
    fullScaleMarginDb: traced(toneDb - overlapDb, 'dB', {
      rule: 'clipping-margin-full-scale',
      formula: 'margin = 20 * log10(Vclip / V) - overlap',
      citation: 'Definition of the level in dB',
      inputs: [...inputs, ['overlap', overlapDb, 'dB']],
    }),
  };
}
