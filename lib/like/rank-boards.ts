import { computeAnew, type Keep, type Step } from '../model/keep.ts';
import { type Change, inOrderOfLabour, minutesOf } from './change.ts';
import { cheapestTurn, type Laid, type LaidPart, type ShapedBoard, type SpaceWish } from './lay-in-space.ts';
import { type ComingPart, type MatchedParts, matchParts } from './match-parts.ts';
import { matchSupply, type SupplyMatch } from './match-supply.ts';
import type { PastBoard } from './past-board.ts';
import { heightChanges, sizeChanges, warmthChanges } from './space-limits.ts';
import type { Wish, WishedSpace } from './wish.ts';

/** A past board held against a wish. */
export interface NearestBoard {
  readonly board: PastBoard;
  /** The shop's time for all that would have to change (min). */
  readonly minutes: number;
  /** True where the space is too small for what has to stand in it, whatever is changed of the board. */
  readonly blocked: boolean;
  /** In the order of labour. */
  readonly changes: readonly Change[];
  readonly place: Laid['place'];
  readonly parts: Omit<MatchedParts, 'coming' | 'changes'>;
  readonly supply: Omit<SupplyMatch, 'changes'>;
}

/** A board with all that is told without laying it into the space. */
interface HalfMatched {
  readonly board: PastBoard;
  readonly parts: MatchedParts;
  readonly supply: SupplyMatch;
  readonly changes: readonly Change[];
  readonly blocked: boolean;
  readonly leastMinutes: number;
}

/** So many past boards are told where nobody asks for another number. */
export const mostTold = 3;

/**
 * The past boards that ask for least work to serve a wish, the nearest first. Counted is the shop's time for all that
 * would have to change. Laid into the space are those alone that may still be among the nearest.
 *
 * @param most How many are wanted.
 */
export function nearestBoards(
  wish: Wish,
  past: readonly PastBoard[],
  most: number,
  keep: Keep = computeAnew,
): NearestBoard[] {
  const half = past
    .map((board) => halfMatched(wish, board))
    .toSorted((a, b) => Number(a.blocked) - Number(b.blocked) || a.leastMinutes - b.leastMinutes);
  let found: NearestBoard[] = [];
  for (const one of half) {
    const last = found[most - 1];
    if (last && (Number(one.blocked) - Number(last.blocked) || one.leastMinutes - last.minutes) > 0) break;
    found = [...found, laidIn(wish, one, keep)]
      .toSorted((a, b) => byNearness(wish.space, a, b))
      .slice(0, most);
  }
  return found;
}

/** Work first; then what less is left out of, what is not turned, what stood in the same space; the newest first. */
function byNearness(space: WishedSpace, a: NearestBoard, b: NearestBoard): number {
  const stoodElsewhere = ({ board }: NearestBoard): number =>
    Number(board.vehicle !== space.vehicle || board.space !== space.id);
  const key = (one: NearestBoard): readonly number[] => [
    Number(one.blocked),
    one.minutes,
    one.parts.leftOut.length,
    Number((one.place?.turnDeg ?? 0) !== 0),
    stoodElsewhere(one),
    one.board.stops,
  ];
  const [mine, other] = [key(a), key(b)];
  const differs = mine.findIndex((value, at) => value !== other[at]);
  if (differs >= 0) return (mine[differs] ?? 0) - (other[differs] ?? 0);
  if (a.board.issuedOn !== b.board.issuedOn) return a.board.issuedOn > b.board.issuedOn ? -1 : 1;
  const name = ({ board }: NearestBoard): string => `${board.job} ${board.board}`;
  return name(a) < name(b) ? -1 : 1;
}

function halfMatched(wish: Wish, board: PastBoard): HalfMatched {
  const parts = matchParts(board, wish.parts, wish.rules);
  const supply = matchSupply(board, parts.coming, wish.rules);
  const changes = [
    ...parts.changes,
    ...supply.changes,
    ...heightChanges(wish, board, parts.coming),
    ...sizeChanges(wish, board),
    ...warmthChanges(wish, parts.coming),
  ];
  const blocked = changes.some(({ blocks }) => blocks);
  return { board, parts, supply, changes, blocked, leastMinutes: minutesOf(changes) };
}

/** A board that is laid into a space, with all that its place follows from. */
interface ToLay {
  readonly wish: SpaceWish;
  readonly board: ShapedBoard;
  readonly coming: readonly LaidPart[];
}

/** The search for a place is worth keeping: most boards and spaces stay as they are when one is edited. */
const layStep: Step<ToLay, Laid> = {
  id: 'past-board-in-space',
  compute: ({ wish, board, coming }) => cheapestTurn(wish, board, coming),
};

function laidIn(
  wish: Wish,
  { board, parts, supply, changes, blocked }: HalfMatched,
  keep: Keep,
): NearestBoard {
  const { space, rules } = wish;
  const { clearanceM, holeEdgeM, minutes } = rules;
  const { outline, cutouts, thicknessM, standoffM, datum, fixings, exits } = board;
  const { place, changes: ofSpace } = keep(layStep, {
    wish: { space: shapeOf(space), rules: { clearanceM, holeEdgeM, minutes } },
    board: { board: board.board, outline, cutouts, thicknessM, standoffM, datum, fixings, exits },
    coming: parts.coming.map(toLay),
  });
  const all = [...changes, ...ofSpace];
  const { coming: _, changes: __, ...names } = parts;
  return {
    ...{ board, blocked, place },
    minutes: minutesOf(all),
    changes: inOrderOfLabour(all),
    parts: names,
    supply: { hadA: supply.hadA, needsA: supply.needsA },
  };
}

/** What of a space a place in it follows from. */
function shapeOf({ outline, inTheWay, soundPoints, open, reached }: WishedSpace): SpaceWish['space'] {
  return { outline, inTheWay, soundPoints, open, reached };
}

function toLay({ item, part, placed }: ComingPart): LaidPart {
  if (!placed) return { item, part, placed };
  const { at, heightM, raisedM, keepClear } = placed;
  return { item, part, placed: { at, heightM, raisedM, keepClear } };
}
