import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import { bodyId, type Job } from '../../model/content/resolved-job.ts';
import { lugHoles } from '../../model/tables/lugs.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { type MadePoint, madePoint } from '../board/made-points.ts';

/** What fastens the lugs of a ground point: parts of the catalogue, or null where it has none that fits. */
export interface GroundBolt {
  readonly point: string;
  readonly stud: string;
  /** What it is fastened by: a bolt into what takes one, a nut over a stud, or a bolt and its nut through the panel. */
  readonly by: 'bolt' | 'nut' | 'bolt-and-nut';
  /** The vehicle's own bolt or nut is used again: none is fetched. */
  readonly own: boolean;
  /** None where a bolt goes into what takes it. */
  readonly nut: string | null;
  readonly bolt: string | null;
  readonly washer: string | null;
  /** What the point is made with, where it is not there yet. */
  readonly made: MadePoint | null;
}

type Fixing = { readonly id: string; readonly lengthM: number };
type Shelf = Pick<Job, 'parts' | 'shop'>;

/**
 * Bolt or nut, and serrated washer, of each ground point that a wire of the job ends at: over a welded stud a nut alone,
 * through the panel a bolt with its nut. A bolt has the thread of the point and is
 * at least as long as the palms of all lugs there, its washer, the panel that it passes, and the thread that it must have
 * in its nut (house rules `lug-palm`, `ground-panel` and `thread-engagement`); one on the shelf goes first, then the shortest. The vehicle has its own bolt where
 * its file says so, and where one of its own conductors is bolted already.
 */
export function groundBolts({
  parts,
  shop,
  rules,
  vehicle,
  links,
}: Pick<Job, 'parts' | 'shop' | 'rules' | 'vehicle' | 'links'>): GroundBolt[] {
  const ends = links.flatMap(({ origin, from, to }) => [from, to].map((end) => ({ ...end, origin })));
  return Object.entries(vehicle.grounds).flatMap(([point, spot]): GroundBolt[] => {
    const { stud, bolt } = spot;
    const here = ends.filter(({ device, terminal }) => device === bodyId && terminal === point);
    if (!here.some(({ origin }) => origin === 'job')) return [];
    const own = spot.there && (bolt === 'own' || here.some(({ origin }) => origin === 'vehicle'));
    const washer = washerFor({ parts, shop }, stud);
    const diameterM = lugHoles.find((row) => row.stud === stud)?.studM;
    const by = fastenedBy[spot.insert];
    const leastM =
      here.length * rules['lug-palm'].value +
      (washer?.lengthM ?? 0) +
      (by === 'bolt-and-nut' ? rules['ground-panel'].value : 0) +
      (diameterM ?? 0) * rules['thread-engagement'].value;
    const chosen =
      own || by === 'nut' || diameterM === undefined ? null : boltFor({ parts, shop }, stud, leastM);
    return [
      {
        point,
        stud,
        by,
        own,
        nut: own || by === 'bolt' ? null : (nutFor({ parts, shop }, stud)?.id ?? null),
        bolt: chosen?.id ?? null,
        washer: washer?.id ?? null,
        made: madePoint({ parts, shop }, spot),
      },
    ];
  });
}

/** What fastens a lead, by what is at its point. */
const fastenedBy = {
  'rivet-nut': 'bolt',
  welded: 'bolt',
  stud: 'nut',
  through: 'bolt-and-nut',
} as const satisfies Record<string, GroundBolt['by']>;

function nutFor({ parts, shop }: Shelf, stud: string): Fixing | undefined {
  const nuts = partsOfKind(parts, 'fixing').flatMap(([id, { form, thread }]): Fixing[] =>
    form === 'nut' && thread === stud ? [{ id, lengthM: 0 }] : [],
  );
  return nearest(shop, nuts);
}

function washerFor({ parts, shop }: Shelf, stud: string): Fixing | undefined {
  const washers = partsOfKind(parts, 'fixing').flatMap(([id, spec]): Fixing[] =>
    spec.form === 'washer' && spec.serrated && spec.thread === stud
      ? [{ id, lengthM: spec.thickness ?? 0 }]
      : [],
  );
  return nearest(shop, washers);
}

function boltFor({ parts, shop }: Shelf, stud: string, leastM: number): Fixing | undefined {
  const bolts = partsOfKind(parts, 'fixing').flatMap(([id, { form, thread, length }]): Fixing[] =>
    form === 'bolt' && thread === stud && length !== undefined && length >= leastM - 1e-9
      ? [{ id, lengthM: length }]
      : [],
  );
  return nearest(shop, bolts);
}

/** One on the shelf goes first, then the shortest. */
function nearest(shop: Job['shop'], fixings: readonly Fixing[]): Fixing | undefined {
  const inOrder = shelvedFirst(shop);
  return fixings.toSorted(
    (a, b) => inOrder(a.id, b.id) || a.lengthM - b.lengthM || (a.id < b.id ? -1 : 1),
  )[0];
}
