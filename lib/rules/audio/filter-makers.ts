import { partlyToldText } from '../../audio/filter/filter-offers.ts';
import type { Device, Job } from '../../model/content/resolved-job.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import { filterPlaces, makersOnPath } from '../../plan/audio/filter-places.ts';
import { listed } from '../words.ts';

type Heard = Pick<PlanChannel, 'id' | 'amplifier' | 'positive'>;

/** `high-pass`, `subsonic filter`. */
function filterWord(pass: FilterPass): string {
  return pass === 'subsonic' ? 'subsonic filter' : pass;
}

/** What can be put into a path in which nothing makes a filter. */
export function putInPath(pass: FilterPass): string {
  return `a processor or an amplifier with a ${filterWord(pass)}, or a line lead with one in it (filter: of its cable)`;
}

/** Where a leaflet's filter is written. */
export function writtenIntoPart(devices: readonly Device[], pass: FilterPass): string {
  const makers = devices.map((device) => ({ ...device, partId: device.part ?? device.id }));
  const partly = partlyToldText(makers, pass);
  if (partly !== null) return partly;
  const parts = [...new Set(devices.flatMap(({ part }) => part ?? []))];
  const many = parts.length > 1;
  return `where the leaflet of ${listed(parts, 'or')} has a ${filterWord(pass)}, write it into ${many ? 'its' : 'that'} part: a control with filter:, or filter-orders: for a menu`;
}

/**
 * How a channel comes by a filter: what on its path makes one that reaches a corner, with where it belongs; else what
 * must be put there.
 */
export function toFilter(
  job: Job,
  channel: Heard,
  pass: FilterPass,
  { reachesHz, belongs }: { readonly reachesHz: number; readonly belongs: string },
): string {
  const devices = new Map(job.devices.map((one) => [one.id, one]));
  const makers = makersOnPath(job, devices, channel, pass)
    .filter(({ offer }) => (pass === 'low-pass' ? offer.fromHz <= reachesHz : offer.toHz >= reachesHz))
    .map(({ device, at }) => `${device.id}.${at}`);
  if (makers.length > 0)
    return `write a ${filterWord(pass)} under filters: at ${listed([...new Set(makers)], 'or')}, ${belongs}`;
  const own = filterPlaces(job, devices, channel).map(({ device }) => device);
  return `no part on its path makes a ${filterWord(pass)}: put in ${putInPath(pass)}; ${writtenIntoPart(own, pass)}`;
}
