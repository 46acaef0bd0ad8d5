import { bodyOf, type Item, type PlacedTerminal, type Placement, terminalOnBoard } from '../layout/item.ts';
import { railsBelow } from '../layout/raising/stacking.ts';
import { type LinkEnd, leavingQuarterM, nearestSide } from '../layout/score/links.ts';
import type { RouteEnd, RouteWire } from '../route/route.ts';
import type { Barrier } from '../route/track-grid.ts';
import type { Box, Point } from '../shape/point.ts';

/** A wire by its ends: terminals of items, or the side that it leaves the board by. */
export interface WireEnds {
  readonly link: string;
  readonly from: LinkEnd;
  readonly to: LinkEnd;
}

/** What lies together on one way, wherever its items stand. */
export interface WireOnBoard extends Omit<RouteWire, 'from' | 'to'> {
  /** The ends of each wire that lies on it. */
  readonly along: readonly WireEnds[];
}

/** What is laid out where, inside the box round a board. */
export interface InPlace {
  readonly box: Box;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
}

/**
 * The wires as the router sees them; those whose item has no place yet are left out. What lies together is routed
 * between the ends of the one that has the longest way, whichever was written first: what is cut to it reaches for all.
 */
export function wiresInPlace(inPlace: InPlace, wires: readonly WireOnBoard[]): RouteWire[] {
  const terminalOf = terminalsOf(inPlace);
  return wires.flatMap(({ along, ...wire }): RouteWire[] => {
    const [longest] = along
      .flatMap((one) => endsInPlace(inPlace.box, one, terminalOf) ?? [])
      .toSorted((a, b) => spanM(inPlace.box, b) - spanM(inPlace.box, a) || (a.link < b.link ? -1 : 1));
    if (!longest) return [];
    return [{ ...wire, from: longest.from, to: longest.to }];
  });
}

type TerminalOf = (item: string, terminal: string) => PlacedTerminal | undefined;

function terminalsOf({ items, placements }: InPlace): TerminalOf {
  const placed = new Map(placements.map((at) => [at.item, at]));
  const known = new Map(items.map((item) => [item.id, item]));
  return (id, terminal) => {
    const [item, at] = [known.get(id), placed.get(id)];
    const own = item?.terminals.find((one) => one.id === terminal);
    return item && at && own ? terminalOnBoard(item, at, own) : undefined;
  };
}

interface EndsInPlace {
  readonly link: string;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
}

/** Where a wire begins and ends on its board, or leaves it; null where an item of it has no place. */
function endsInPlace(box: Box, { link, from, to }: WireEnds, terminalOf: TerminalOf): EndsInPlace | null {
  const [first, second] = [from, to].map((end) =>
    'exit' in end ? end : (terminalOf(end.item, end.terminal) ?? null),
  );
  if (!first || !second) return null;
  const [start, finish] = [leavingBy(box, first, second), leavingBy(box, second, first)];
  return start && finish ? { link, from: start, to: finish } : null;
}

type End = PlacedTerminal | Extract<LinkEnd, { readonly exit: unknown }>;

/** An end; a wire that may leave anywhere leaves by the nearest edge, the one that its terminal faces first. */
function leavingBy(box: Box, end: End, other: End): RouteEnd | null {
  if (!('exit' in end)) return end;
  if (end.exit !== 'nearest') return { exit: end.exit };
  if ('exit' in other) return null;
  const toEdgeM = toEdgesM(box, other);
  return { exit: nearestSide((side) => toEdgeM[side], other.faces, leavingQuarterM) };
}

/** Level and upright distance between two ends, or from one straight to the edge at which it leaves (m). */
function spanM(box: Box, { from, to }: EndsInPlace): number {
  if ('exit' in from) return 'exit' in to ? 0 : toEdgesM(box, to)[from.exit];
  if ('exit' in to) return toEdgesM(box, from)[to.exit];
  return Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM);
}

/** From a point straight to each side of the box round a board (m). */
function toEdgesM({ minX, maxX, minY, maxY }: Box, { xM, yM }: Point) {
  return { right: maxX - xM, top: maxY - yM, left: xM - minX, bottom: yM - minY };
}

/** What wires go round: parts that stand on the board, and the rails of those that the search raised. Wires pass under what is raised. */
export function barriersInPlace({ items, placements }: Omit<InPlace, 'box'>): Barrier[] {
  return placements.flatMap((at): Barrier[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) return [];
    const body = bodyOf(item, at);
    if (at.heightM === 0) return [{ id: item.id, box: body }];
    // Rails of a part that the search raised are known; a raised part of the job stands as its writer sees fit.
    return item.raising
      ? railsBelow({ body }, item.raising.railWidthM).map((box) => ({ id: item.id, box }))
      : [];
  });
}
