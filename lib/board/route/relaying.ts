import type { Random } from '../random.ts';
import { crossingsAmong, type Layer, tightBendsAmong } from './laying.ts';
import { crossingCount, crossings, type Route, type RouteWire } from './route.ts';
import type { TrackGrid } from './track-grid.ts';
import type { Laid } from './tracks.ts';

/** A crossing counts for more than any way round it on a board, metres. */
export const anyWayM = 100;

/** A wire that is laid at all is worth more than any number of crossings. */
export const missingCost = 1e6;

/** A bend tighter than a wire may take is worse than any number of crossings. */
export const tightCost = 1e3;

/** What wires are laid again with. */
export interface Relaying {
  readonly layer: Layer;
  readonly order: readonly RouteWire[];
  readonly random: Random;
  /** No path is searched for after so many. */
  readonly until: number;
}

/** What a layout costs, in crossings. */
export function layingCost({ order }: Relaying, laid: readonly Laid[]): number {
  return (
    crossingsAmong(laid) + tightCost * tightBendsAmong(laid) + missingCost * (order.length - laid.length)
  );
}

/** A straight line on the grid, drawn by lot: wires that keep off it find other ways. */
export function wallByLot({ xs, ys }: TrackGrid, random: Random): Route {
  const pick = (lines: readonly number[]) => lines[Math.floor(random() * lines.length)] ?? 0;
  const level = random() < 0.5;
  const from = { xM: pick(xs), yM: pick(ys) };
  const to = level ? { ...from, xM: pick(xs) } : { ...from, yM: pick(ys) };
  return { wire: '', points: [from, to], lengthM: 0, layer: 'signal', bends: 0 };
}

/** Two laid wires that cross, drawn by lot; null where none do. */
export function pairOf(laid: readonly Laid[], random: Random): readonly [Laid, Laid] | null {
  const all = crossings(laid.map(({ route }) => route));
  const crossing = all[Math.floor(random() * all.length)];
  const [one, other] = laid.filter(({ route }) => crossing?.wires.includes(route.wire));
  if (!one || !other) return null;
  return random() < 0.5 ? [one, other] : [other, one];
}

/** Lays the wires that cross again, one by one, until that takes away no more crossings. */
export function settled(
  { layer, until }: Relaying,
  order: readonly RouteWire[],
  begun: readonly Laid[],
): readonly Laid[] {
  let laid = begun;
  for (let before = Infinity; layer.searches < until; ) {
    const now = crossingsAmong(laid);
    if (now === 0 || now >= before) break;
    before = now;
    const crossing = order.filter((wire) => crossed(wire, laid).length > 0);
    laid = layer.layAgain(crossing, laid, anyWayM);
  }
  return laid;
}

/** The wires that one crosses. */
export function crossed(wire: RouteWire, laid: readonly Laid[]): readonly Laid[] {
  const own = laid.find((one) => one.wire === wire);
  return own ? laid.filter((one) => one !== own && crossingCount(own.route, [one.route]) > 0) : [];
}

/** Another order, each as likely as the next (Fisher and Yates). */
export function shuffled<T>(list: readonly T[], random: Random): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const pick = Math.floor(random() * (last + 1));
    const [a, b] = [mixed[last], mixed[pick]];
    if (a !== undefined && b !== undefined) [mixed[last], mixed[pick]] = [b, a];
  }
  return mixed;
}
