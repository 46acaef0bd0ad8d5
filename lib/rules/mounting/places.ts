import { goesInto, goTogether, type Sides } from '../../board/layout/boxes-in-place.ts';
import type { Device, Job } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { pointer } from '../../model/place.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceSpot, partSpot } from '../look-up.ts';
import type { Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';

type Seat = Vehicle['places'][string];

/** A box of the job in a place: its sides, metres. */
interface Boxed {
  readonly device: Device;
  readonly sides: Sides;
}

/** Most boxes of one place that ways to stand are tried for; of more the volumes alone are held against it. */
const mostTried = 4;

/** The places of the vehicle, each with what of the job stands in it; a speaker is let in, or is in its box. */
function placesOf({ vehicle, devices }: Pick<Job, 'vehicle' | 'devices'>) {
  return Object.entries(vehicle.places).map(([id, seat]) => {
    const here = devices.filter((device) => device.origin === 'job' && device.seat === id);
    const boxes = here.flatMap((device): Boxed[] => {
      const print = device.facts.footprint;
      if (!print || device.spec?.kind === 'speaker') return [];
      return [{ device, sides: [print.widthM, print.depthM, print.heightM] }];
    });
    return { id, seat, here, boxes };
  });
}

const sizeText = (job: Job, { device, sides }: Boxed): string =>
  sides.map(lengthIn(job, partSpot(job, device.id))).join(' x ');

const placeSpot = (id: string): Spot => ({ path: pointer(['places', id]), file: 'vehicle' });

/** The size of a place as far as it is told; a side that is not told holds anything. */
function roomOf({ width, height, depth }: Seat): Sides {
  return [width ?? Infinity, height ?? Infinity, depth ?? Infinity];
}

function toldSides(job: Job, id: string, { width, height, depth }: Seat): string {
  const told = { wide: width, high: height, deep: depth };
  const length = lengthIn(job, placeSpot(id));
  return listed(
    Object.entries(told).flatMap(([how, value]) => (value === undefined ? [] : [`${length(value)} ${how}`])),
  );
}

const tooSmall: Rule = {
  id: 'place-too-small',
  judge({ job }) {
    return placesOf(job).flatMap(({ id, seat, boxes }): Verdict<'place-too-small'>[] => {
      const room = roomOf(seat);
      const alone = boxes.filter(({ sides }) => !goesInto(sides, room));
      if (alone.length > 0) return alone.map((box) => aloneVerdict(job, id, seat, box));
      return togetherVerdict(job, id, seat, boxes);
    });
  },
};

function aloneVerdict(job: Job, id: string, seat: Seat, box: Boxed): Verdict<'place-too-small'> {
  const { device } = box;
  return {
    level: 'stop',
    of: [device.id, id],
    message: `${device.id} is ${sizeText(job, box)}, and ${id} is ${toldSides(job, id, seat)}: it goes in no way round`,
    remedy: `use another place or a smaller one, or correct the size of ${id} in the vehicle's file`,
    ...deviceSpot(job, device.id, 'in'),
  };
}

function togetherVerdict(
  job: Job,
  id: string,
  seat: Seat,
  boxes: readonly Boxed[],
): Verdict<'place-too-small'>[] {
  const [first, ...more] = boxes;
  if (!first || more.length === 0) return [];
  const of = [...boxes.map(({ device }) => device.id), id];
  const spot = deviceSpot(job, first.device.id, 'in');
  const names = listed(boxes.map(({ device }) => device.id));
  const room = roomOf(seat);
  if (room.every(Number.isFinite)) {
    if (goTogetherIn(boxes, room)) return [];
    return [
      {
        level: 'stop',
        of,
        message: `${names} stand in ${id}, which is ${toldSides(job, id, seat)}: each goes in alone, together they do not`,
        remedy: 'give one of them another place, or use smaller ones',
        ...spot,
      },
    ];
  }
  const enclosures = boxes.filter(({ device }) => device.spec?.kind === 'enclosure');
  if (enclosures.length < 2) return [];
  return [
    {
      level: 'caution',
      of: [...enclosures.map(({ device }) => device.id), id],
      message: `${listed(enclosures.map(({ device }) => device.id))} stand in one place, ${id}, and the vehicle's file does not tell whether it holds them together`,
      remedy: `measure ${id} and write its depth:, width: and height: in the vehicle's file (${pointer(['places', id])}), or give each a place of its own`,
      ...spot,
    },
  ];
}

function goTogetherIn(boxes: readonly Boxed[], room: Sides): boolean {
  const volume = ([a, b, c]: Sides): number => a * b * c;
  if (boxes.reduce((sum, { sides }) => sum + volume(sides), 0) > volume(room) + 1e-9) return false;
  return (
    boxes.length > mostTried ||
    goTogether(
      boxes.map(({ sides }) => sides),
      [room],
    )
  );
}

const tooDeep: Rule = {
  id: 'speaker-too-deep',
  judge({ job }) {
    const { value: playM, from } = houseRule(job, 'part-tolerance');
    return placesOf(job).flatMap(({ id, seat, here }) => {
      const depth = seat.depth;
      // In a box its maker's depth is that of the box.
      if (depth === undefined || here.some(({ spec }) => spec?.kind === 'enclosure')) return [];
      return here.flatMap((device): Verdict<'speaker-too-deep'>[] => {
        if (device.spec?.kind !== 'speaker') return [];
        const value = device.spec.size.height;
        if (value <= depth - playM + 1e-9) return [];
        const stops = value > depth + 1e-9;
        const length = lengthIn(job, placeSpot(id), partSpot(job, device.id));
        return [
          {
            level: stops ? 'stop' : 'caution',
            of: [device.id, id],
            message: `${device.id} is ${length(value)} deep, and ${id} gives it ${length(depth)}${stops ? '' : `: less than ${length(playM)} to spare, by which parts vary`}`,
            value,
            limit: stops ? depth : depth - playM,
            unit: 'm',
            remedy: 'put a ring under its frame, use a shallower speaker, or another place',
            ...(stops ? {} : from),
            ...deviceSpot(job, device.id, 'in'),
          },
        ];
      });
    });
  },
};

export const placeRules: readonly Rule[] = [tooSmall, tooDeep];
