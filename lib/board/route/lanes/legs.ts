import { anywhere } from '../topology/pass.ts';
import type { Sketch, Way } from '../topology/sketch.ts';
import { cellOrders } from './cell-orders.ts';
import { type BareLeg, keyOf, type Leg } from './leg.ts';
import { rankOf } from './row-order.ts';

/** The legs of every wire of a sketch by wire, each with its rank; none for a wire that has no way. */
export function legsOf(sketch: Sketch): readonly (readonly Leg[])[] {
  const wires = sketch.widthsM.map((_, wire) => {
    const way = sketch.wayOf(wire);
    return way ? legsOfWay(sketch, wire, way) : null;
  });
  const orders = cellOrders(
    sketch,
    wires.map((one) => one?.legs ?? []),
    (wire, at) => wires[wire]?.passing[at] ?? 0,
  );
  const all = wires.flatMap((one) => one?.legs ?? []);
  const ranks = rankOf(all, orders);
  return wires.map((one) =>
    (one?.legs ?? []).map(({ cells: _, ...leg }) => ({ ...leg, rank: ranks.get(keyOf(leg)) ?? leg.line })),
  );
}

interface WayLegs {
  readonly legs: readonly BareLeg[];
  /** Which leg passes each edge of the way. */
  readonly passing: readonly number[];
}

function legsOfWay({ map }: Sketch, wire: number, way: Way): WayLegs {
  const rows = map.ys.length - 1;
  const legs: { level: boolean; line: number; cells: number[] }[] = [];
  const lineOf = (cell: number, level: boolean) => (level ? cell % rows : Math.floor(cell / rows));
  const begin = (cell: number, level: boolean) =>
    legs.push({ level, line: lineOf(cell, level), cells: [cell] });
  const passing: number[] = [0];
  way.cells.forEach((cell, at) => {
    if (at === 0) begin(cell, map.edges[way.edges[0] ?? 0]?.upright ?? true);
    else legs.at(-1)?.cells.push(cell);
    const { level = true } = legs.at(-1) ?? {};
    const passage = way.passages[at];
    if (passage === 'turn' || passage === 'step') begin(cell, !level);
    if (passage === 'step') begin(cell, level);
    passing.push(legs.length - 1);
  });
  const last = legs.length - 1;
  return {
    legs: legs.map((leg, nth) => {
      const { lowM, highM } =
        (nth === 0 ? way.ranges[0] : nth === last ? way.ranges.at(-1) : null) ?? anywhere;
      return { ...leg, wire, nth, fixedM: lowM === highM ? lowM : Number.NaN };
    }),
    passing,
  };
}
