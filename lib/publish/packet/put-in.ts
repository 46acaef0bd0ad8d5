import { shortName } from '../../draw/power/feed-words.ts';
import type { PhotoOf } from '../../model/content/job-photo.ts';
import type { BuildPlan, PlanItem } from '../../model/plan/index.ts';
import { type PhotoFigure, type PublishedPhoto, photoFigure } from '../site/published-photo.ts';
import { joined } from '../words/words.ts';
import { placeOf } from './packet-fuses.ts';

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
export function putInOf(
  plan: Pick<BuildPlan, 'items' | 'boards'>,
  photos: readonly PublishedPhoto[],
): PutIn[] {
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
