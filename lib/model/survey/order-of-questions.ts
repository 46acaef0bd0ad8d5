import { places, ways } from './places-and-ways.ts';
import { spaces } from './spaces.ts';
import type { Station } from './station.ts';
import { dash, itself, underTheHood } from './vehicle-and-source.ts';

/**
 * The walk round a vehicle with a tape and a meter: what is asked at each stop, in the order in which one comes by it.
 * The blank survey sheet has these tables, and `rackleaf new vehicle` asks these questions, in this order.
 */
export const walk: readonly Station[] = [itself, underTheHood, dash, spaces, places, ways];
