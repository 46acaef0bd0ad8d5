import type { AmplifierMode } from '../../audio/load/amplifier-load.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';

type Channel = PartOf<'amplifier'>['bridges'][string];

/** An output of an amplifier: a channel, or two of them bridged. */
export interface AmplifierOutput {
  readonly amplifier: string;
  /** Its name in the part: `1`, or `1+2`. */
  readonly name: string;
  /** The channels that it takes. */
  readonly channels: readonly string[];
  readonly spec: Channel;
}

/** The single outputs of an amplifier in the order of its part, then its bridges. */
export function outputsOf({ id, spec }: DraftDevice): readonly AmplifierOutput[] {
  if (spec.kind !== 'amplifier') return [];
  const single = Object.entries(spec.channels).map(([name, channel]) => ({
    amplifier: id,
    name,
    channels: [name],
    spec: channel,
  }));
  const bridged = Object.entries(spec.bridges).map(([name, channel]) => ({
    amplifier: id,
    name,
    channels: name.split('+'),
    spec: channel,
  }));
  return [...single, ...bridged];
}

/** The channels of an amplifier at which nothing is linked or left open yet. */
export function freeChannels(draft: Draft, amplifier: DraftDevice): readonly string[] {
  const { id, spec } = amplifier;
  if (spec.kind !== 'amplifier') return [];
  return Object.entries(spec.channels).flatMap(([name, { positive, negative }]) =>
    [positive, negative].every((terminal) => draft.isFree(id, terminal) && !draft.isLeftOpen(id, terminal))
      ? [name]
      : [],
  );
}

/** What an output may drive, in the terms of the loads. */
export function modeOf({ channels, spec }: AmplifierOutput): AmplifierMode {
  return {
    mode: channels.length > 1 ? 'bridged' : 'stereo',
    minimumOhm: spec.minimum,
    rated: spec.powers.map(({ load, power }) => ({ loadOhm: load, powerW: power })),
  };
}

/** The most that an output gives into any load (W): by it channels are told strong from weak. */
export function strengthW({ spec }: AmplifierOutput): number {
  return Math.max(...spec.powers.map(({ power }) => power));
}
