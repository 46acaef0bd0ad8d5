import type { WireLayer } from '../layout/item.ts';
import { isPoint, type RouteWire } from './route.ts';

/** Thick and stiff first. */
const layerOrder: Readonly<Record<WireLayer, number>> = { power: 0, ground: 1, speaker: 2, signal: 3 };

function spanM({ from, to }: RouteWire): number {
  return isPoint(from) && isPoint(to) ? Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM) : 0;
}

/** The order in which wires are laid first: thick and stiff ones, then those that run shortest. */
export function routeOrder(wires: readonly RouteWire[]): RouteWire[] {
  return wires.toSorted(
    (a, b) =>
      layerOrder[a.layer] - layerOrder[b.layer] ||
      b.diameterM - a.diameterM ||
      spanM(a) - spanM(b) ||
      (a.id < b.id ? -1 : 1),
  );
}
