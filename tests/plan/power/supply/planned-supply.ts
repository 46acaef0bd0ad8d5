import type { PlanPower } from '../../../../lib/model/plan/index.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planPower } from '../../../../lib/plan/power/plan-power.ts';
import { jobOf, one } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { cabled } from '../two-batteries.ts';

export type Change = (content: Written) => void;
export const none: Change = () => {};

/** The supply side of the small job of the rules' tests, with cable to cut it from, and what was noticed. */
export function planned(change: Change = none) {
  const sizing = settledPower((content) => {
    cabled(content);
    change(content);
  });
  const book = new PlanBook();
  const power = planPower(sizing, sizing, book);
  return { sizing, power, traces: book.traces(), placed: book.remarks() };
}

export const point = ({ points }: Pick<PlanPower, 'points'>, name: string) =>
  one(points, (each) => each.name === name);

/** The small job of the rules' tests as read. */
export function readJob(change: Change = none) {
  const content = written();
  change(content);
  return jobOf(content);
}
