import type { PlanMeasurement } from '../../model/plan/index.ts';
import { noFigure, printed, printedNumber } from '../../model/printed/index.ts';
import { lineFigures } from '../../model/printed/record.ts';
import { plainNumber } from '../words/written.ts';
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
        { title: 'Predicted', kind: 'figure', leads: true, cell: (one) => strong(predictedText(one)) },
        { title: 'Right between', kind: 'figure', cell: limitsText },
        {
          title: 'Read',
          kind: 'blank',
          cell: (one) => (one.asBuilt === undefined ? '' : strong(asRead(one.asBuilt, one.unit))),
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

/** What is foretold of a reading. */
export function predictedText(line: PlanMeasurement): string {
  const figures = lineFigures(line);
  return figures === null ? asRead(line.predicted, line.unit) : printed(figures.predicted, line.predicted);
}

/** The limits; with their unit where no prediction beside them tells in what the line is read. */
export function limitsText(line: PlanMeasurement): string {
  const { least, greatest, predicted, unit } = line;
  if (least === null && greatest === null) return predicted === null ? `in ${unit}` : '';
  const figures = lineFigures(line);
  const told = (side: 'least' | 'greatest', withUnit: boolean): string => {
    if (figures === null) return asRead(line[side], withUnit ? unit : '');
    return withUnit ? printed(figures[side], line[side]) : printedNumber(figures[side], line[side]);
  };
  if (least === null) return `to ${told('greatest', predicted === null)}`;
  if (greatest === null) return `from ${told('least', predicted === null)}`;
  return `${told('least', false)} to ${told('greatest', predicted === null)}`;
}

/** A reading as it was taken: it has the digits of the meter that showed it. */
function asRead(value: number | null, unit: string): string {
  return value === null ? noFigure : `${plainNumber(value)} ${unit}`.trimEnd();
}
