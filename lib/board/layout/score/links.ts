import { type Box, distance, type Point } from '../../shape/point.ts';
import { quartersOff } from '../facing.ts';
import { opposite, outward, type PlacedTerminal, type Side, sides, type WireLayer } from '../item.ts';
import type { PlacedItem } from '../placed.ts';

/**
 * One end of a wire on a board: a terminal of an item, or the side that it leaves the board by; `nearest` where any
 * will do.
 */
export type LinkEnd =
  | { readonly item: string; readonly terminal: string }
  | { readonly exit: Side | 'nearest' };

/** A wire to be laid on the board. */
export interface Link {
  readonly id: string;
  readonly from: LinkEnd;
  readonly to: LinkEnd;
  readonly layer: WireLayer;
  /** How thick it is, as far as that is known before its way is, metres; left out: as thin as any. */
  readonly diameterM?: number;
  /** How long it is where it is made to a length, metres; left out: as long as its way. */
  readonly longestM?: number;
  /** How long it is to be at most from its terminal to the rim of the space; left out: as long as it comes to be. */
  readonly wanted?: WantedLength;
}

/** A length that a house wants of a wire which leaves its board: it is laid where it is longer too, and told. */
export interface WantedLength {
  /** What is left for its way on the board and on to the rim, metres. */
  readonly lengthM: number;
  /** Where it may meet the rim of the space, in the axes of the board: it is cut for the farthest. None: it ends at the edge. */
  readonly rim: readonly Point[];
}

/** How much longer a wire is than it is wanted, which goes so far on its board (m) and leaves that at a point; metres. */
export function overWantedM(onBoardM: number, exit: Point, { lengthM, rim }: WantedLength): number {
  let rimM = 0;
  for (const point of rim) rimM = Math.max(rimM, distance(exit, point));
  return Math.max(0, onBoardM + rimM - lengthM);
}

/** A terminal of an item on a board. */
export function terminalKey(item: string, terminal: string): string {
  return `${item} ${terminal}`;
}

/** Terminals that a wire joins to another part. */
export function joinedTerminals(links: readonly Link[]): ReadonlySet<string> {
  return new Set(
    links.flatMap(({ from, to }) =>
      'item' in from && 'item' in to
        ? [terminalKey(from.item, from.terminal), terminalKey(to.item, to.terminal)]
        : [],
    ),
  );
}

/** How a wire would run were nothing in its way but the parts that it ends at. */
export interface WireAhead {
  readonly from: Point;
  readonly to: Point;
  readonly layer: WireLayer;
  /** Length straight along x and y, round the part that it begins at where that faces away, metres. */
  readonly lengthM: number;
  readonly bends: number;
  /** Quarter turns between the way its terminal faces and the side that it leaves by. */
  readonly quarters: number;
  /** How much longer it is than a length that it is made to allows for, metres. */
  readonly shortM: number;
  /** How much longer it is than it is wanted, metres. */
  readonly overM: number;
}

/** Share of a made length that the way ahead of a wire may take: the rest goes round what is in the way (house judgement). */
const aheadShare = 0.85;

/** How far a wire runs straight out of a terminal before it turns, metres (house judgement). */
const stubM = 0.03;

/** The way ahead of a wire; null where neither of its items is placed. `ownerOf`: an item by its id. */
export function wireAhead(
  box: Box,
  link: Link,
  ownerOf: (item: string) => PlacedItem | undefined,
): WireAhead | null {
  const { from, to, layer, longestM = Infinity } = link;
  const ofA = 'exit' in from ? undefined : ownerOf(from.item);
  const ofB = 'exit' in to ? undefined : ownerOf(to.item);
  const a = ofA && 'terminal' in from ? terminalOn(ofA, from.terminal) : undefined;
  const b = ofB && 'terminal' in to ? terminalOn(ofB, to.terminal) : undefined;
  const limitM = aheadShare * longestM;
  if (ofA && a && ofB && b) return between(a, ofA, b, ofB, layer, limitM);
  if (ofA && a && 'exit' in to) return leaving(box, a, ofA, to.exit, link, limitM);
  if (ofB && b && 'exit' in from) return leaving(box, b, ofB, from.exit, link, limitM);
  return null;
}

/** A terminal of a placed item on the board. */
function terminalOn({ terminals, body }: PlacedItem, terminal: string): PlacedTerminal | undefined {
  const own = terminals.get(terminal);
  return own && { xM: body.minX + own.xM, yM: body.minY + own.yM, faces: own.faces, layer: own.layer };
}

/** The side that a wire which may leave anywhere goes over: the nearest, the one that its terminal faces first. */
export function nearestSide(toEdgeM: (side: Side) => number, faces: Side, quarterM: number): Side {
  let [best, least]: [Side, number] = [faces, Infinity];
  for (const side of sides) {
    const costM = toEdgeM(side) + quarterM * quartersOff(faces, side);
    if (costM < least - 1e-12) [best, least] = [side, costM];
  }
  return best;
}

/** What turning a quarter counts for, in metres of wire, when the edge to leave by is chosen. House judgement. */
export const leavingQuarterM = 0.08;

function leaving(
  box: Box,
  at: PlacedTerminal,
  of: PlacedItem,
  exit: Side | 'nearest',
  { layer, wanted }: Link,
  limitM: number,
): WireAhead {
  const side =
    exit === 'nearest' ? nearestSide((one) => freeFromM(box, at, one), at.faces, leavingQuarterM) : exit;
  const quarters = quartersOff(at.faces, side);
  const straightM = freeFromM(box, at, side);
  const { xM, yM } = outward[side];
  const to = { xM: at.xM + xM * straightM, yM: at.yM + yM * straightM };
  const lengthM = straightM + (quarters === 2 ? 2 * stubM + roundM(of, at, alongSide(at, at.faces)) : 0);
  const bends = quarters === 2 ? 3 : quarters;
  const shortM = Math.max(0, lengthM - limitM);
  const overM = wanted ? overWantedM(lengthM, to, wanted) : 0;
  return { from: at, to, layer, lengthM, bends, quarters, shortM, overM };
}

/** From a point to a side of the box round the board. */
function freeFromM(box: Box, { xM, yM }: Point, side: Side): number {
  if (side === 'right') return Math.max(0, box.maxX - xM);
  if (side === 'left') return Math.max(0, xM - box.minX);
  return Math.max(0, side === 'top' ? box.maxY - yM : yM - box.minY);
}

/** Where a point lies along a side that faces some way. */
function alongSide({ xM, yM }: Point, faces: Side): number {
  return faces === 'left' || faces === 'right' ? yM : xM;
}

/** What going round the nearer end of its own part adds to a wire that has to get behind it, on to somewhere along the side. */
function roundM({ body }: PlacedItem, at: PlacedTerminal, toward: number): number {
  const level = at.faces === 'left' || at.faces === 'right';
  const [low, high] = level ? [body.minY, body.maxY] : [body.minX, body.maxX];
  const own = alongSide(at, at.faces);
  const by = (end: number): number => Math.abs(end - own) + Math.abs(toward - end);
  return Math.min(by(low), by(high)) - Math.abs(toward - own);
}

function between(
  a: PlacedTerminal,
  ofA: PlacedItem,
  b: PlacedTerminal,
  ofB: PlacedItem,
  layer: WireLayer,
  limitM: number,
): WireAhead {
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const ahead = dx * outward[a.faces].xM + dy * outward[a.faces].yM;
  const onto = -(dx * outward[b.faces].xM + dy * outward[b.faces].yM);
  const straightM = Math.abs(dx) + Math.abs(dy);
  let [lengthM, bends] = [straightM, 1];
  if (a.faces === b.faces) {
    // Side by side: out, along, and back in.
    [lengthM, bends] = [straightM + 2 * stubM, 2];
  } else if (a.faces === opposite[b.faces]) {
    if (ahead > 0) bends = straightM - ahead < 1e-6 ? 0 : 2;
    else [lengthM, bends] = [straightM + 4 * stubM + roundM(ofA, a, alongSide(b, a.faces)), 4];
  } else {
    if (ahead < 0) [lengthM, bends] = [lengthM + 2 * stubM + roundM(ofA, a, alongSide(b, a.faces)), 3];
    if (onto < 0) [lengthM, bends] = [lengthM + 2 * stubM + roundM(ofB, b, alongSide(a, b.faces)), 3];
  }
  const shortM = Math.max(0, lengthM - limitM);
  return { from: a, to: b, layer, lengthM, bends, quarters: 0, shortM, overM: 0 };
}
