import type { Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { inSystem, systemVoltageOf } from '../../model/system-voltage.ts';

/** Internal resistance of a battery: its own figure, or that of its chemistry (ohm). */
export function batteryOhm(
  { rules }: Pick<Job, 'rules'>,
  { resistance, chemistry, voltage }: PartOf<'battery'>,
): number {
  const byChemistry = {
    flooded: 'battery-resistance-flooded',
    'absorbed-glass-mat': 'battery-resistance-agm',
    lithium: 'battery-resistance-lithium',
  } as const;
  // The rules are stated for a battery of 12 V; one of 24 V is two of them in series.
  return resistance ?? inSystem(rules[byChemistry[chemistry]].value, systemVoltageOf(voltage));
}
