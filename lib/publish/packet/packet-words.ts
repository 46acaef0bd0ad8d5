import { shortName } from '../../draw/feed/feed-words.ts';
import { fusesText, type NumberedFuse } from '../../draw/packet/numbered-fuses.ts';
import type { PhotoOf } from '../../model/content/job-photo.ts';
import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { voltsAllowed } from '../../model/printed/told.ts';
import { type PhotoFigure, type PublishedPhoto, photoFigure } from '../site/published-photo.ts';
import { joined } from '../words/words.ts';
import { mainText, placeOf } from './packet-fuses.ts';

/** What of a plan the words of a packet need. */
type Told = Pick<BuildPlan, 'items' | 'boards' | 'power' | 'vehicle'>;

/** What to do when something stops, the safe things first. Common practice, no source. */
export function whenItStops(hasFuses: boolean): readonly string[] {
  return [
    'Smoke, a smell of burning, or a part that is too hot to touch: stop where it is safe, switch the engine off, get everybody out and call the fire service. Touch no cable.',
    'Otherwise switch the music off at the radio, and park before you look for the cause.',
    ...(hasFuses
      ? [
          'Find what went silent in the table of fuses. One fuse may feed several things.',
          'Take that fuse out and look at it: the strip in a blown fuse is broken. Put in a new one of the same kind with the rating that stands in the table. Do so once.',
          'A fuse that is held by screws or bolts is changed by a workshop, with the negative lead off every battery first.',
          'It blows again: leave it out, keep the system off and call the shop. Never put in a larger fuse, a wire or foil in its place: the cable behind it can catch fire.',
        ]
      : []),
    'Nothing is blown, and there is still no sound: leave the system off and call the shop.',
  ];
}

/** How the level is set and what limits it: by its level control, where the job has one. */
export function levelWords(plan: Told): readonly string[] {
  const controls = plan.items.filter(({ kind, origin }) => kind === 'level-control' && origin === 'job');
  const own = controls.map(
    (item) =>
      `${shortName(item)} (${inSentence(placeOf(plan, item))}) turns its part of the music up and down beside the rest. The volume of the radio turns all of it.`,
  );
  const minutes = reserveMinutes(plan);
  return [
    ...(own.length > 0 ? own : ['The volume of the radio turns all of the music up and down.']),
    'Begin low and turn up. As soon as the music turns rough, turn back: above that point the system distorts, and speakers are damaged.',
    'Loud music harms hearing for good. At most 8 hours at 85 dBA are recommended (NIOSH), and each 3 dB more halves the time: a mere 15 minutes at 100 dBA.',
    ...(minutes === null
      ? []
      : [
          `With the engine off, music empties the battery. After ${printed('time-left', minutes)} of it, switch off, so that the engine still starts.`,
        ]),
  ];
}

function reserveMinutes({ power }: Told): number | null {
  return power.charging.find(({ name }) => name === 'engine-off')?.reserveMinutes ?? null;
}

const fusesOf = (fuses: readonly NumberedFuse[]): string => fusesText(fuses.map(({ number }) => number));

function inSentence(words: string): string {
  return `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

/** What keeps a system sound. Common practice, no source. */
export function careWords({ boards }: Told, retorqueDays: number): readonly string[] {
  return [
    `Bring the vehicle back after ${retorqueDays} days: the joints of power cables settle, and are tightened again.`,
    `Keep ${boards.length > 0 ? 'the boards' : 'the amplifiers'} free: lay nothing on them, cover no amplifier, and keep water away. An amplifier gets warm; one that is too hot to touch is switched off.`,
    'Drill no hole and drive no screw into floor, sills or panels before you asked the shop: cables run behind them.',
    'After work on the vehicle by others, look whether the fuses are in their places before you switch the system on.',
  ];
}

/** Jump start and charging, in the order in which it is done. */
export function jumpStartWords(mains: readonly NumberedFuse[], highestV: number): readonly string[] {
  return [
    'Switch the music off first, and leave it off until the engine runs steadily.',
    'Connect the cables only at the points and in the order that the handbook of the vehicle names. Never connect them to an amplifier, or to a cable of the music system.',
    mains.length > 0
      ? `Charge at the points that the handbook names. A charger that goes above ${voltsAllowed(highestV)}: a workshop takes ${fusesOf(mains)} out first, and puts the rating back that stands in the table of fuses.`
      : `Charge at the points that the handbook names, at ${voltsAllowed(highestV)} at most.`,
  ];
}

/** For who tows, cuts, welds or repairs: the batteries first. */
export interface ServiceWords {
  readonly steps: readonly string[];
  readonly batteries: readonly string[];
  readonly mains: readonly string[];
  readonly cautions: readonly string[];
}

export function serviceWords(plan: Told, mains: readonly NumberedFuse[]): ServiceWords {
  const batteries = plan.items
    .filter(({ kind }) => kind === 'battery')
    .toSorted((a, b) => Number(a.origin === 'job') - Number(b.origin === 'job'));
  return {
    steps: [
      batteries.length > 1
        ? 'Switch the ignition off. Take the negative lead off every battery before any positive lead is touched:'
        : 'Switch the ignition off. Take the negative lead off the battery before anything else is touched:',
      'Wait as long as the vehicle maker says before you work near airbags and belts.',
      ...(mains.length > 0
        ? [
            `Take ${fusesOf(mains)} out before you cut, pull or weld: a fused cable runs from there through the vehicle.`,
          ]
        : []),
      `${plan.boards.length > 0 ? 'Boards, cables' : 'Cables'} and ground leads of this system are marked. Ask the shop before you move one.`,
    ],
    batteries: batteries.map((item) => `${shortName(item)}: ${inSentence(placeOf(plan, item))}`),
    mains: mains.map((one) => mainText(plan, one)),
    cautions: plan.vehicle.cautions,
  };
}

/** What was put in: each title once with its places. */
export interface PutIn {
  readonly name: string;
  readonly what: string;
  readonly places: string;
  readonly photos: readonly PhotoFigure[];
}

const equipment: readonly PlanItem['kind'][] = [
  'amplifier',
  'processor',
  'source-unit',
  'speaker',
  'enclosure',
  'level-control',
  'battery',
  'alternator',
  'charger',
  'isolating-relay',
  'capacitor-bank',
  'fan',
];

function equipmentIn({ items }: Pick<BuildPlan, 'items'>): PlanItem[] {
  return items.filter(({ kind, origin }) => origin === 'job' && equipment.includes(kind));
}

/** True of a photo that is of this item. */
export const isOfItem = (of: PhotoOf | null, { id }: PlanItem): boolean =>
  of?.kind === 'device' && of.id === id;

/** True of a photo that stands beside the equipment that it is of. */
export function isOfEquipment(plan: Pick<BuildPlan, 'items'>, of: PhotoOf | null): boolean {
  return equipmentIn(plan).some((item) => isOfItem(of, item));
}

/** The equipment that the job adds, alike ones together. */
export function putInOf(plan: Told, photos: readonly PublishedPhoto[]): PutIn[] {
  const added = equipmentIn(plan);
  const kinds = [...new Set(added.map(({ partTitle }) => partTitle))];
  return kinds.map((what) => {
    const own = added.filter(({ partTitle }) => partTitle === what);
    const places = [...new Set(own.map((item) => placeOf(plan, item)))];
    const count = own.length > 1 ? `${own.length} pieces. ` : '';
    return {
      name: joined(own.map(shortName)),
      what: `${count}${what}`,
      places: places.join('; '),
      photos: photos.filter(({ of }) => own.some((item) => isOfItem(of, item))).map(photoFigure),
    };
  });
}
