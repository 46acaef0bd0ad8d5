import { turnedSide } from '../board/layout/item.ts';
import { flatten } from '../board/shape/bulge.ts';
import { boxOf, type Point, type Ring } from '../board/shape/point.ts';
import { length, phrase } from '../model/phrase.ts';
import { edgeSchema } from '../model/vocabulary.ts';
import { counted, listed } from '../rules/words.ts';
import { type Change, minutesOf } from './change.ts';
import type { CheapestPlace } from './cheapest-place.ts';
import type { ComingPart } from './match-parts.ts';
import type { PastBoard } from './past-board.ts';
import { type AskedOfPlace, type BoardToPlace, type PlaceRules, placeInSpace } from './place-in-space.ts';
import { type BoardTurn, boardTurns, type SeenSpace, turnedPoint, turnedSpace } from './turned-space.ts';
import type { WishedSpace } from './wish.ts';

/** What a space asks of a board that is laid into it. */
export interface SpaceWish {
  readonly space: SeenSpace & Pick<WishedSpace, 'reached'>;
  readonly rules: PlaceRules;
}

/** What of a part the place of its board follows from. */
export interface LaidPart extends Pick<ComingPart, 'item' | 'part'> {
  readonly placed: Pick<NonNullable<ComingPart['placed']>, 'at' | 'heightM' | 'raisedM' | 'keepClear'> | null;
}

/** What of a past board its place in a space follows from. */
export type ShapedBoard = Pick<
  PastBoard,
  'board' | 'outline' | 'cutouts' | 'thicknessM' | 'standoffM' | 'datum' | 'fixings' | 'exits'
>;

/** A board laid into a space. */
export interface Laid {
  /** Where its datum stands in the space, and how the board is turned there; null where it does not go in as it is. */
  readonly place: (Point & { readonly turnDeg: BoardTurn }) | null;
  readonly changes: readonly Change[];
}

/** The board in the space, turned as it costs least; with a new outline where that costs less than all else, or is the only way. */
export function cheapestTurn(wish: SpaceWish, board: ShapedBoard, coming: readonly LaidPart[]): Laid {
  const toPlace = boardToPlace(board, coming);
  const anew = newOutline(wish, board, toPlace.ring, coming.length);
  let best: Laid = { place: null, changes: [anew] };
  for (const turn of boardTurns) {
    const space = turnedSpace(wish.space, turn);
    const exits = exitChanges(wish, board, turn);
    const below = minutesOf(best.changes) - minutesOf(exits) + (best.place ? 0 : hairMinutes);
    const first = turn === 0 ? [board.datum] : [];
    const found = placeInSpace(toPlace, space, wish.rules, { first, below });
    if (!found) continue;
    best = {
      place: { ...turnedPoint(found.at, turn), turnDeg: turn },
      changes: [...(turn === 0 ? [] : [turned(board, turn)]), ...exits, ...placeChanges(found)],
    };
    if (minutesOf(best.changes) === 0) break;
  }
  return best;
}

/** The worst place that a board goes in at asks for as much as a new outline, and is told all the same. */
const hairMinutes = 1e-6;

/** What no chord of a flattened arc stands further than from it, metres. */
const chordM = 0.0002;

function boardToPlace(board: ShapedBoard, coming: readonly LaidPart[]): BoardToPlace {
  const faceM = board.standoffM + board.thicknessM;
  return {
    ring: flatten(board.outline, chordM),
    openings: board.cutouts.map((loop) => flatten(loop, chordM)),
    ...{ fromM: board.standoffM, toM: faceM, fixings: board.fixings.length, datum: board.datum },
    parts: coming.flatMap(({ item, part, placed }) => {
      if (!placed) return [];
      const fromM = faceM + placed.raisedM;
      const { at, keepClear } = placed;
      return [{ id: item ?? part, at, fromM, toM: fromM + placed.heightM, keepClear }];
    }),
  };
}

function turned({ board }: ShapedBoard, turn: BoardTurn): Change {
  return {
    kind: 'turned',
    of: [board],
    minutes: 0,
    blocks: false,
    told: `turn the whole layout by ${turn} degrees, counter-clockwise`,
  };
}

/** A new outline: the board is cut anew, and its parts, what holds it and the wires that leave it find other places. */
function newOutline(
  { space, rules: { minutes } }: SpaceWish,
  { fixings, exits }: ShapedBoard,
  ring: Ring,
  parts: number,
): Change {
  const wires = edgeSchema.options.reduce((sum, edge) => sum + (exits[edge] ?? 0), 0);
  const [own, room] = [boxOf(ring), boxOf(space.outline)];
  const [widthM, heightM] = [own.maxX - own.minX, own.maxY - own.minY];
  const [roomX, roomY] = [room.maxX - room.minX, room.maxY - room.minY];
  const ways = [
    { wider: widthM - roomX, higher: heightM - roomY },
    { wider: heightM - roomX, higher: widthM - roomY },
  ];
  const over = ({ wider, higher }: (typeof ways)[number]) => Math.max(0, wider) + Math.max(0, higher);
  const [way = { wider: 0, higher: 0 }] = ways.toSorted((a, b) => over(a) - over(b));
  const wider = way.wider > 0 ? [phrase`${length('overlap', way.wider)} too wide`] : [];
  const higher = way.higher > 0 ? [phrase`${length('overlap', way.higher)} too high`] : [];
  const [first, second] = [...wider, ...higher];
  const past = space.inTheWay.length > 0 ? ` past ${listed(space.inTheWay.map(({ id }) => id))}` : '';
  const why = !first
    ? `as it is it does not go in${past}, whichever way it is turned`
    : second
      ? phrase`it is ${first} and ${second} for the space`
      : phrase`it is ${first} for the space`;
  return {
    kind: 'new-outline',
    of: [],
    minutes:
      minutes['cut-board'] + (parts + fixings.length) * minutes['mount-item'] + wires * minutes['lay-wire'],
    blocks: false,
    told: phrase`cut another outline and place ${counted(parts, 'part')} on it anew: ${why}`,
  };
}

/** What a place lacks, as changes: one for each kind. */
function placeChanges({ lacking }: CheapestPlace<AskedOfPlace>): Change[] {
  const ofKind = (kind: AskedOfPlace['kind']) => lacking.filter((one) => one.kind === kind);
  const change = (kind: AskedOfPlace['kind'], told: Change['told']): Change[] => {
    const own = ofKind(kind);
    if (own.length === 0) return [];
    return [
      { kind, of: own.flatMap(({ part }) => part ?? []), minutes: minutesOf(own), blocks: false, told },
    ];
  };
  const [edge] = ofKind('trimmed-edge');
  const rooms = ofKind('kept-clear').flatMap(({ part }) => part ?? []);
  const points = ofKind('fixings').length;
  return [
    ...change(
      'trimmed-edge',
      phrase`take the edge back where the board comes too near to what bounds the space: ${length('room-asked', edge?.lackM ?? 0)} at least`,
    ),
    ...change(
      'kept-clear',
      `move ${listed(rooms)} on the board: no room is left there for hand, tool or plugs`,
    ),
    ...change(
      'fixings',
      `find another hold for ${counted(points, 'fixing')}: no more sound points lie under the board, off its edges and its parts`,
    ),
  ];
}

/** Wires that leave over an edge that no way of the vehicle reaches; edges are told as the space has them. */
function exitChanges(
  { space: { reached }, rules: { minutes } }: SpaceWish,
  { exits }: ShapedBoard,
  turn: BoardTurn,
): Change[] {
  if (reached.length === 0) return [];
  return edgeSchema.options.flatMap((edge): Change[] => {
    const wires = exits[edge] ?? 0;
    const over = turnedSide(edge, turn);
    if (wires === 0 || reached.includes(over)) return [];
    return [
      {
        kind: 'exits',
        of: [],
        minutes: wires * minutes['lay-wire'],
        blocks: false,
        told: `lead ${counted(wires, 'wire')} over another edge than the ${over} one of the space: ways of the vehicle reach ${listed(reached)}`,
      },
    ];
  });
}
