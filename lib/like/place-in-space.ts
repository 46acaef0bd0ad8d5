import { roomInFront, type Side } from '../board/layout/item.ts';
import { type Box, boxOf, type Point, type Ring, ringOfBox } from '../board/shape/point.ts';
import type { KeepClear } from '../model/plan/index.ts';
import { depthIn, moveApartM, moveBoxesApartM, moveBoxInsideM, moveInsideM } from './apart.ts';
import { type Asked, type CheapestPlace, cheapestPlace, type Lacks } from './cheapest-place.ts';
import type { SeenSpace } from './turned-space.ts';
import type { InTheWay, LikeRules } from './wish.ts';

/** A part that stands on the board to come. Metres, in the axes of the board; heights from the mounting plane. */
export interface StandingPart {
  readonly id: string;
  readonly at: Box;
  readonly fromM: number;
  readonly toM: number;
  readonly keepClear: readonly KeepClear[];
}

/** A board as it is to go into a space. Metres, in its own axes; heights from the mounting plane. */
export interface BoardToPlace {
  readonly ring: Ring;
  readonly openings: readonly Ring[];
  readonly fromM: number;
  readonly toM: number;
  readonly parts: readonly StandingPart[];
  /** How many fixings held it. */
  readonly fixings: number;
  /** Where its datum stands in the space that it was made for. */
  readonly datum: Point;
}

/** What a shop asks of a place, and how long it takes to mend what it lacks. */
export type PlaceRules = Pick<LikeRules, 'clearanceM' | 'holeEdgeM' | 'minutes'>;

/** What a place is asked for. */
export interface AskedOfPlace extends Asked {
  readonly kind: 'trimmed-edge' | 'kept-clear' | 'fixings';
  /** The part whose room it is; none for the edge and the fixings. */
  readonly part: string | null;
}

/** Where the datum of a board can be in a space at all: its box in the box of the space. Null where it is too long or too wide. */
export function rangeIn(ring: Ring, outline: Ring): Box | null {
  const [own, room] = [boxOf(ring), boxOf(outline)];
  const range = {
    minX: room.minX - own.minX,
    minY: room.minY - own.minY,
    maxX: room.maxX - own.maxX,
    maxY: room.maxY - own.maxY,
  };
  const hairM = 1e-9;
  return range.maxX < range.minX - hairM || range.maxY < range.minY - hairM ? null : range;
}

/** The place that costs least in a space as the board sees it; null where it has none below `below` minutes. */
export function placeInSpace(
  board: BoardToPlace,
  space: SeenSpace,
  rules: PlaceRules,
  { first, below }: { readonly first: readonly Point[]; readonly below: number },
): CheapestPlace<AskedOfPlace> | null {
  const range = rangeIn(board.ring, space.outline);
  if (!range) return null;
  return cheapestPlace(range, first, (at) => lacksAt(board, shifted(space, at), rules), below);
}

/** The space in the axes of the board, its datum at a place. */
function shifted(space: SeenSpace, { xM: x, yM: y }: Point): SeenSpace {
  const move = <P extends Point>(p: P): P => ({ ...p, xM: p.xM - x, yM: p.yM - y });
  return {
    ...space,
    outline: space.outline.map(move),
    soundPoints: space.soundPoints.map(move),
    inTheWay: space.inTheWay.map((one) => ({
      ...one,
      at: { minX: one.at.minX - x, minY: one.at.minY - y, maxX: one.at.maxX - x, maxY: one.at.maxY - y },
    })),
  };
}

function lacksAt(board: BoardToPlace, space: SeenSpace, rules: PlaceRules): Lacks<AskedOfPlace> {
  return { outM: outOfSpaceM(board, space, 0), asked: () => askedAt(board, space, rules) };
}

function askedAt(board: BoardToPlace, space: SeenSpace, rules: PlaceRules): AskedOfPlace[] {
  const { minutes, clearanceM } = rules;
  const edge: AskedOfPlace = {
    kind: 'trimmed-edge',
    part: null,
    lackM: outOfSpaceM(board, space, clearanceM),
    minutes: minutes['cut-board'],
  };
  const rooms = board.parts.map((part): AskedOfPlace => {
    return {
      kind: 'kept-clear',
      part: part.id,
      lackM: roomsLackM(part, space),
      minutes: minutes['mount-item'],
    };
  });
  const points = space.soundPoints.map((p) => fixingLackM(p, board, rules)).toSorted((a, b) => a - b);
  const fixings = Array.from({ length: board.fixings }, (_, at): AskedOfPlace => {
    const lackM = points[at] ?? Number.POSITIVE_INFINITY;
    return { kind: 'fixings', part: null, lackM, minutes: minutes['mount-item'] };
  });
  return [edge, ...rooms, ...fixings];
}

/** How far the board would have to move at least to be in the space with all that it carries, clear of what is in its way. */
function outOfSpaceM(board: BoardToPlace, space: SeenSpace, roomM: number): number {
  const { ring, parts } = board;
  const box = boxOf(ring);
  const beyond = parts.filter(
    ({ at }) => at.minX < box.minX || at.minY < box.minY || at.maxX > box.maxX || at.maxY > box.maxY,
  );
  return Math.max(
    moveInsideM(ring, space.outline, roomM),
    ...beyond.map(({ at }) => moveBoxInsideM(at, space.outline, roomM)),
    ...space.inTheWay.flatMap((one) => [
      fromBoardM(board, one, roomM),
      ...parts
        .filter(({ fromM }) => fromM - one.toM < roomM - 1e-9)
        .map(({ at }) => moveBoxesApartM(at, one.at, roomM)),
    ]),
  );
}

/** The same for the board itself and one thing in its way: beside it, below it, or in an opening of it. */
function fromBoardM({ ring, openings, fromM }: BoardToPlace, one: InTheWay, roomM: number): number {
  if (fromM - one.toM >= roomM - 1e-9) return Number.NEGATIVE_INFINITY;
  const its = ringOfBox(one.at);
  return Math.min(
    moveApartM(ring, its, roomM),
    ...openings.map((opening) => moveInsideM(its, opening, roomM)),
  );
}

/**
 * How far a part would have to move at least for hand, tool and plugs to have their rooms up to the walls of the space and
 * to what stands in it. Air is not among it: the warmth of the space tells of that.
 */
function roomsLackM({ at, fromM, toM, keepClear }: StandingPart, space: SeenSpace): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const { kind, side, depthM } of keepClear) {
    if (kind === 'air') continue;
    const strip = roomInFront({ ...at, minZ: fromM, maxZ: toM }, side, depthM);
    if (!isOpen(space, side)) most = Math.max(most, moveBoxInsideM(strip, space.outline, 0));
    for (const one of space.inTheWay)
      if (one.toM > fromM + 1e-9) most = Math.max(most, moveBoxesApartM(strip, one.at, 0));
  }
  return most;
}

function isOpen({ open }: SeenSpace, side: Side): boolean {
  return open.includes(side);
}

/** How far the board would have to move at least for a sound point to come through it, off its edges and its parts. */
function fixingLackM(p: Point, { ring, openings, parts }: BoardToPlace, { holeEdgeM }: PlaceRules): number {
  const here = { minX: p.xM, minY: p.yM, maxX: p.xM, maxY: p.yM };
  return Math.max(
    holeEdgeM - depthIn(p, ring),
    ...openings.map((opening) => holeEdgeM + depthIn(p, opening)),
    ...parts.map(({ at }) => moveBoxesApartM(here, at, 0)),
  );
}
