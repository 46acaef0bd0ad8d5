import {
  type JobDevice,
  untoldUse,
  type WrittenBoard,
  type WrittenDevice,
  type WrittenJob,
} from '../../model/content/job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { VehicleSide } from '../../model/vocabulary.ts';
import type { Around } from './around.ts';
import type { OpenedJob } from './draft.ts';
import type { DraftBoard } from './draft-terms.ts';
import type { Undecided } from './undecided.ts';

/** One or more speakers that are written as one: they play alike, each in its own place. */
export interface SpeakerGroup {
  readonly id: string;
  readonly written: WrittenDevice;
  /** Ids of its speakers: the left one, the right one, the one in the middle. */
  readonly members: readonly string[];
}

/** A job whose lists of places and boxes are opened out into devices. */
export interface OpenedGroups {
  readonly job: OpenedJob;
  readonly groups: readonly SpeakerGroup[];
  /** The device that each opened one is written at. */
  readonly writtenAt: ReadonlyMap<string, string>;
  readonly undecided: readonly Undecided[];
}

/**
 * Opens `in:` with a list out into one device a place, named by its side, and `box:` into an enclosure in the place of
 * its speaker. A job that is completed calls what has no title by its id in words (common practice, no source).
 */
export function openGroups(
  written: WrittenJob,
  { vehicle, parts }: Pick<Around, 'vehicle' | 'parts'>,
  isCompleted: boolean,
): OpenedGroups {
  const devices: Record<string, JobDevice> = {};
  const groups: SpeakerGroup[] = [];
  const writtenAt = new Map<string, string>();
  const undecided: Undecided[] = [];
  const put = (id: string, device: JobDevice, at: string): void => {
    if (at !== id && (id in written.devices || id in devices)) undecided.push(takenName(at, id));
    const title = device.title ?? (isCompleted ? inWords(id) : undefined);
    devices[id] = title === undefined ? device : { ...device, title };
    if (at !== id) writtenAt.set(id, at);
  };
  for (const [id, device] of Object.entries(written.devices)) {
    const { in: places, ...rest } = device;
    const members = Array.isArray(places)
      ? membersOf(id, places, vehicle, undecided)
      : [{ id, place: places, side: null }];
    for (const member of members) {
      const title = rest.title !== undefined && member.side ? { title: `${rest.title} ${member.side}` } : {};
      put(member.id, { ...rest, ...title, ...(member.place !== undefined && { in: member.place }) }, id);
      if (rest.box !== undefined && parts[rest.box]?.kind === 'enclosure')
        put(`${member.id}-box`, boxOf(rest.box, member.place), id);
    }
    groups.push({ id, written: device, members: members.map((one) => one.id) });
  }
  const boards = Object.fromEntries(
    Object.entries(written.boards).map(([id, board]) => [id, withFixings(board)]),
  );
  return { job: { ...written, devices, links: written.links ?? {}, boards }, groups, writtenAt, undecided };
}

/** An id as a title: `front-left` is "Front left". */
export function inWords(id: string): string {
  const words = id.replaceAll('-', ' ');
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

function withFixings({ fixings = {}, spacer, ...board }: WrittenBoard): DraftBoard {
  const spaced = Object.entries(fixings).map(([id, fixing]) => {
    const own = fixing.spacer ?? spacer;
    return [id, own === undefined ? fixing : { ...fixing, spacer: own }] as const;
  });
  return { ...board, ...(spacer !== undefined && { spacer }), fixings: Object.fromEntries(spaced) };
}

interface Member {
  readonly id: string;
  readonly place: string | undefined;
  readonly side: VehicleSide | null;
}

const order: readonly VehicleSide[] = ['left', 'right', 'middle'];
const rank = (side: VehicleSide | null): number => (side === null ? order.length : order.indexOf(side));

/** The speakers of a group by their sides; two on one side can't be told apart by it. */
function membersOf(
  id: string,
  places: readonly string[],
  { places: known }: Vehicle,
  undecided: Undecided[],
): readonly Member[] {
  // A place that the vehicle has not is told where its names are looked up.
  const sided = places.map((place) => ({ place, side: known[place]?.side ?? null }));
  for (const side of order) {
    const [first, second] = sided.filter((one) => one.side === side);
    if (first && second)
      undecided.push({
        path: ['devices', id, 'in'],
        message: `${id}: ${first.place} and ${second.place} are both ${side === 'middle' ? 'in the middle' : `on the ${side}`}`,
        remedy: 'write two devices with names of their own',
      });
  }
  return sided
    .toSorted((a, b) => rank(a.side) - rank(b.side))
    .map(({ place, side }) => ({ id: `${id}-${side ?? place}`, place, side }));
}

function boxOf(part: string, place: string | undefined): JobDevice {
  return {
    part,
    ...(place !== undefined && { in: place }),
    'speaker-level': [],
    'summed-inside': [],
    fuses: {},
    ...untoldUse,
  };
}

function takenName(at: string, id: string): Undecided {
  return {
    path: ['devices', at],
    message: `${at} stands for a device "${id}", and there is one of that name already`,
    remedy: `call one of them something else`,
  };
}
