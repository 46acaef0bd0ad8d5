import type { HouseRules } from '../model/house-rules.ts';
import { defaultPowerRules, type PowerRules } from '../power/power-rules.ts';

/** The shop's house rules in the terms of the power computations. */
export function powerRules(rules: HouseRules): PowerRules {
  return {
    ...defaultPowerRules,
    conductorC: rules['conductor-temperature'].value,
    strandedFactor: 1 + rules.stranding.value,
    unmarkedInsulationC: rules['insulation-unmarked'].value,
    coveredFactor: rules['loom-factor'].value,
    dropShare: rules['drop-limit'].value,
    fuseMargin: rules['fuse-margin'].value,
    musicDuty: rules['music-duty'].value,
    heavyBassDuty: rules['music-duty-bass'].value,
    sizingV: rules['voltage-sizing'].value,
    ratedPowerV: rules['voltage-rated'].value,
    reserveShare: rules['reserve-end'].value,
    keyOffA: rules['key-off-draw'].value,
  };
}
