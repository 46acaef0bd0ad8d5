import type { Job } from '../../model/content/resolved-job.ts';

/** The voltage of a charging system whose regulator varies it. */
export interface VaryingCharge {
  readonly lowV: number;
  readonly highV: number;
  /** What currents and sizes are chosen at: the low end where it was read in this vehicle, else the house rule's. */
  readonly sizingV: number;
}

/** Between what a charging voltage varies (V): as read in the vehicle, else by house rules; null where it is held. */
export function varyingCharge({
  devices,
  rules,
  vehicle,
}: Pick<Job, 'devices' | 'rules'> & Partial<Pick<Job, 'vehicle'>>): VaryingCharge | null {
  const alternators = devices.flatMap(({ spec }) => (spec?.kind === 'alternator' ? [spec] : []));
  const read = alternators.length > 0 ? vehicle?.['charging-range'] : undefined;
  if (read) return { lowV: read.from, highV: read.to, sizingV: read.from };
  if (!alternators.some((one) => one['variable-voltage'])) return null;
  return {
    lowV: rules['voltage-variable-low'].value,
    highV: rules['voltage-variable-high'].value,
    sizingV: rules['voltage-variable'].value,
  };
}
