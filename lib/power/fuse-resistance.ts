import type { HouseRules } from '../model/house-rules.ts';
import { type FuseFormId, fuseForms } from '../model/tables/fuse-forms.ts';

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
