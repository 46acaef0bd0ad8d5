import type { ZoneKind } from '../vocabulary.ts';
import { hingesOf } from './vehicle-route.ts';

/** Zones that follow one another; where one is not known, nothing is told of it. */
type Zones = readonly (ZoneKind | undefined)[];

/** How many hinges of doors lie between zones that follow one another. */
export function hingeCount(zones: Zones): number {
  return hingesOf({ passes: zones.flatMap((zone) => (zone === undefined ? [] : [{ zone }])) }).length;
}

/**
 * How many hinges of doors a wire passes on its way: between two stretches, and between a stretch and what stands at that
 * end of the way. At which end each thing stands is as it takes fewer hinges: nothing leaves its door to come into it again.
 */
export function hingesBetween(passes: Zones, one: ZoneKind | undefined, other: ZoneKind | undefined): number {
  return Math.min(hingeCount([one, ...passes, other]), hingeCount([other, ...passes, one]));
}
