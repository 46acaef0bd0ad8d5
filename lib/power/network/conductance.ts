import { isFault } from '../../model/fault.ts';
import { ohmPerM, type ResistiveConductor } from '../conductor/resistance.ts';
import type { PowerRules } from '../power-rules.ts';

/** Conductances that differ by no more than this share count as equal: it is the rounding of a sum. */
export const conductanceGrace = 1e-6;

/**
 * Conductance of one metre of conductor (S m) at 20 C: the reciprocal of `ohmPerM`, from the part's own resistance
 * where it tells one, else from area and material. Two conductors compare by it, whatever their gauge numbers say.
 * Zero for one of no area.
 */
export function conductanceSm(conductor: ResistiveConductor, rules: PowerRules): number {
  const resistance = ohmPerM(conductor, 20, rules);
  return isFault(resistance) ? 0 : 1 / resistance.value;
}
