import type { Box, Point } from '../shape/point.ts';

/** The sides of an item or a board, seen from the mounting side, before any turn. */
export const sides = ['right', 'top', 'left', 'bottom'] as const;
export type Side = (typeof sides)[number];

/** Turns on the board, counter-clockwise, degrees. */
export const turns = [0, 90, 180, 270] as const;
export type TurnDeg = (typeof turns)[number];

/** What a wire is laid with. */
export type WireLayer = 'signal' | 'speaker' | 'power' | 'ground';

/** Room that a side of an item asks for in front of it, metres. */
export interface SideRoom {
  /** For air: fins, a fan. */
  readonly airM?: number;
  /** For a hand: knobs and switches. */
  readonly accessM?: number;
  /** Straight room for a tool: set screws. */
  readonly toolM?: number;
  /** For plugs, and to bend conductors. */
  readonly bendM?: number;
}

/** Where a conductor or plug goes in. */
export interface ItemTerminal {
  readonly id: string;
  readonly side: Side;
  /** From the left end of a top or bottom side, from the lower end of a left or right one, metres. */
  readonly alongM: number;
  readonly layer: WireLayer;
}

/** A hole that an item is mounted by, metres from its own lower left corner, unturned. */
export interface MountingHole {
  readonly id: string;
  readonly xM: number;
  readonly yM: number;
  readonly diameterM: number;
  /** How deep the hole goes into the board; left out: through. */
  readonly depthM?: number;
  /** Of the foot that its screw goes through before the board. */
  readonly footM?: number;
}

/** What a part leaves open to be raised on two rails, below its left and right sides as it stands. */
export interface Raising {
  /** Free height over what lies beneath, and room between that and a rail or a screw, metres. */
  readonly clearanceM: number;
  readonly railWidthM: number;
}

/** A low part that another may stand over once it is wired: nothing on its face has to be reached. */
export interface Beneath {
  /** Free height that it asks for over its face, for air, metres; left out: what a part asks for anyway. */
  readonly airM?: number;
  /** Its wires: the side that each goes in by, and the item of the same board that it comes from; null: from elsewhere. */
  readonly wires: readonly { readonly side: Side; readonly from: string | null }[];
}

/** A thing that is mounted on a board. */
export interface Item {
  readonly id: string;
  /** Footprint, unturned: along x and along y, metres. */
  readonly widthM: number;
  readonly depthM: number;
  /** Above its underside, metres. */
  readonly heightM: number;
  readonly massKg: number;
  readonly rooms: Readonly<Partial<Record<Side, SideRoom>>>;
  /** Free room to any other part; left out: the house's. */
  readonly gapM?: number;
  /** True where something on its upper face has to be reached: nothing may stand over it. */
  readonly faceAccess?: boolean;
  /** Air that it asks for over its face, metres; left out: what its sides ask for. */
  readonly airOverM?: number;
  readonly terminals: readonly ItemTerminal[];
  /** Kind of part; those of one kind are to stand alike. Left out: like no other. */
  readonly kind?: string;
  /** What it shares out among the others: distribution, or a ground bar; left out: nothing. */
  readonly shares?: 'feed' | 'ground';
  readonly mountingHoles?: readonly MountingHole[];
  /** Left out: the search does not raise it. */
  readonly raising?: Raising;
  /** Left out: no part that the search raises may stand over it. */
  readonly beneath?: Beneath;
}

/** Where an item stands: the lower left corner of its footprint as turned, and its underside over the board's face. */
export interface Placement {
  readonly item: string;
  readonly xM: number;
  readonly yM: number;
  readonly turnDeg: TurnDeg;
  readonly heightM: number;
}

/**
 * A coordinate of a place, metres, to the nanometre: a place that was proposed and the same one written into the job are
 * one number, and so their wires lie alike.
 */
export function placeM(valueM: number): number {
  return Math.round(valueM * 1e9) / 1e9;
}

/** An upright box in three dimensions, metres; z from the board's face. */
export interface Body extends Box {
  readonly minZ: number;
  readonly maxZ: number;
}

/** Size of an item's footprint as turned, metres. */
export function turnedSize(
  item: Pick<Item, 'widthM' | 'depthM'>,
  turnDeg: TurnDeg,
): { readonly xM: number; readonly yM: number } {
  return turnDeg % 180 === 0 ? { xM: item.widthM, yM: item.depthM } : { xM: item.depthM, yM: item.widthM };
}

/** The room that an item takes where it stands. */
export function bodyOf(item: Item, at: Placement): Body {
  const size = turnedSize(item, at.turnDeg);
  return {
    minX: at.xM,
    minY: at.yM,
    maxX: at.xM + size.xM,
    maxY: at.yM + size.yM,
    minZ: at.heightM,
    maxZ: at.heightM + item.heightM,
  };
}

/** Where a side of an item faces once it is turned. */
export function turnedSide(side: Side, turnDeg: TurnDeg): Side {
  return sides[(sides.indexOf(side) + turnDeg / 90) % 4] ?? side;
}

/** The unit vector that a side faces. */
export const outward: Readonly<Record<Side, Point>> = {
  right: { xM: 1, yM: 0 },
  top: { xM: 0, yM: 1 },
  left: { xM: -1, yM: 0 },
  bottom: { xM: 0, yM: -1 },
};

/** The side that faces the other way. */
export const opposite: Readonly<Record<Side, Side>> = {
  right: 'left',
  left: 'right',
  top: 'bottom',
  bottom: 'top',
};

/** A point of an item (from its own lower left corner, unturned) on the board. Searches call it very often. */
export function onBoard({ widthM: w, depthM: d }: Item, at: Placement, { xM, yM }: Point): Point {
  switch (at.turnDeg) {
    case 0:
      return { xM: at.xM + xM, yM: at.yM + yM };
    case 90:
      return { xM: at.xM + (d - yM), yM: at.yM + xM };
    case 180:
      return { xM: at.xM + (w - xM), yM: at.yM + (d - yM) };
    case 270:
      return { xM: at.xM + yM, yM: at.yM + (w - xM) };
  }
}

/** A terminal as it stands on the board: its point, and the side that it faces. */
export interface PlacedTerminal extends Point {
  readonly faces: Side;
  readonly layer: WireLayer;
}

/** Where a terminal of a placed item is, and which way it faces. */
export function terminalOnBoard(
  item: Item,
  at: Placement,
  { side, alongM, layer }: ItemTerminal,
): PlacedTerminal {
  const level = side === 'top' || side === 'bottom';
  const acrossM = side === 'top' ? item.depthM : side === 'right' ? item.widthM : 0;
  const own = level ? { xM: alongM, yM: acrossM } : { xM: acrossM, yM: alongM };
  const { xM, yM } = onBoard(item, at, own);
  return { xM, yM, faces: turnedSide(side, at.turnDeg), layer };
}

/** The strip in front of one side of a body, `roomM` deep, as high as the body. */
export function roomInFront(body: Body, side: Side, roomM: number): Body {
  const strips: Record<Side, Partial<Body>> = {
    right: { minX: body.maxX, maxX: body.maxX + roomM },
    left: { minX: body.minX - roomM, maxX: body.minX },
    top: { minY: body.maxY, maxY: body.maxY + roomM },
    bottom: { minY: body.minY - roomM, maxY: body.minY },
  };
  return { ...body, ...strips[side] };
}

/**
 * How far two bodies reach into each other, metres: the least push along the board that parts them, or the
 * least lift where one stands higher than the other; 0 or below where they are apart.
 */
export function overlapM(a: Body, b: Body): number {
  const inPlan = Math.min(a.maxX - b.minX, b.maxX - a.minX, a.maxY - b.minY, b.maxY - a.minY);
  const inHeight = Math.min(a.maxZ - b.minZ, b.maxZ - a.minZ);
  return a.minZ === b.minZ && inHeight > 0 ? inPlan : Math.min(inPlan, inHeight);
}
