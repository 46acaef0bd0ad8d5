import { type Fault, negativeFault, positiveFault } from '../model/fault.ts';
import type { HouseRules } from '../model/house-rules.ts';
import { commonPractice, type Traced, traced } from '../model/trace.ts';
import { fuseDropV, fuseOhm, type RatedFuse } from './fuse-resistance.ts';

/** What lies on the way of a current beside its conductors. */
export interface WayParts {
  /** Crimped ends and bolted contacts, of feed and return together. */
  readonly crimps: number;
  readonly bolts: number;
  readonly throughBody: boolean;
  readonly fuse: RatedFuse;
}

/**
 * Resistance (ohm) of all on a way but its conductors, in series: crimped lugs, bolted joints, the body, the fuse, each
 * by its house rule. Fault on a count below zero or a fuse without a rating.
 */
export function wayOhm(
  { crimps, bolts, throughBody, fuse }: WayParts,
  rules: HouseRules,
): Traced<number> | Fault {
  const bad =
    negativeFault({ 'number of crimped ends': crimps, 'number of bolted joints': bolts }) ??
    positiveFault({ 'rating of the fuse': fuse.ratingA });
  if (bad) return bad;
  const lugOhm = rules['lug-resistance'].value;
  const jointOhm = rules['joint-resistance'].value;
  const bodyOhm = throughBody ? rules['body-resistance'].value : 0;
  return traced(crimps * lugOhm + bolts * jointOhm + bodyOhm + fuseOhm(fuse, rules), 'ohm', {
    rule: 'way-resistance',
    formula: 'Ro = nl * rl + nj * rj + rb + Uf / In',
    citation: commonPractice,
    mark: 'cp',
    inputs: [
      ['nl', crimps],
      ['rl', lugOhm, 'ohm'],
      ['nj', bolts],
      ['rj', jointOhm, 'ohm'],
      ['rb', bodyOhm, 'ohm'],
      ['Uf', fuseDropV(fuse.form, rules), 'V'],
      ['In', fuse.ratingA, 'A'],
    ],
  });
}
