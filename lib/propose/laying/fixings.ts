import { groundAt, holeLines, holeRoom } from '../../board/cut/hole-room.ts';
import { drawOutline } from '../../board/shape/outline.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { Around } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import type { DraftBoard } from '../draft/draft-terms.ts';
import { boltStacks, type OverPoints } from './bolt-stacks.ts';
import { boltFor, boltHoleM, type SoundPoint, sheetsFor } from './bolts.ts';
import { type AlikePoints, noBolt } from './no-bolt.ts';

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
    const tops = draft.own.flatMap(({ board: on, facts, given }) =>
      on === id && facts.footprint ? [facts.footprint.heightM + (given?.raised ?? 0)] : [],
    );
    const points = pointsUnder(draft.around, board, space);
    fixAt(draft, id, { board, space, points, tallestM: Math.max(0, ...tops) });
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

/** Fixes a board at points of its space: on the spacer that it writes, or on the least that holds it where it writes none. */
function fixAt(draft: Draft, board: string, over: OverPoints): void {
  const { around } = draft;
  const spacerM = over.board.spacer === undefined ? spacerFor(around, over) : null;
  const given = spacerM === null ? over.board : { ...over.board, spacer: spacerM };
  const unheld: (readonly [string, SoundPoint])[] = [];
  for (const [name, point] of over.points) {
    const bolt = boltFor(around, given, point);
    if (!bolt) {
      unheld.push([name, point]);
      continue;
    }
    const lift =
      spacerM === null ? '' : '; the least spacer of the shelf that it holds and stands clear with';
    const why: Why = {
      rule: 'fixings',
      reason: `${name} is sound, with nothing behind; the shortest bolt that passes board and spacer by its diameter${lift}`,
      cp: true,
    };
    // A spacer that is written is the board's: it stands under all of its fixings.
    const spacer = spacerM === null ? {} : { spacer: `${Math.round(spacerM * 1000)} mm` };
    draft.addFixing(board, name, { point: name, fixing: bolt, ...spacer }, why);
  }
  for (const alike of byThread(unheld)) {
    const { message, remedy } = noBolt(around, board, over, alike);
    draft.ask(
      over.board.spacer === undefined ? ['boards', board] : ['boards', board, 'spacer'],
      message,
      remedy,
    );
  }
}

/**
 * The spacer for a board that writes none, where it does not hold, or does not stand clear, without; else null. Where the
 * sheet is open, it is the least that holds through the most of the shelf.
 */
function spacerFor(around: Around, over: OverPoints): number | null {
  const stacks = boltStacks(around, over, sheetsFor(around, over.board));
  const counts = new Map<number, number>();
  for (const { spacerM } of stacks) counts.set(spacerM, (counts.get(spacerM) ?? 0) + 1);
  if ((counts.get(0) ?? 0) > 0) return null;
  const [best] = [...counts].toSorted(([a, countA], [b, countB]) => countB - countA || a - b);
  return best?.[0] ?? null;
}

/** Points by what they take: those that the same bolts hold in or do not. */
function byThread(points: readonly (readonly [string, SoundPoint])[]): readonly AlikePoints[] {
  const groups = new Map<string, AlikePoints>();
  for (const [name, point] of points) {
    const key = `${point.stud} ${point['free-depth'] ?? ''}`;
    groups.set(key, { names: [...(groups.get(key)?.names ?? []), name], point });
  }
  return [...groups.values()];
}
