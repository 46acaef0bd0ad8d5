import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';

type GroundPoint = Vehicle['grounds'][string];
type SoundPoint = Board['space']['sound-points'][string];

/** What a sound point or a ground point tells of how it is made. */
type PointToMake =
  | Pick<SoundPoint, 'there' | 'stud' | 'insert' | 'behind' | 'free-depth'>
  | Pick<GroundPoint, 'there' | 'stud' | 'insert' | 'behind' | 'free-depth'>;

/** What makes a point that is not there yet: a part of the shop, and the hole that it is set in. */
export type MadePoint = NonNullable<PlanBoard['fixings'][number]['made']>;

/**
 * What a point is made with: the rivet nut of the catalogue with its thread that tells its hole and has room behind the
 * panel, one on the shelf first, then the strongest. No part where there is none, and
 * for one that is welded or bolted through, which no plan makes; null for a point that is there.
 */
export function madePoint(
  { parts, shop }: Pick<Job, 'parts' | 'shop'>,
  point: PointToMake,
): MadePoint | null {
  if (point.there) return null;
  const freeM = point['free-depth'] ?? null;
  const inOrder = shelvedFirst(shop);
  const [best] = partsOfKind(parts, 'fixing')
    .flatMap(([id, { form, thread, pilot, length = 0, holds = 0 }]) =>
      form === 'rivet-nut' &&
      point.insert === 'rivet-nut' &&
      thread === point.stud &&
      pilot !== undefined &&
      (freeM === null || length <= freeM + 1e-9)
        ? [{ id, holeM: pilot, holds }]
        : [],
    )
    .toSorted((a, b) => inOrder(a.id, b.id) || b.holds - a.holds || (a.id < b.id ? -1 : 1));
  return { part: best?.id ?? null, holeM: best?.holeM ?? null, behind: point.behind, freeM };
}
