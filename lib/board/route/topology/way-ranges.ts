import type { BoardMap } from './board-map.ts';
import type { MapTerminal, MapWire } from './map-wire.ts';
import { anywhere, common, type PassRange } from './pass.ts';
import type { Passage } from './sketch.ts';

/** In line with a terminal. */
export function inLine({ atM }: MapTerminal): PassRange {
  return { lowM: atM, highM: atM };
}

/** So far off a terminal that the wire can be bent there. */
export function beside({ edges }: BoardMap, { edge, cell }: MapTerminal, bendRadiusM: number): PassRange {
  const own = edges[edge];
  if (!own) return anywhere;
  return own.cells[1] === cell
    ? { lowM: own.lineM + bendRadiusM, highM: Infinity }
    : { lowM: -Infinity, highM: own.lineM - bendRadiusM };
}

/** Between what stands at both ends of an edge's narrow place, with room for the wire. */
export function acrossEdge({ edges }: BoardMap, edge: number, needM: number): PassRange {
  const { lowM, highM } = edges[edge]?.between ?? anywhere;
  return { lowM: lowM + needM, highM: highM - needM };
}

/** By edge of a way: between what its straight piece there may lie, for all edges that this passes. */
export function rangesAlong(
  map: BoardMap,
  along: readonly number[],
  passages: readonly Passage[],
  wire: MapWire,
  needM: number,
): PassRange[] {
  const { from, to, bendRadiusM } = wire;
  const bends = passages.map((passage) => (passage === 'turn' ? 1 : passage === 'step' ? 2 : 0));
  const legs = [0];
  for (const count of bends) legs.push((legs.at(-1) ?? 0) + count);
  const last = legs.at(-1) ?? 0;
  const ranges = Array.from({ length: last + 1 }, () => anywhere);
  const narrow = (leg: number, range: PassRange) => {
    ranges[leg] = common(ranges[leg] ?? anywhere, range);
  };
  narrow(0, inLine(from));
  if (last > 0) narrow(1, beside(map, from, bendRadiusM));
  if ('edge' in to) {
    narrow(last, inLine(to));
    if (last > 0) narrow(last - 1, beside(map, to, bendRadiusM));
  }
  const [first, end] = [ranges[0] ?? anywhere, ranges[last] ?? anywhere];
  const inner = 'edge' in to ? along.slice(1, -1) : along.slice(1);
  for (const [at, edge] of inner.entries()) narrow(legs[at + 1] ?? 0, acrossEdge(map, edge, needM));
  // What is in line with a terminal has no choice.
  ranges[0] = first;
  if ('edge' in to) ranges[last] = end;
  return legs.map((leg) => ranges[leg] ?? anywhere);
}
