import type { LayerHours } from '../model/estimate/estimate.ts';
import type { WorkedHours } from '../model/estimate/worked-hours.ts';
import type { PlanStep } from '../model/plan/index.ts';
import { traced } from '../model/trace.ts';
import type { Money } from './money.ts';

/**
 * Hours of each layer in the order of work, one person doing one step after the other, with what was worked on it so far:
 * first the layers of the plan as they come, then those that somebody worked on beside it, last what was noted of the
 * whole job.
 */
export function layerHours(
  steps: readonly Pick<PlanStep, 'layer' | 'minutes'>[],
  worked: readonly WorkedHours[],
  { book }: Pick<Money, 'book'>,
): readonly LayerHours[] {
  const noted = worked.map(({ layer = null, worked: seconds }) => ({ layer, minutes: seconds / 60 }));
  const layers = new Set<string | null>(steps.map(({ layer }) => layer));
  for (const { layer } of noted) if (layer !== null) layers.add(layer);
  if (noted.some(({ layer }) => layer === null)) layers.add(null);
  return [...layers].map((layer): LayerHours => {
    const minutes = sumOf(steps.filter((one) => one.layer === layer));
    const workedMinutes = sumOf(noted.filter((one) => one.layer === layer));
    const id = layer ?? 'whole-job';
    if (minutes > 0) book.add(`hours.${id}`, estimated(minutes));
    if (workedMinutes > 0) book.add(`worked.${id}`, workedTrace(workedMinutes));
    return { layer, minutes, workedMinutes };
  });
}

function estimated(minutes: number) {
  return traced(minutes, 'min', {
    rule: 'estimate-hours',
    formula: 'the sum of the minutes of its steps, one person',
    citation: 'the order of work; common practice, no source, where the shop wrote no time of its own',
    mark: 'cp',
  });
}

function workedTrace(minutes: number) {
  return traced(minutes, 'min', {
    origin: 'given',
    rule: 'estimate-hours',
    formula: 'the sum of what was noted under hours:',
    citation: 'the job file',
  });
}

/** The days on which somebody worked, as far as it is noted; null for none. */
export function workedDays(worked: readonly Pick<WorkedHours, 'day'>[]) {
  const days = [...new Set(worked.map(({ day }) => day))].sort();
  const [first] = days;
  const last = days.at(-1);
  return first === undefined || last === undefined ? null : { first, last, count: days.length };
}

function sumOf(list: readonly { readonly minutes: number }[]): number {
  // Noted hours may be thirds of one: to a thousandth of a minute.
  return Number(list.reduce((sum, { minutes }) => sum + minutes, 0).toFixed(3));
}
