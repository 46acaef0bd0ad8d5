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
    bundleFactors: [
      { upTo: 2, factor: 1 },
      { upTo: 3, factor: rules['bundle-3'].value },
      { upTo: 6, factor: rules['bundle-4-to-6'].value },
      { upTo: 24, factor: rules['bundle-7-to-24'].value },
      ...defaultPowerRules.bundleFactors.filter(({ upTo }) => upTo > 24),
    ],
    dropShare: rules['drop-limit'].value,
    fuseMargin: rules['fuse-margin'].value,
    musicDuty: rules['music-duty'].value,
    heavyBassDuty: rules['music-duty-bass'].value,
    sizingV: rules['voltage-sizing'].value,
    ratedPowerV: rules['voltage-rated'].value,
    reserveShare: rules['reserve-end'].value,
    keyOffA: rules['key-off-draw'].value,
    bendDiameters: rules['bend-diameters'].value,
  };
}
