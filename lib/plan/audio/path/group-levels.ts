import { actsOn } from '../../../audio/filter/filter-offers.ts';
import { type Device, type Job, terminalId } from '../../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../../model/kinds/fields/control-spec.ts';
import type { PlanChannel } from '../../../model/plan/index.ts';
import { stemName } from '../../../model/ports/pair-name.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { feedOf } from '../signal-feed.ts';
import { channelInputs, channelNames } from '../signal-path.ts';

/** A channel with the speakers that it drives, behind crossovers too. */
export type DrivenChannel = Pick<PlanChannel, 'id' | 'amplifier' | 'speakers'>;

/** How a channel comes to the level of its speakers, or what keeps it from that. */
export interface ChannelLevel {
  readonly levelDb: number;
  /** True where the gain of its amplifier is set for it; an output before it is else. */
  readonly atGain: boolean;
  /** The controls that set it, `amp.GAIN` or `dsp.LEVEL`; none where nothing can. */
  readonly by: readonly string[];
  /** What would be moved with it and is to play at another level: speakers on its channel, or on others of its controls. */
  readonly others: readonly string[];
}

/** What a group is to play at, below what its channel may give (dB, 0 or below). */
export function levelOf(job: Job, speaker: string): number {
  return job.devices.find(({ id }) => id === speaker)?.given?.level ?? 0;
}

/**
 * The channels of speakers that are to play below the others. The gain of the amplifier goes first, whose reading is taken
 * with a meter; else a level control of every output before it. Neither moves what is to play at another level.
 */
export function groupLevels(
  job: Job,
  devices: DevicesById,
  channels: readonly DrivenChannel[],
): ReadonlyMap<string, ChannelLevel> {
  const driven = channels.filter(({ speakers }) => speakers.length > 0);
  return new Map(
    driven.flatMap((channel): [string, ChannelLevel][] => {
      const levelDb = Math.min(...channel.speakers.map((id) => levelOf(job, id)));
      if (levelDb >= 0) return [];
      const unlike = (own: readonly DrivenChannel[]) =>
        own.flatMap(({ speakers }) => speakers.filter((id) => levelOf(job, id) !== levelDb));
      const asked = { levelDb, by: [], others: unlike([channel]), atGain: false };
      if (asked.others.length > 0) return [[channel.id, asked]];
      const gains = gainControls(devices, channel, driven);
      const outputs = levelControls(job, devices, channel, driven);
      const ways = [
        { atGain: true, ...gains },
        { atGain: false, ...outputs },
      ].filter(({ by }) => by.length > 0);
      const found = ways.find(({ moved }) => unlike(moved).length === 0);
      if (found) return [[channel.id, { ...asked, atGain: found.atGain, by: found.by }]];
      return [[channel.id, { ...asked, others: [...new Set(ways.flatMap(({ moved }) => unlike(moved)))] }]];
    }),
  );
}

/** Controls that set the level of a channel, and all channels that they move. */
interface Moving {
  readonly by: readonly string[];
  readonly moved: readonly DrivenChannel[];
}

function gainControls(
  devices: DevicesById,
  channel: DrivenChannel,
  driven: readonly DrivenChannel[],
): Moving {
  const device = devices.get(channel.amplifier);
  const acts = (spec: ControlSpec, one: DrivenChannel) =>
    device !== undefined && channelNames(one).some((name) => actsOn(device, spec).includes(name));
  const own = controlsOf(device, 'gain').filter(([, spec]) => acts(spec, channel));
  return {
    by: own.map(([name]) => `${channel.amplifier}.${name}`),
    moved: driven.filter(
      (one) => one.amplifier === channel.amplifier && own.some(([, spec]) => acts(spec, one)),
    ),
  };
}

/** One control for each output that feeds the channel; none where one of these has none. */
function levelControls(
  job: Job,
  devices: DevicesById,
  channel: DrivenChannel,
  driven: readonly DrivenChannel[],
): Moving {
  const feedsOf = (one: DrivenChannel) =>
    channelInputs(job, one).flatMap((input) => feedOf(job, input) ?? []);
  const feeds = feedsOf(channel);
  const own = feeds.flatMap(({ device: id, terminal }) => {
    const device = devices.get(id);
    if (device?.origin !== 'job' || device.spec?.kind === 'amplifier') return [];
    const control = controlsOf(device, 'level').find(([, spec]) =>
      actsOn(device, spec).includes(stemName(terminal)),
    );
    return control ? [{ device, name: control[0], spec: control[1] }] : [];
  });
  if (own.length < feeds.length) return { by: [], moved: [] };
  const outputs = new Set(
    own.flatMap(({ device, spec }) =>
      actsOn(device, spec).map((name) => terminalId({ device: device.id, terminal: name })),
    ),
  );
  return {
    by: [...new Set(own.map(({ device, name }) => `${device.id}.${name}`))],
    moved: driven.filter((one) =>
      feedsOf(one).some((end) => outputs.has(terminalId({ ...end, terminal: stemName(end.terminal) }))),
    ),
  };
}

function controlsOf(device: Device | undefined, what: ControlSpec['what']): [string, ControlSpec][] {
  return Object.entries(device?.facts.controls ?? {}).filter(([, spec]) => spec.what === what);
}
