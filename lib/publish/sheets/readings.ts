import type { PlanMeasurement } from '../../model/plan/index.ts';
import { plainNumber } from '../written.ts';
import { dense, type Group, groupedTable, strong, type Table } from './table.ts';

const stateWords = {
  open: '',
  agrees: 'agrees',
  differs: 'DIFFERS',
} as const satisfies Record<PlanMeasurement['state'], string>;

/** A table of readings: what is foretold beside a blank, or beside what was read once it was. */
export function readingsTable(caption: string, groups: readonly Group<PlanMeasurement>[]): Table {
  return dense(
    groupedTable(
      caption,
      groups,
      [
        { title: 'Measure', kind: 'words', cell: (one) => one.what },
        { title: 'Predicted', kind: 'figure', cell: (one) => strong(valueText(one.predicted, one.unit)) },
        { title: 'Right between', kind: 'figure', cell: limitsText },
        {
          title: 'Read',
          kind: 'blank',
          cell: (one) => (one.asBuilt === undefined ? '' : strong(valueText(one.asBuilt, one.unit))),
        },
        {
          title: 'State',
          cell: (one) => ({
            text: stateWords[one.state],
            strong: one.state === 'differs',
            ...(one.explanation !== null && { beside: 'see the findings of the cover' }),
          }),
        },
      ],
      (one) => one.id,
    ),
  );
}

/** The limits; with their unit where no prediction beside them tells in what the line is read. */
function limitsText({ least, greatest, predicted, unit: own }: PlanMeasurement): string {
  const unit = predicted === null ? own : '';
  if (least === null && greatest === null) return predicted === null ? `in ${own}` : '';
  if (least === null) return `to ${valueText(greatest, unit)}`;
  return greatest === null
    ? `from ${valueText(least, unit)}`
    : `${valueText(least, '')} to ${valueText(greatest, unit)}`;
}

function valueText(value: number | null, unit: string): string {
  return value === null ? '—' : `${plainNumber(Number(value.toPrecision(3)))} ${unit}`.trimEnd();
}
