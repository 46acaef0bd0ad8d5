import type { HouseRules } from '../model/house-rules.ts';
import { onceFor } from '../model/once-for.ts';
import type { FuseFormId } from '../model/tables/fuse-forms.ts';
import type { PowerRules } from './power-rules.ts';

/** The shop's house rules in the terms of the power computations; put together once for the same rules. */
export const powerRules = onceFor(inPowerTerms);

function inPowerTerms(rules: HouseRules): PowerRules {
  return {
    conductorC: rules['conductor-temperature'].value,
    strandedFactor: 1 + rules.stranding.value,
    claddedConductivity: rules['clad-conductivity'].value,
    claddedPerK: rules['clad-per-kelvin'].value,
    dropShare: rules['drop-limit'].value,
    fuseMargin: rules['fuse-margin'].value,
    sizingV: rules['voltage-sizing'].value,
    reserveShare: rules['reserve-end'].value,
    chargeEfficiency: rules['charge-efficiency'].value,
    chargingShare: rules['charging-share'].value,
    keyOffA: rules['key-off-draw'].value,
    mostLugsOnStud: rules['lugs-on-stud'].value,
    ...ampacityRules(rules),
    ...interruptRules(rules),
  };
}

/** What lowers the current that a conductor may carry. */
function ampacityRules(
  rules: HouseRules,
): Pick<PowerRules, 'unmarkedInsulationC' | 'coveredFactor' | 'bundleFactors' | 'thinWireA'> {
  return {
    unmarkedInsulationC: rules['insulation-unmarked'].value,
    coveredFactor: rules['loom-factor'].value,
    bundleFactors: [
      { upTo: 2, factor: 1 },
      { upTo: 3, factor: rules['bundle-3'].value },
      { upTo: 6, factor: rules['bundle-4-to-6'].value },
      { upTo: 24, factor: rules['bundle-7-to-24'].value },
      { upTo: 999, factor: rules['bundle-over-24'].value },
    ],
    thinWireA: {
      '20': rules['fuse-20-awg'].value,
      '22': rules['fuse-22-awg'].value,
      '24': rules['fuse-24-awg'].value,
    },
  };
}

/** What batteries ask a fuse to interrupt, and what fuses interrupt where their maker is silent. */
function interruptRules(rules: HouseRules): Pick<PowerRules, 'interruptNeeds' | 'formInterruptA'> {
  const form = (id: FuseFormId) => rules[`interrupt-${id}`].value;
  return {
    interruptNeeds: {
      to650A: rules['interrupt-to-650'].value,
      to1100A: rules['interrupt-to-1100'].value,
      aboveA: rules['interrupt-above'].value,
    },
    formInterruptA: {
      'micro-blade': form('micro-blade'),
      'low-profile-mini-blade': form('low-profile-mini-blade'),
      'mini-blade': form('mini-blade'),
      'standard-blade': form('standard-blade'),
      'maxi-blade': form('maxi-blade'),
      'bolt-in-30mm': form('bolt-in-30mm'),
      'small-bolt-in': form('small-bolt-in'),
      'large-bolt-in': form('large-bolt-in'),
      'bolt-in-51mm': form('bolt-in-51mm'),
      'class-t': form('class-t'),
    },
  };
}
