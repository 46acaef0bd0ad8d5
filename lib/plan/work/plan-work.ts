import type { Job } from '../../model/content/resolved-job.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { systemVoltageOf } from '../../model/system-voltage.ts';
import type { PlanBook } from '../plan-book.ts';
import { orderOfWork } from './steps/order-of-work.ts';
import type { Work } from './work.ts';

/** Tweeters that are alone on their channel: no crossover of their own keeps the bass from them. */
function activeTweeters(job: Job, { audio }: Pick<Work['plan'], 'audio'>): readonly string[] {
  const alone = audio.channels.flatMap(({ speakers }) => (speakers.length === 1 ? speakers : []));
  return job.devices.flatMap(({ id, spec }) =>
    spec?.kind === 'speaker' && spec.band === 'tweeter' && alone.includes(id) ? [id] : [],
  );
}

/** The order of work of a job, with the shop's own times; what waits for each other stops the job. */
export function planWork(
  job: Job,
  plan: Work['plan'],
  book: PlanBook,
): Pick<BuildPlan, 'steps' | 'schedule'> {
  const declared = job.devices.flatMap(({ id, given }) =>
    Object.entries(given?.after ?? {}).map(([after, why]) => ({ item: id, after, why })),
  );
  const { steps, schedule, rings } = orderOfWork({
    plan,
    times: job.shop.times,
    declared,
    tape: lengthStyle(job.shop),
    tiesM: {
      board: job.rules['tie-spacing-board'].value,
      vehicle: job.rules['tie-spacing-vehicle'].value,
    },
    bankWithinV: job.rules['bank-charged-within'].value,
    continuityOhm: {
      ground: job.rules['continuity-ground'].value,
      wire: job.rules['continuity-wire'].value,
    },
    gainUnder: job.rules['gain-under'].value,
    systemV: systemVoltageOf(job.vehicle['system-voltage']),
    activeTweeters: activeTweeters(job, plan),
  });
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
