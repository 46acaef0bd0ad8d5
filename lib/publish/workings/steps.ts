import type { BuildPlan } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled } from '../words/words.ts';
import { workingOr } from '../words/written.ts';

/** Which steps wait for which others, and why. */
export function stepReasons({ steps }: Pick<BuildPlan, 'steps'>): Table {
  const numbers = new Map(steps.map((step, index) => [step.id, index + 1]));
  return tableOf(
    'Why the steps stand in this order',
    steps,
    [
      { title: 'No.', kind: 'figure', cell: (step) => strong(String(numbers.get(step.id))) },
      { title: 'Step', cell: (step) => ({ text: step.text, beside: step.id }) },
      { title: 'Layer', cell: (step) => spelled(step.layer) },
      {
        title: 'Begins, two people',
        kind: 'figure',
        cell: (step) => printed('time-taken', step.startMinute),
      },
      {
        title: 'Waits for',
        cell: (step) =>
          step.waitsFor.map(({ step: id, why }) => `${numbers.get(id) ?? id}: ${why}`).join('; '),
      },
    ],
    (step) => step.id,
  );
}

/** The times that the order of work is reckoned with. */
export function workTimes({ schedule }: Pick<BuildPlan, 'schedule'>): Table {
  return tableOf('Times that the order of work is reckoned with', schedule.times, [
    { title: 'Work', cell: ({ says }) => says },
    { title: 'Takes', kind: 'figure', cell: ({ minutes }) => workingOr(minutes, 'min', 1) },
    { title: 'From', cell: ({ given }) => (given ? 'the shop' : 'common practice, no source') },
  ]);
}
