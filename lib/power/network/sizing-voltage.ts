import type { Vehicle } from '../../model/content/vehicle.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Part } from '../../model/kinds/index.ts';
import { alternatorsOf, varyingCharge } from './varying-charge.ts';

/** What the voltage for sizing follows from. */
interface SizedFor {
  readonly devices: readonly { readonly spec: Part | null }[];
  readonly rules: HouseRules;
  readonly vehicle?: Pick<Vehicle, 'charging-voltage' | 'charging-range'>;
}

/**
 * The voltage that currents and sizes are chosen at (V): the house rule's, lower where the vehicle lets its charging
 * voltage vary, and never above what an alternator is set to.
 */
export function sizingVoltageV({ devices, rules, vehicle }: SizedFor): number {
  const alternators = alternatorsOf(devices);
  const varying = varyingCharge({ devices, rules, vehicle });
  const measured = alternators.length > 0 ? (vehicle?.['charging-voltage'] ?? []) : [];
  const setPoints = alternators.flatMap((alternator) => alternator['set-point'] ?? []).concat(measured);
  return Math.min(varying?.sizingV ?? rules['voltage-sizing'].value, ...setPoints);
}
