import type { BuildPlan, PlanPick } from '../../../lib/model/plan/index.ts';
import { counted, figure, listed, reading, type Section } from './words.ts';

/** What is picked, done and measured. */
export function workSections({ pick, steps, schedule, measurements }: BuildPlan): Section[] {
  return [
    { heading: 'Pick list', lines: pick.map(pickLine) },
    {
      heading: 'Order of work',
      lines: [
        `${counted(steps.length, 'step')}: ${figure(schedule.totalMinutes, 0)} min alone, ${figure(schedule.twoPersonMinutes, 0)} min by two, ${figure(schedule.criticalMinutes, 0)} min at least`,
        ...steps.map(
          ({ id, place, by, minutes, critical }) =>
            `${id}: ${listed(place, by, `${figure(minutes, 0)} min`, critical && 'critical')}`,
        ),
      ],
    },
    {
      heading: 'Predictions',
      lines: measurements.map(({ id, when, predicted, least, greatest, unit, asBuilt, state }) => {
        const read = asBuilt !== undefined && `read ${reading(asBuilt)}, ${state}`;
        return `${when} ${id}: ${listed(`${reading(predicted)} ${unit}`, between(least, greatest), read)}`;
      }),
    },
  ];
}

function between(least: number | null, greatest: number | null): string {
  if (least === null) return greatest === null ? 'any' : `at most ${reading(greatest)}`;
  return greatest === null ? `at least ${reading(least)}` : `${reading(least)} to ${reading(greatest)}`;
}

function pickLine({ part, quantity, unit, stockQuantity, short, reels }: PlanPick): string {
  const decimals = unit === 'm' ? 3 : 0;
  const missing = short > 0 && `${figure(short, decimals)} missing of ${figure(stockQuantity, decimals)}`;
  const from = reels && `from ${counted(reels.length, 'reel')}`;
  return `${part}: ${listed(`${figure(quantity, decimals)} ${unit}`, from, missing)}`;
}
