import type { BuildPlan, PlanMeasurement } from '../../model/plan/index.ts';
import { readingsTable } from './readings.ts';
import { builderSheet } from './sheet.ts';
import type { Table } from './table.ts';

/** Predicted values beside blanks, and what was read once it was. */
export interface CommissioningSheet {
  readonly record: Table;
  /** Blanks under the record. */
  readonly signatures: readonly string[];
}

const whenWords = {
  survey: 'Before the plan stands',
  bench: 'On the bench',
  'before-power': 'In the vehicle, before power',
  banks: 'Before the fuse of a capacitor bank goes in',
  power: 'With power',
  gains: 'Setting the gains, speakers off',
  delays: 'Setting the delays',
  load: 'Last, with all set: under load, noise, key off',
} as const satisfies Record<PlanMeasurement['when'], string>;

/** Measurements in the order in which they are taken. */
export const measuringOrder = Object.keys(whenWords);

function commissioningModel(plan: BuildPlan): CommissioningSheet | null {
  if (plan.measurements.length === 0) return null;
  const groups = Object.entries(whenWords)
    .map(([when, title]) => ({ title, things: plan.measurements.filter((one) => one.when === when) }))
    .filter(({ things }) => things.length > 0);
  return {
    record: readingsTable('Record of measurements', groups),
    signatures: ['Measured by', 'Date', 'Meter', 'Odometer'],
  };
}

export const commissioning = builderSheet('commissioning', 'Commissioning record', commissioningModel, {
  cautions: ['firstPower', 'hearing'],
});
