import { partlyToldText } from '../../../audio/filter/filter-offers.ts';
import type { Device, Job } from '../../../model/content/resolved-job.ts';
import type { PlanChannel } from '../../../model/plan/index.ts';
import type { FilterPass } from '../../../model/vocabulary.ts';
import { filterPlaces, makersOnPath } from '../../../plan/audio/filter-places.ts';
import { devicesById } from '../../../plan/wiring/conductor-role.ts';
import { listed } from '../../words.ts';
import { type Belongs, filterLine } from './filter-lines.ts';

type Heard = Pick<PlanChannel, 'id' | 'amplifier' | 'positive'>;

/** `high-pass`, `subsonic filter`. */
function filterWord(pass: FilterPass): string {
  return pass === 'subsonic' ? 'subsonic filter' : pass;
}

/** What can be put into a path in which nothing makes a filter. */
export function putInPath(pass: FilterPass): string {
  return `a processor or an amplifier with a ${filterWord(pass)}, or a line lead with one in it (filter: of its cable)`;
}

function partlyTold(devices: readonly Device[], pass: FilterPass): string | null {
  return partlyToldText(
    devices.map((device) => ({ ...device, partId: device.part ?? device.id })),
    pass,
  );
}

/** Where a leaflet's filter is written. */
export function writtenIntoPart(devices: readonly Device[], pass: FilterPass): string {
  const partly = partlyTold(devices, pass);
  if (partly !== null) return partly;
  const parts = [...new Set(devices.flatMap(({ part }) => part ?? []))];
  const many = parts.length > 1;
  return `where the leaflet of ${listed(parts, 'or')} has a ${filterWord(pass)}, write it into ${many ? 'its' : 'that'} part: a control with filter:, or filter-orders: for a menu`;
}

/** What is asked of a filter that a channel lacks. */
interface AskedFilter {
  /** What its maker must reach (Hz). */
  readonly reachesHz: number;
  /** Where it belongs, in words. */
  readonly belongs: string;
  /** The same where the line to write can be told. */
  readonly at?: Belongs;
}

/**
 * How a channel comes by a filter: what on its path makes one that reaches a corner, with where it belongs and the line to
 * write; a filter whose part tells it by half; else what must be put there.
 */
export function toFilter(
  job: Job,
  channel: Heard,
  pass: FilterPass,
  { reachesHz, belongs, at }: AskedFilter,
): string {
  const devices = devicesById(job);
  const makers = makersOnPath(job, devices, channel, pass).filter(({ offer }) =>
    pass === 'low-pass' ? offer.fromHz <= reachesHz : offer.toHz >= reachesHz,
  );
  const [first] = makers;
  if (first) {
    const places = [...new Set(makers.map((maker) => `${maker.device.id}.${maker.at}`))];
    const line = at ? `, at ${first.device.id} filters: { ${filterLine(first, pass, at)} }` : '';
    return `write a ${filterWord(pass)} under filters: at ${listed(places, 'or')}, ${belongs}${line}`;
  }
  const own = filterPlaces(job, devices, channel);
  const put = `put in ${putInPath(pass)}`;
  const partly = partlyTold(
    own.map(({ device }) => device),
    pass,
  );
  if (partly === null)
    return `no part on its path makes a ${filterWord(pass)}: ${put}; ${writtenIntoPart(
      own.map(({ device }) => device),
      pass,
    )}`;
  const written = own.find(({ device, at: place }) => isWritten(job, device, place));
  const after = written
    ? `and the same under filters: at ${written.device.id}.${written.at}, ${belongs}`
    : 'and it is proposed, where nothing is written under filters:';
  return `${partly}, ${after}; or ${put}`;
}

/** True where the job itself writes filters at a place, so that none is proposed there. */
function isWritten(job: Job, { id, given }: Device, at: string): boolean {
  const isProposed = job.proposals.some(({ path }) => path.join('.') === `devices.${id}.filters.${at}`);
  return given?.filters[at] !== undefined && !isProposed;
}
