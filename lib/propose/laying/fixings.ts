import { groundAt, holeLines, holeRoom } from '../../board/cut/hole-room.ts';
import { drawOutline } from '../../board/shape/outline.ts';
import { threadM } from '../../board/strength/screw-thread.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import type { Around } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import type { DraftBoard } from '../draft/draft-terms.ts';

type SoundPoint = VehicleSpace['sound-points'][string];

/**
 * Fixes a board that writes no fixing at every sound point that lies under it with nothing behind, clear of its edges and
 * corners, by the shortest bolt that passes board and spacer by one diameter within the free depth. A board that has no
 * place of its own yet is not fixed: what lies under it is not known.
 */
export function fixBoards(draft: Draft, written: ReadonlySet<string>): void {
  for (const [id, board] of Object.entries(draft.boards)) {
    const space = draft.around.vehicle.spaces[draft.spaceOf(id) ?? ''];
    if (written.has(id) || !space || !board.outline) continue;
    if (!board.at) {
      draft.ask(
        ['boards', id],
        `${id} has no place in its space, so that no fixing can be proposed`,
        'write at: with the place of its lower left corner, or fixings:',
      );
      continue;
    }
    for (const [name, point] of pointsUnder(draft.around, board, space)) fixAt(draft, id, board, name, point);
  }
}

/** The sound points under a board that a bolt may use. */
function pointsUnder(
  around: Around,
  board: DraftBoard,
  space: VehicleSpace,
): readonly (readonly [string, SoundPoint])[] {
  return Object.entries(space['sound-points']).filter(
    ([, point]) => whyNotFixed(around, board, point) === null,
  );
}

/** What keeps a board from being fixed at a sound point by itself: why it does not serve; null where it does. */
export function whyNotFixed(
  { rules, parts }: Pick<Around, 'rules' | 'parts'>,
  { at, outline }: Pick<DraftBoard, 'at' | 'outline'>,
  point: SoundPoint,
): 'behind' | 'not-under' | 'edge' | 'corner' | null {
  if (point.behind !== 'nothing') return 'behind';
  const shape = outline && drawOutline(outline).shape;
  if (!shape || !at) return 'not-under';
  const lines = holeLines(shape);
  const hole = { xM: point.x - at.x, yM: point.y - at.y, diameterM: boltHoleM(parts, point) };
  if (groundAt(hole, lines) !== 'material') return 'not-under';
  const { toEdgeM, toCornerM } = holeRoom(hole, lines);
  if (toEdgeM < rules['hole-edge'].value) return 'edge';
  return toCornerM < rules['hole-corner'].value ? 'corner' : null;
}

/** The widest hole that a bolt of the catalogue asks for at a point; where none tells it, its thread. */
export function boltHoleM(parts: Around['parts'], { stud }: SoundPoint): number {
  const clearances = partsOfKind(parts, 'fixing').flatMap(([, part]) =>
    part.form === 'bolt' && part.thread === stud && part.clearance !== undefined ? [part.clearance] : [],
  );
  return Math.max(threadM(stud) ?? 0, ...clearances);
}

function fixAt(draft: Draft, board: string, given: DraftBoard, name: string, point: SoundPoint): void {
  const bolt = boltFor(draft.around, given, point);
  if (!bolt) {
    draft.ask(
      given.spacer === undefined ? ['boards', board] : ['boards', board, 'spacer'],
      `no bolt of the catalogue goes through ${board} into ${name} with ${point.stud} to hold by`,
      'add one to the catalogue, write another spacer:, or write fixings:',
    );
    return;
  }
  const why: Why = {
    rule: 'fixings',
    reason: `${name} is sound, with nothing behind; the shortest bolt that passes board and spacer by its diameter`,
    cp: true,
  };
  // The spacer is the board's: it stands under all of its fixings.
  draft.addFixing(board, name, { point: name, fixing: bolt }, why);
}

/** The shortest bolt that holds in a point through the board, whichever sheet of the shelf it may come to be. */
export function boltFor(
  around: Pick<Around, 'parts' | 'rules' | 'shop'>,
  board: { readonly sheet?: string | undefined; readonly spacer?: number | undefined },
  point: SoundPoint,
): string | null {
  const { parts, rules } = around;
  const inOrder = shelvedFirst(around.shop);
  const threadedM = (threadM(point.stud) ?? 0) * rules['thread-engagement'].value;
  const thicknesses = sheetsFor(around, board).map(({ thickness }) => thickness);
  const stackM = (board.spacer ?? 0) + Math.max(0, ...thicknesses);
  const thinM = (board.spacer ?? 0) + Math.min(...thicknesses);
  const fitting = Object.entries(parts).flatMap(([id, part]) => {
    if (part.kind !== 'fixing' || part.form !== 'bolt' || part.thread !== point.stud) return [];
    const lengthM = part.length ?? 0;
    const freeM = point['free-depth'] ?? Number.POSITIVE_INFINITY;
    return lengthM >= stackM + threadedM - 1e-9 && lengthM - thinM <= freeM + 1e-9 ? [{ id, lengthM }] : [];
  });
  const [best] = fitting.toSorted(
    (a, b) => a.lengthM - b.lengthM || inOrder(a.id, b.id) || (a.id < b.id ? -1 : 1),
  );
  return best?.id ?? null;
}

/** The sheet of a board, or those that it may come to be of: what is on the shelf, else all. */
export function sheetsFor(
  { parts, shop }: Pick<Around, 'parts' | 'shop'>,
  { sheet }: { readonly sheet?: string | undefined },
): readonly PartOf<'board-sheet'>[] {
  const all = Object.entries(parts).flatMap(([id, part]) =>
    part.kind === 'board-sheet' ? [{ id, part }] : [],
  );
  const named = all.filter(({ id }) => id === sheet);
  const shelved = all.filter(({ id }) => id in shop.stock);
  return (named.length > 0 ? named : shelved.length > 0 ? shelved : all).map(({ part }) => part);
}
