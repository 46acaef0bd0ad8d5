import type { BuildPlan, PlanHouseRule } from '../../model/plan/index.ts';
import { type Cell, strong, type Table, tableOf } from '../sheets/table.ts';
import { markWords } from '../words/words.ts';
import { plainNumber } from '../words/written.ts';

/** Every house rule that the plan was made by, with where it comes from and how far that may be relied on. */
export function houseRulesTable({ rules }: Pick<BuildPlan, 'rules'>): Table {
  return tableOf(
    'House rules',
    rules,
    [
      { title: 'Rule', cell: ({ says, name }) => strong(says, name) },
      { title: 'Value', kind: 'figure', cell: ({ value, unit }) => withUnit(value, unit) },
      { title: 'Set by', cell: setBy },
      { title: 'Source', cell: sourceOf },
    ],
    ({ name }) => name,
  );
}

const withUnit = (value: number, unit: string): string => `${plainNumber(value)} ${unit}`.trimEnd();

function setBy({ given, standard, unit }: PlanHouseRule): Cell {
  return given ? { text: 'the shop', beside: `default ${withUnit(standard, unit)}` } : { text: 'default' };
}

function sourceOf({ citation, mark }: PlanHouseRule): Cell {
  return mark === undefined ? { text: citation } : { text: citation, beside: `${mark}: ${markWords[mark]}` };
}
