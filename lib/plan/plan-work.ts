import type { BuildPlan } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import { orderOfWork } from './order-of-work.ts';
import type { PlanBook } from './plan-book.ts';
import type { Work } from './work.ts';

/** The order of work of a job, with the shop's own times; what waits for each other stops the job. */
export function planWork(
  job: Job,
  plan: Work['plan'],
  book: PlanBook,
): Pick<BuildPlan, 'steps' | 'schedule'> {
  const declared = job.devices.flatMap(({ id, given }) =>
    Object.entries(given?.after ?? {}).map(([after, why]) => ({ item: id, after, why })),
  );
  const { steps, schedule, rings } = orderOfWork({ plan, times: job.shop.times, declared });
  for (const { items, message, remedy } of rings) {
    const path = job.devices.find(({ id }) => id === items[0])?.path ?? '';
    book.remark(
      {
        rule: 'steps-wait-for-each-other',
        level: 'stop',
        of: items,
        message,
        remedy,
      },
      { path },
    );
  }
  return { steps, schedule };
}
