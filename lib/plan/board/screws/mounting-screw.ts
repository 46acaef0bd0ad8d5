import { pastFootM } from '../../../board/cut/drill.ts';
import { threadM } from '../../../board/strength/screw-thread.ts';
import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { PartOf } from '../../../model/kinds/index.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';

/** What a screw goes into, metres: the board, and what is free behind it. */
export interface ScrewedInto {
  readonly thicknessM: number;
  readonly freeM: number;
  /** The screw that the job names for it. */
  readonly screw?: string;
}

/** A board as screws go into it: what is free behind is as deep as its lowest spacer, on which it stands off its panel. */
export function screwedInto({ given }: Pick<Board, 'given'>, thicknessM: number): ScrewedInto {
  const spacers = Object.values(given.fixings).map(({ spacer }) => spacer ?? 0);
  const freeM = spacers.length > 0 ? Math.min(...spacers) : (given.spacer ?? 0);
  return { thicknessM, freeM, ...(given.screw !== undefined && { screw: given.screw }) };
}

/** What the head of a screw bears on, metres: as its part tells, else twice its thread; null where neither is known. */
export function headOf({
  'bears-on': told,
  thread,
}: PartOf<'fixing'>): { faceM: number; told: boolean } | null {
  if (told !== undefined) return { faceM: told, told: true };
  const diameterM = thread === undefined ? null : threadM(thread);
  return diameterM === null ? null : { faceM: 2 * diameterM, told: false };
}

/** A fixing of the catalogue by its id. */
export interface NamedFixing {
  readonly id: string;
  readonly part: PartOf<'fixing'>;
}

/** A hole of a part for a screw: how wide, and the foot round it. */
export interface ScrewHole {
  readonly diameterM: number;
  readonly footM?: number;
}

/**
 * The wood screw that passes a mounting hole: of those whose head is wider than it, that bite as the house rules ask, and
 * that reach no farther than is free behind the board, one from the shelf before one to buy, then the thickest, then the
 * shortest. Where none is all of that, the one that lacks least in that order. Null where none passes. One that the job
 * names is taken as it is.
 */
export function mountingScrew(
  hole: ScrewHole,
  { parts, rules, shop }: Pick<Job, 'parts' | 'rules' | 'shop'>,
  into: ScrewedInto,
): NamedFixing | null {
  const leastM = rules['screw-bite'].value;
  const rank = ({ id, part }: NamedFixing): readonly number[] => {
    const { clearance = 0 } = part;
    const length = part.length === undefined ? undefined : pastFootM(part.length, hole);
    const head = headOf(part);
    return [
      Number(head !== null && head.faceM <= hole.diameterM),
      Number(length === undefined || Math.min(length, into.thicknessM) < leastM - 1e-9),
      Number(length !== undefined && length > into.thicknessM + into.freeM + 1e-9),
      Number(piecesOf(shop.stock[id]) <= 0),
      -clearance,
      length ?? 0,
    ];
  };
  const [best] = partsOfKind(parts, 'fixing')
    .flatMap(([id, part]) => (part.form === 'wood-screw' && part.pilot !== undefined ? [{ id, part }] : []))
    .filter(({ id }) => into.screw === undefined || id === into.screw)
    .filter(({ part }) => (part.clearance ?? Number.POSITIVE_INFINITY) <= hole.diameterM + 1e-6)
    .map((one) => ({ one, ranks: rank(one) }))
    .toSorted((a, b) => firstDifference(a.ranks, b.ranks) || (a.one.id < b.one.id ? -1 : 1));
  return best?.one ?? null;
}

function firstDifference(own: readonly number[], other: readonly number[]): number {
  return own.map((value, at) => value - (other[at] ?? 0)).find((by) => by !== 0) ?? 0;
}
