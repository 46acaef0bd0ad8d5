import type { BuildPlan, PlanMeasurement } from '../../model/plan/index.ts';
import { plainNumber } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf } from './table.ts';

/** Predicted values beside blanks, and what was read once it was. */
export interface CommissioningSheet {
  readonly record: Table;
  /** Blanks under the record. */
  readonly signatures: readonly string[];
}

const stateWords = {
  open: 'Not yet read',
  agrees: 'Agrees',
  differs: 'DIFFERS',
} as const satisfies Record<PlanMeasurement['state'], string>;

function commissioningModel(plan: BuildPlan): CommissioningSheet | null {
  if (plan.measurements.length === 0) return null;
  return {
    record: tableOf(
      'Record of measurements',
      plan.measurements,
      [
        { title: 'Measure', cell: (one) => strong(one.what, one.id) },
        { title: 'Predicted', kind: 'figure', cell: (one) => valueText(one.predicted, one.unit) },
        {
          title: 'Read',
          kind: 'blank',
          cell: (one) => (one.asBuilt === undefined ? '' : strong(valueText(one.asBuilt, one.unit))),
        },
        {
          title: 'State',
          cell: (one) => ({ text: stateWords[one.state], strong: one.state === 'differs' }),
        },
      ],
      (one) => one.id,
    ),
    signatures: ['Measured by', 'Date', 'Meter', 'Odometer'],
  };
}

function valueText(value: number | null, unit: string): string {
  return value === null ? '—' : `${plainNumber(Number(value.toPrecision(4)))} ${unit}`.trimEnd();
}

export const commissioning = builderSheet('commissioning', 'Commissioning record', commissioningModel, { cautions: [
  'firstPower',
  'hearing',
] });
