import { type Traced, traced } from '../../model/trace.ts';
import { type PowerAtLoad, powerAtLoad, type RatedPower, type RatedPowerFault } from '../rated-power.ts';
import type { WiringLoad } from './loads.ts';

/** What an amplifier may drive in one mode, as its maker publishes it. */
export interface AmplifierMode {
  readonly mode: 'stereo' | 'bridged';
  readonly minimumOhm: number;
  readonly rated: readonly RatedPower[];
}

/** A channel judged against its amplifier. */
export interface ChannelLoad {
  readonly channel: string;
  readonly loadOhm: Traced<number>;
  readonly minimumOhm: Traced<number>;
  /** What each single output sees: half the load where two are bridged. */
  readonly outputLoadOhm: Traced<number>;
  readonly mayDrive: boolean;
  readonly power: PowerAtLoad | RatedPowerFault;
  /** Empty where no power is known. */
  readonly coils: readonly CoilPower[];
}

export interface CoilPower {
  readonly coil: string;
  readonly speaker: string;
  /** What the coil gets for sure: for gain and level. */
  readonly powerW: Traced<number>;
  /** The most that the ratings allow for: to judge what the coil must bear. */
  readonly greatestPowerW: Traced<number>;
}

/** True where a load is at or above a minimum, a rounding error in the sum of coils aside. */
export function isAtLeast(loadOhm: number, minimumOhm: number): boolean {
  return loadOhm >= minimumOhm * (1 - 1e-9);
}

/**
 * Load of a channel against the amplifier's minimum for the mode, the power there and in each coil (W = share
 * of coil * W of channel). A load below the minimum has no power: nothing is published for it.
 */
export function channelLoad(channel: string, load: WiringLoad, amplifier: AmplifierMode): ChannelLoad {
  const loadOhm = load.loadOhm.value;
  const { mode, minimumOhm } = amplifier;
  const power = powerAtLoad(channel, loadOhm, amplifier);
  const outputs = mode === 'bridged' ? 2 : 1;
  return {
    channel,
    loadOhm: load.loadOhm,
    minimumOhm: traced(minimumOhm, 'ohm', {
      origin: 'given',
      rule: 'amplifier-minimum',
      formula: `minimum load, ${mode}`,
      citation: "the amplifier's data",
      inputs: [],
    }),
    outputLoadOhm: traced(loadOhm / outputs, 'ohm', {
      rule: 'output-load',
      formula: 'Rout = R / n, n outputs that share one load in opposite phase',
      citation: "Ohm's and Kirchhoff's laws",
      inputs: [
        ['R', loadOhm, 'ohm'],
        ['n', outputs],
      ],
    }),
    mayDrive: isAtLeast(loadOhm, minimumOhm),
    power,
    coils: 'fault' in power ? [] : coilPowers(load, power),
  };
}

function coilPowers(load: WiringLoad, power: PowerAtLoad): readonly CoilPower[] {
  return load.shares.map(({ coil, speaker, share }) => {
    const of = (channelW: Traced<number>) =>
      traced(channelW.value * share, 'W', {
        rule: 'coil-power',
        formula: 'Pcoil = share * P; the share goes as R in series, as 1/R in parallel',
        citation: "Ohm's and Kirchhoff's laws",
        inputs: [
          ['share', share],
          ['P', channelW.value, 'W'],
        ],
      });
    return { coil, speaker, powerW: of(power.powerW), greatestPowerW: of(power.greatestPowerW) };
  });
}
