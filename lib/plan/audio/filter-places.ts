import { type FilterOffer, filterOffers } from '../../audio/filter/filter-offers.ts';
import type { Device, Job, LinkEnd } from '../../model/content/resolved-job.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { playedThrough } from './passed-on.ts';
import { feedOf } from './signal-feed.ts';
import { channelInputs, channelNames } from './signal-path.ts';

/** An output on the path of a channel at which the job may write filters. */
export interface FilterPlace {
  readonly device: Device;
  /** The channel of an amplifier, or the output of another device. */
  readonly name: string;
  /** What a filter is written at. */
  readonly at: string;
}

type Heard = Pick<PlanChannel, 'id' | 'amplifier' | 'positive'>;

/** The outputs of the job on the path of a channel, from its amplifier back to the source. */
export function filterPlaces(job: Job, devices: DevicesById, channel: Heard): readonly FilterPlace[] {
  const amplifier = devices.get(channel.amplifier);
  if (!amplifier) return [];
  const at = stemName(channel.positive.slice(amplifier.id.length + 1));
  const own = channelNames(channel).map((name): FilterPlace => ({ device: amplifier, name, at }));
  return [...own, ...placesBefore(job, devices, channelInputs(job, channel), [])];
}

function placesBefore(
  job: Job,
  devices: DevicesById,
  inputs: readonly LinkEnd[],
  passed: readonly string[],
): readonly FilterPlace[] {
  return inputs.flatMap((input): readonly FilterPlace[] => {
    const feeding = feedOf(job, input);
    const device = feeding && devices.get(feeding.device);
    if (!feeding || !device || passed.includes(device.id)) return [];
    const name = stemName(feeding.terminal);
    // What came with the vehicle is not set by the job.
    const own = device.origin === 'job' ? [{ device, name, at: name }] : [];
    const linked = playedThrough(job, devices, device, feeding.terminal)?.linked ?? [];
    return [...own, ...placesBefore(job, devices, linked, [...passed, device.id])];
  });
}

/** What can make a filter of a kind on the path of a channel: each output with what it offers there. */
export function makersOnPath(
  job: Job,
  devices: DevicesById,
  channel: Heard,
  pass: FilterPass,
): readonly (FilterPlace & { readonly offer: FilterOffer })[] {
  return filterPlaces(job, devices, channel).flatMap((place) => {
    const offer = filterOffers(place.device, place.name).find((one) => one.pass === pass);
    return offer ? [{ ...place, offer }] : [];
  });
}
