import type { BuildPlan } from '../../model/plan/index.ts';
import { findingGroups } from '../page/finding-model.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';

/** Where each finding comes from: the figures, the rule and its source, the places in the files. */
export function findingSources({ findings }: Pick<BuildPlan, 'findings'>): Table {
  const all = findingGroups(findings).flatMap((group) =>
    group.findings.flatMap((one) => [
      { ...one, word: group.word },
      ...one.follows.map((from) => ({
        ...from,
        remedy: `Follows from ${one.rule}.`,
        figures: '',
        source: '',
        accepted: null,
      })),
    ]),
  );
  return tableOf('Findings with their sources', all, [
    { title: 'Level', cell: ({ word }) => strong(word) },
    {
      title: 'Finding',
      cell: ({ message, remedy, accepted }) => ({
        text: message,
        beside: accepted === null ? remedy : `${remedy} ${accepted}`,
      }),
    },
    { title: 'Figures', cell: ({ figures }) => figures },
    { title: 'Rule and source', cell: ({ rule, source }) => ({ text: rule, beside: source }) },
    { title: 'Written at', cell: ({ places }) => places.join(', ') },
  ]);
}
