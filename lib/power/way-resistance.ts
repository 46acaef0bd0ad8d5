import { type Fault, negativeFault, positiveFault } from '../model/fault.ts';
import type { HouseRules } from '../model/house-rules.ts';
import { type FuseFormId, fuseForms } from '../model/tables/fuse-forms.ts';
import { commonPractice, type Traced, traced } from '../model/trace.ts';

/** A fuse by its form and its rated current (A). */
export interface RatedFuse {
  readonly form: FuseFormId;
  readonly ratingA: number;
}

/** The drop (V) of a fuse that carries its rating: a house rule of its style. */
export function fuseDropV(form: FuseFormId, rules: HouseRules): number {
  return rules[fuseForms[form].style === 'blade' ? 'blade-fuse-volt' : 'bolt-in-fuse-volt'].value;
}

/** The resistance (ohm) of a fuse: the drop that its style has at its rating, over the rating; 0 where it has none. */
export function fuseOhm({ form, ratingA }: RatedFuse, rules: HouseRules): number {
  return ratingA > 0 ? fuseDropV(form, rules) / ratingA : 0;
}

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
