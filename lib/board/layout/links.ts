import type { Box, Point } from '../shape/point.ts';
import { quartersOff } from './facing.ts';
import { opposite, outward, type PlacedTerminal, type Side, sides, type WireLayer } from './item.ts';
import { freeToSideM, type PlacedItem } from './placed.ts';

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
  /** How long it is where it is made to a length, metres; left out: as long as its way. */
  readonly longestM?: number;
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
  /** True where it is made to a length that hardly reaches, or does not. */
  readonly short: boolean;
}

/** Share of a made length that the way ahead of a wire may take: the rest goes round what is in the way (house judgement). */
const aheadShare = 0.85;

/** How far a wire runs straight out of a terminal before it turns, metres (house judgement). */
const stubM = 0.03;

/** An end on the board: the terminal, and the item that it is of. */
interface PlacedEnd {
  readonly at: PlacedTerminal;
  readonly of: PlacedItem;
}

/** The way ahead of a wire; null where neither of its items is placed. `ownerOf`: an item by its id. */
export function wireAhead(
  box: Box,
  { from, to, layer, longestM = Infinity }: Link,
  ownerOf: (item: string) => PlacedItem | undefined,
): WireAhead | null {
  const [a, b] = [placedEnd(from, ownerOf), placedEnd(to, ownerOf)];
  const way =
    a && b
      ? between(a, b)
      : a && 'exit' in to
        ? leaving(box, a, to.exit)
        : b && 'exit' in from
          ? leaving(box, b, from.exit)
          : null;
  return way && { ...way, layer, short: way.lengthM > aheadShare * longestM };
}

function placedEnd(end: LinkEnd, ownerOf: (item: string) => PlacedItem | undefined): PlacedEnd | null {
  if ('exit' in end) return null;
  const of = ownerOf(end.item);
  const at = of?.terminals.get(end.terminal);
  return of && at ? { of, at } : null;
}

type Way = Omit<WireAhead, 'layer' | 'short'>;

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

function leaving(box: Box, { at, of }: PlacedEnd, exit: Side | 'nearest'): Way {
  const toEdgeM = (side: Side): number => freeFromM(box, at, side);
  const side = exit === 'nearest' ? nearestSide(toEdgeM, at.faces, leavingQuarterM) : exit;
  const quarters = quartersOff(at.faces, side);
  const straightM = toEdgeM(side);
  const { xM, yM } = outward[side];
  const to = { xM: at.xM + xM * straightM, yM: at.yM + yM * straightM };
  const detourM = quarters === 2 ? 2 * stubM + roundM(of, at, alongSide(at, at.faces)) : 0;
  return { from: at, to, lengthM: straightM + detourM, bends: quarters === 2 ? 3 : quarters, quarters };
}

/** From a point to a side of the box round the board. */
function freeFromM(box: Box, { xM, yM }: Point, side: Side): number {
  return Math.max(0, freeToSideM({ minX: xM, maxX: xM, minY: yM, maxY: yM, minZ: 0, maxZ: 0 }, side, box));
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

function between(a: PlacedEnd, b: PlacedEnd): Way {
  const [dx, dy] = [b.at.xM - a.at.xM, b.at.yM - a.at.yM];
  const [out, into] = [outward[a.at.faces], outward[opposite[b.at.faces]]];
  const ahead = dx * out.xM + dy * out.yM;
  const onto = dx * into.xM + dy * into.yM;
  const straightM = Math.abs(dx) + Math.abs(dy);
  const way = { from: a.at, to: b.at, quarters: 0 };
  if (a.at.faces === b.at.faces) {
    // Side by side: out, along, and back in.
    return { ...way, lengthM: straightM + 2 * stubM, bends: 2 };
  }
  if (a.at.faces === opposite[b.at.faces]) {
    if (ahead > 0) {
      const acrossM = straightM - ahead;
      return { ...way, lengthM: straightM, bends: acrossM < 1e-6 ? 0 : 2 };
    }
    const detourM = roundM(a.of, a.at, alongSide(b.at, a.at.faces));
    return { ...way, lengthM: straightM + 4 * stubM + detourM, bends: 4 };
  }
  const [lacksA, lacksB] = [ahead < 0, onto < 0];
  const detourM =
    (lacksA ? 2 * stubM + roundM(a.of, a.at, alongSide(b.at, a.at.faces)) : 0) +
    (lacksB ? 2 * stubM + roundM(b.of, b.at, alongSide(a.at, b.at.faces)) : 0);
  return { ...way, lengthM: straightM + detourM, bends: lacksA || lacksB ? 3 : 1 };
}
