import type { Box, Point } from '../shape/point.ts';
import {
  type Beneath,
  type Body,
  bodyOf,
  type Item,
  onBoard,
  type PlacedTerminal,
  type Placement,
  type Raising,
  type Side,
  type SideRoom,
  sides,
  type TurnDeg,
  terminalOnBoard,
  turnedSide,
} from './item.ts';

/** What stays the same of an item wherever it stands, turned one way. Searches place items very often. */
interface Turned {
  /** What it has in common with parts that are to stand alike: its kind, and within it its size. */
  readonly kind: string;
  readonly size: string;
  readonly rooms: Readonly<Partial<Record<Side, SideRoom>>>;
  /** Its terminals, from the lower left corner of its footprint as turned. */
  readonly terminals: ReadonlyMap<string, PlacedTerminal>;
  /** The sides that have terminals, and the room that plugs and bends need in front of each. */
  readonly mouths: readonly { readonly side: Side; readonly neededM: number }[];
  /** What it shares out among the others; null: nothing. */
  readonly shares: 'feed' | 'ground' | null;
  /** Null where nothing that the search raises may stand over it. */
  readonly beneath: Beneath | null;
}

/** An item where it stands: its body, and its rooms and terminals as turned. */
export interface PlacedItem extends Turned {
  readonly id: string;
  readonly body: Body;
  readonly turnDeg: TurnDeg;
  readonly gapM: number;
  /** The greatest room or gap that it asks for on any side. */
  readonly reachM: number;
  readonly faceAccess: boolean;
  /** Air that it asks for over its face, metres; null: what its sides ask for. */
  readonly airOverM: number | null;
  readonly massKg: number;
  /** Where it is screwed down, where the search has raised it. */
  readonly screws: readonly (Point & { readonly radiusM: number })[];
  /** Null where the search has not raised it. */
  readonly raising: Raising | null;
}

/** Room in front of terminals where an item asks for none, metres: enough to turn a thin wire (common practice). */
const leastMouthM = 0.02;

/** An item put where a placement says; `partGapM` where it asks for no gap of its own. */
export function place(item: Item, at: Placement, partGapM: number): PlacedItem {
  const { kind, size, rooms, terminals, mouths, shares, beneath, askedM } = turnedItem(item, at.turnDeg);
  const gapM = item.gapM ?? partGapM;
  const raising = at.heightM > 0 ? (item.raising ?? null) : null;
  return {
    id: item.id,
    kind,
    size,
    body: bodyOf(item, at),
    turnDeg: at.turnDeg,
    rooms,
    gapM,
    reachM: Math.max(gapM, askedM),
    faceAccess: item.faceAccess ?? false,
    airOverM: item.airOverM ?? null,
    massKg: item.massKg,
    terminals,
    mouths,
    shares,
    screws: raising ? screwsOf(item, at) : noScrews,
    raising,
    beneath,
  };
}

const noScrews: PlacedItem['screws'] = [];

function screwsOf(item: Item, at: Placement): PlacedItem['screws'] {
  return (item.mountingHoles ?? []).map((hole) => ({
    ...onBoard(item, at, hole),
    radiusM: hole.diameterM / 2,
  }));
}

type TurnedItem = Turned & { readonly askedM: number };

/** By turn, for as long as the item is in use. */
const turnedKnown = new WeakMap<Item, Map<TurnDeg, TurnedItem>>();

function turnedItem(item: Item, turnDeg: TurnDeg): TurnedItem {
  const known = turnedKnown.get(item) ?? new Map<TurnDeg, TurnedItem>();
  turnedKnown.set(item, known);
  const before = known.get(turnDeg);
  if (before) return before;
  const own = asTurned(item, turnDeg);
  known.set(turnDeg, own);
  return own;
}

function asTurned(item: Item, turnDeg: TurnDeg): TurnedItem {
  const at: Placement = { item: item.id, xM: 0, yM: 0, turnDeg, heightM: 0 };
  const rooms = sides.flatMap((side) => {
    const room = item.rooms[side];
    return room ? [[turnedSide(side, turnDeg), room] as const] : [];
  });
  return {
    kind: item.kind ?? '',
    size: `${item.widthM} ${item.depthM} ${item.heightM}`,
    rooms: Object.fromEntries(rooms),
    askedM: Math.max(0, ...rooms.flatMap(([, room]) => roomKinds.map((kind) => room[kind] ?? 0))),
    terminals: new Map(item.terminals.map((terminal) => [terminal.id, terminalOnBoard(item, at, terminal)])),
    mouths: [...new Set(item.terminals.map(({ side }) => side))].map((side) => ({
      side: turnedSide(side, turnDeg),
      neededM: item.rooms[side]?.bendM ?? leastMouthM,
    })),
    shares: item.shares ?? null,
    beneath: item.beneath
      ? {
          ...item.beneath,
          wires: item.beneath.wires.map((wire) => ({ ...wire, side: turnedSide(wire.side, turnDeg) })),
        }
      : null,
  };
}

/** Shortest distance between two bodies in plan, metres; 0 or below where their footprints overlap. */
export function planGapM(a: Body, b: Body): number {
  const dx = Math.max(b.minX - a.maxX, a.minX - b.maxX);
  const dy = Math.max(b.minY - a.maxY, a.minY - b.maxY);
  return dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy);
}

/** True where two bodies share some height. */
export function sameHeight(a: Body, b: Body): boolean {
  return a.minZ < b.maxZ - 1e-9 && b.minZ < a.maxZ - 1e-9;
}

/** Free distance from a side of `a` straight to `b`, metres; infinite where `b` does not stand in front of it. */
export function freeInFrontM(a: Body, side: Side, b: Body): number {
  if (!sameHeight(a, b)) return Infinity;
  const level = side === 'left' || side === 'right';
  const beside = level
    ? b.minY < a.maxY - 1e-9 && a.minY < b.maxY - 1e-9
    : b.minX < a.maxX - 1e-9 && a.minX < b.maxX - 1e-9;
  if (!beside || pastM(a, side, b) <= 1e-9) return Infinity;
  return Math.max(0, beforeM(a, side, b));
}

/** From a side of `a` to the near side of `b`. */
function beforeM(a: Body, side: Side, b: Body): number {
  if (side === 'right') return b.minX - a.maxX;
  if (side === 'left') return a.minX - b.maxX;
  return side === 'top' ? b.minY - a.maxY : a.minY - b.maxY;
}

/** From a side of `a` to the far side of `b`. */
function pastM(a: Body, side: Side, b: Body): number {
  if (side === 'right') return b.maxX - a.maxX;
  if (side === 'left') return a.minX - b.minX;
  return side === 'top' ? b.maxY - a.maxY : a.minY - b.minY;
}

/** Free distance from a side of a body straight to the side of a box round the board, metres. */
export function freeToSideM(body: Body, side: Side, box: Box): number {
  if (side === 'right') return box.maxX - body.maxX;
  if (side === 'left') return body.minX - box.minX;
  return side === 'top' ? box.maxY - body.maxY : body.minY - box.minY;
}

/** What a side's room is for. */
export const roomKinds = ['airM', 'accessM', 'toolM', 'bendM'] as const;
export type RoomKind = (typeof roomKinds)[number];

/** Room in front of a side that another item takes. */
export interface Shortfall {
  readonly kind: RoomKind | 'gapM';
  /** The side as it faces on the board; null for the gap all round. */
  readonly side: Side | null;
  readonly freeM: number;
  readonly neededM: number;
}

/** The rooms of `a` that `b` takes away. */
export function shortfalls(a: PlacedItem, b: PlacedItem): readonly Shortfall[] {
  const found: Shortfall[] = [];
  if (planGapM(a.body, b.body) > a.reachM) return found;
  for (const side of sides) {
    const room = a.rooms[side];
    if (!room) continue;
    const freeM = freeInFrontM(a.body, side, b.body);
    for (const kind of roomKinds) {
      const neededM = room[kind] ?? 0;
      if (freeM < neededM - 1e-9) found.push({ kind, side, freeM, neededM });
    }
  }
  return found;
}

/** The gap that two items ask for all round and do not have; null where they have it or do not share a height. */
export function gapShortfall(a: PlacedItem, b: PlacedItem): Shortfall | null {
  const neededM = Math.max(a.gapM, b.gapM);
  const freeM = planGapM(a.body, b.body);
  if (!sameHeight(a.body, b.body) || freeM >= neededM - 1e-9) return null;
  return { kind: 'gapM', side: null, freeM: Math.max(0, freeM), neededM };
}

/** How far `b` stands over the face of `a` that has to be reached, metres; 0 where it does not. */
export function faceCoveredM(a: PlacedItem, b: PlacedItem): number {
  if (!a.faceAccess || b.body.minZ < a.body.maxZ - 1e-9) return 0;
  return Math.max(0, -planGapM(a.body, b.body));
}
