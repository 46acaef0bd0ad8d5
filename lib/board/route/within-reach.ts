import type { Layer } from './laying.ts';
import type { Laid } from './tracks.ts';

/**
 * Lays the wires again that are made to a length and don't reach along their way, each by the shortest way whatever it
 * crosses; one that does not reach so either stays as it was.
 */
export function withinReach(layer: Layer, begun: readonly Laid[]): readonly Laid[] {
  let laid = begun;
  for (const { wire, route } of begun) {
    const longestM = wire.longestM ?? Infinity;
    if (route.lengthM <= longestM) continue;
    const others = laid.filter((one) => one.wire !== wire);
    const shorter = layer.lay(wire, others, 0);
    if (!shorter || shorter.lengthM > longestM) continue;
    laid = [...others, { wire, route: shorter }];
  }
  return laid;
}
