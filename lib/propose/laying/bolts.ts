import { threadM } from '../../board/strength/screw-thread.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import type { Around } from '../draft/around.ts';

export type SoundPoint = VehicleSpace['sound-points'][string];
/** What bolts are chosen from. */
type Catalogue = Pick<Around, 'parts' | 'rules' | 'shop'>;

/** A sheet of the catalogue by its name. */
export interface NamedSheet {
  readonly id: string;
  readonly part: PartOf<'board-sheet'>;
}

/** A bolt of the catalogue by its name, and its length below the head, metres. */
export interface NamedBolt {
  readonly id: string;
  readonly lengthM: number;
}

/** The widest hole that a bolt of the catalogue asks for at a point; where none tells it, its thread. */
export function boltHoleM(parts: Around['parts'], { stud }: SoundPoint): number {
  const clearances = partsOfKind(parts, 'fixing').flatMap(([, part]) =>
    part.form === 'bolt' && part.thread === stud && part.clearance !== undefined ? [part.clearance] : [],
  );
  return Math.max(threadM(stud) ?? 0, ...clearances);
}

/** The bolts of the catalogue that go into the thread of a point, the shortest first, of one length one on the shelf first. */
export function boltsInto({ parts, shop }: Catalogue, { stud }: SoundPoint): readonly NamedBolt[] {
  const inOrder = shelvedFirst(shop);
  return partsOfKind(parts, 'fixing')
    .flatMap(([id, { form, thread, length = 0 }]) =>
      form === 'bolt' && thread === stud ? [{ id, lengthM: length }] : [],
    )
    .toSorted((a, b) => a.lengthM - b.lengthM || inOrder(a.id, b.id) || (a.id < b.id ? -1 : 1));
}

/**
 * How long a bolt has to be that holds in a point, metres: it passes board and spacer, `stackM`, by the thread that the
 * house asks for, and by no more than is free behind.
 */
export function boltLengths(
  { rules }: Catalogue,
  stackM: number,
  point: SoundPoint,
): { readonly leastM: number; readonly mostM: number } {
  const threadedM = (threadM(point.stud) ?? 0) * rules['thread-engagement'].value;
  return {
    leastM: stackM + threadedM,
    mostM: stackM + (point['free-depth'] ?? Number.POSITIVE_INFINITY),
  };
}

/** True for a bolt that holds in a point through a board and its spacer, metres. */
export function holdsIn(around: Catalogue, lengthM: number, stackM: number, point: SoundPoint): boolean {
  const { leastM, mostM } = boltLengths(around, stackM, point);
  return lengthM >= leastM - 1e-9 && lengthM <= mostM + 1e-9;
}

/**
 * The bolt that holds in a point through the most of the sheets that the board may come to be of, the shortest of these:
 * a sheet that it does not suit is not chosen later. Null where none holds through any.
 */
export function boltFor(
  around: Catalogue,
  board: { readonly sheet?: string | undefined; readonly spacer?: number | undefined },
  point: SoundPoint,
): string | null {
  const stacks = sheetsFor(around, board).map(({ part }) => (board.spacer ?? 0) + part.thickness);
  const suits = boltsInto(around, point).map(({ id, lengthM }) => ({
    id,
    count: stacks.filter((stackM) => holdsIn(around, lengthM, stackM, point)).length,
  }));
  const most = Math.max(0, ...suits.map(({ count }) => count));
  return suits.find(({ count }) => count === most && most > 0)?.id ?? null;
}

/** The sheet of a board, or those that it may come to be of: what is on the shelf, else all. */
export function sheetsFor(
  around: Pick<Around, 'parts' | 'shop'>,
  { sheet }: { readonly sheet?: string | undefined },
): readonly NamedSheet[] {
  const all = partsOfKind(around.parts, 'board-sheet').map(([id, part]) => ({ id, part }));
  const named = all.filter(({ id }) => id === sheet);
  const shelved = all.filter(({ id }) => id in around.shop.stock);
  return named.length > 0 ? named : shelved.length > 0 ? shelved : all;
}
