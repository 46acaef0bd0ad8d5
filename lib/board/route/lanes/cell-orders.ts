import { type Sketch, sideOf, stretchesEach } from '../topology/sketch.ts';
import { type BareLeg, keyOf } from './leg.ts';
import type { LegOrder } from './row-order.ts';

/** The leg of a wire that passes one of its edges. */
type LegPassing = (wire: number, at: number) => number;

/** What runs through one cell for one wire: its legs there, in their order. */
interface Bit {
  readonly legs: readonly BareLeg[];
  /** The sides that it comes in and goes out by: right, top, left, bottom. */
  readonly sides: readonly [number, number];
}

/**
 * In which order legs lie beside each other: as they pass each edge, and where two share a cell but no edge, as they
 * cross least there.
 */
export function cellOrders(
  sketch: Sketch,
  legs: readonly (readonly BareLeg[])[],
  passing: LegPassing,
): readonly LegOrder[] {
  const must = ordersAtEdges(sketch, passing);
  const known = new Set(must.map(({ low, high }) => `${low} ${high}`));
  const orders: LegOrder[] = [...must];
  for (let cell = 0; cell < sketch.map.open.length; cell += 1) {
    const bits = bitsIn(sketch, cell, legs, passing);
    bits.forEach((a, at) => {
      for (const b of bits.slice(at + 1)) orders.push(...ordersInCell(a, b, known));
    });
  }
  return orders;
}

/** Every two neighbours at an edge. */
function ordersAtEdges(sketch: Sketch, passing: LegPassing): LegOrder[] {
  return sketch.map.edges.flatMap((_, edge) => {
    const keys = sketch.passesAt(edge).map(({ wire, at }) => keyOf({ wire, nth: passing(wire, at) }));
    return keys.flatMap((low, at) => keys.slice(at + 1).map((high) => ({ low, high, must: true })));
  });
}

function bitsIn(
  sketch: Sketch,
  cell: number,
  legs: readonly (readonly BareLeg[])[],
  passing: LegPassing,
): Bit[] {
  if (sketch.map.open[cell] !== 1) return [];
  const { stretches } = sketch.ringOf(cell);
  return [...new Set(stretches)].flatMap((stretch): Bit[] => {
    if (stretch < 0) return [];
    const wire = Math.floor(stretch / stretchesEach);
    const at = stretch - wire * stretchesEach;
    const [from, to] = [at, at + 1].map((edge) => sketch.wayOf(wire)?.edges[edge] ?? -1);
    return [
      {
        legs: (legs[wire] ?? []).slice(passing(wire, at), passing(wire, at + 1) + 1),
        sides: [sideOf(sketch.map, cell, from ?? -1), sideOf(sketch.map, cell, to ?? -1)],
      },
    ];
  });
}

/** The orders of legs that share a cell and no edge, by which their wires cross least in it. */
function ordersInCell(a: Bit, b: Bit, known: ReadonlySet<string>): LegOrder[] {
  const open = a.legs.flatMap((one) =>
    b.legs
      .filter((other) => one.level === other.level)
      .map((other) => [keyOf(one), keyOf(other)] as const)
      .filter(([one2, other]) => !known.has(`${one2} ${other}`) && !known.has(`${other} ${one2}`)),
  );
  if (open.length === 0 || open.length > 4) return [];
  let best: { readonly orders: readonly LegOrder[]; readonly crossings: number } | null = null;
  let worst = 0;
  for (let choice = 0; choice < 1 << open.length; choice += 1) {
    const orders = open.map(([one, other], at): LegOrder => {
      const up = ((choice >> at) & 1) === 1;
      return { low: up ? other : one, high: up ? one : other, must: false };
    });
    const isBelow = (one: number, other: number) =>
      known.has(`${one} ${other}`) || orders.some(({ low, high }) => low === one && high === other);
    const crossings = crossingsIn(a, b, isBelow);
    worst = Math.max(worst, crossings);
    if (!best || crossings < best.crossings) best = { orders, crossings };
  }
  return best && worst > best.crossings ? [...best.orders] : [];
}

type IsBelow = (one: number, other: number) => boolean;

/** How often the legs of two wires cross in a cell, by the order in which they lie. */
function crossingsIn(a: Bit, b: Bit, isBelow: IsBelow): number {
  return crossingsOneWay(a, b, isBelow) + crossingsOneWay(b, a, isBelow);
}

/** Level legs of the one with upright legs of the other. */
function crossingsOneWay(a: Bit, b: Bit, isBelow: IsBelow): number {
  return a.legs.reduce((sum, level, at) => {
    if (!level.level) return sum;
    return (
      sum +
      b.legs.filter(
        (upright, nth) =>
          !upright.level && reaches(a, at, upright, isBelow) && reaches(b, nth, level, isBelow),
      ).length
    );
  }, 0);
}

/** True where a leg of a wire reaches, in its cell, from one side of a leg that lies across it to the other. */
function reaches(bit: Bit, at: number, across: BareLeg, isBelow: IsBelow): boolean {
  const sideOfEnd = (neighbour: BareLeg | undefined, side: number): boolean =>
    // True: the end lies beyond the other leg, to the right or above.
    neighbour ? isBelow(keyOf(across), keyOf(neighbour)) : side < 2;
  return sideOfEnd(bit.legs[at - 1], bit.sides[0]) !== sideOfEnd(bit.legs[at + 1], bit.sides[1]);
}
