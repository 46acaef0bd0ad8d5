import type { Vehicle } from '../../model/content/vehicle.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Part, PartOf } from '../../model/kinds/index.ts';

/** The voltage of a charging system whose regulator varies it. */
export interface VaryingCharge {
  readonly lowV: number;
  readonly highV: number;
  /** What currents and sizes are chosen at: the low end where it was read in this vehicle, else the house rule's. */
  readonly sizingV: number;
}

type Fitted = readonly { readonly spec: Part | null }[];

interface ChargedBy {
  readonly devices: Fitted;
  readonly rules: HouseRules;
  readonly vehicle?: Pick<Vehicle, 'charging-range'> | undefined;
}

/** The alternators among some devices. */
export function alternatorsOf(devices: Fitted): readonly PartOf<'alternator'>[] {
  return devices.flatMap(({ spec }) => (spec?.kind === 'alternator' ? [spec] : []));
}

/** Between what a charging voltage varies (V): as read in the vehicle, else by house rules; null where it is held. */
export function varyingCharge({ devices, rules, vehicle }: ChargedBy): VaryingCharge | null {
  const alternators = alternatorsOf(devices);
  const read = alternators.length > 0 ? vehicle?.['charging-range'] : undefined;
  if (read) return { lowV: read.from, highV: read.to, sizingV: read.from };
  if (!alternators.some((one) => one['variable-voltage'])) return null;
  return {
    lowV: rules['voltage-variable-low'].value,
    highV: rules['voltage-variable-high'].value,
    sizingV: rules['voltage-variable'].value,
  };
}
