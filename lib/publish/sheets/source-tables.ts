import type { BuildPlan, PlanInput, PlanOutput } from '../../model/plan/index.ts';
import { printed, printedNumber } from '../../model/printed/index.ts';
import { namesOf } from '../words/plan-names.ts';
import { spelledWithin } from '../words/words.ts';
import { none } from '../words/written.ts';
import { type Cell, groupedTable, groupsBy, strong, type Table, tableOf } from './table.ts';

const verdictWords = {
  within: 'within',
  'too-low': 'TOO LOW',
  'too-high': 'TOO HIGH',
  unknown: 'measure it',
} as const satisfies Record<PlanInput['verdict'], string>;

/** What arrives at each input, and what the outputs of the vehicle's own source are known to give. */
export function sourceTables(plan: BuildPlan): Table[] {
  return [inputsTable(plan), outputsTable(plan)];
}

function inputsTable(plan: BuildPlan): Table {
  const { wire } = namesOf(plan);
  return tableOf(
    'Signal level at each input',
    plan.audio.inputs,
    [
      { title: 'Input', cell: (one) => strong(one.input) },
      { title: 'From', cell: (one) => ({ text: one.output, beside: wire(one.wire) }) },
      { title: 'Arrives', kind: 'figure', cell: arrivesCell },
      {
        title: 'Full output at',
        kind: 'figure',
        leads: true,
        cell: (one) => printed('voltage-at-least', one.leastV),
      },
      { title: 'Takes', kind: 'figure', cell: (one) => printed('voltage-at-most', one.greatestV) },
      {
        title: 'Level is',
        cell: (one) => ({
          text: verdictWords[one.verdict],
          strong: one.verdict !== 'within',
        }),
      },
    ],
    (one) => one.input,
  );
}

/** What arrives, beside the rated power that it was reckoned from. */
function arrivesCell({ sourceV, sourceRated }: PlanInput): Cell | string {
  const text = printed('voltage', sourceV);
  if (!sourceRated) return text;
  const { powerW, loadOhm } = sourceRated;
  return { text, beside: `by ${printed('power', powerW)} into ${printed('load', loadOhm)}` };
}

/** What is still to find out stands above the outputs that lack it: they mostly lack the same. */
function outputsTable(plan: BuildPlan): Table {
  const feeding = plan.audio.outputs.filter((one) => one.feeds.length > 0);
  return groupedTable(
    'Outputs of the source that came with the vehicle',
    groupsBy(feeding, (one) => missingText(one)),
    [
      { title: 'Output', cell: (one) => strong(one.id) },
      { title: 'Feeds', cell: (one) => one.feeds.join(', ') },
      { title: 'Band', kind: 'figure', cell: bandText },
      {
        title: 'Clean to',
        kind: 'figure',
        leads: true,
        cell: (one) => printed('voltage-at-most', one.cleanVoltageV),
      },
      { title: 'Offset', kind: 'figure', cell: (one) => printed('voltage', one.offsetV) },
    ],
    (one) => one.id,
  );
}

function bandText({ fromHz, toHz }: PlanOutput): string {
  return fromHz === null || toHz === null
    ? none.text
    : `${printedNumber('frequency', fromHz)} to ${printed('frequency', toHz)}`;
}

function missingText({ missing }: PlanOutput): string {
  return missing.length === 0
    ? 'Nothing is left to find out'
    : `Still to find out: ${missing.map(spelledWithin).join(', ')}`;
}
