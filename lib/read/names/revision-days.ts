import type { JobFile } from '../../model/content/job.ts';
import type { Report } from '../report.ts';

/** Reports a revision that is built in before its day. */
export function checkRevisionDays({ revisions }: Pick<JobFile, 'revisions'>, report: Report): void {
  for (const [k, { revision, date, installed }] of revisions.entries())
    if (installed !== undefined && installed < date)
      report.at(
        ['revisions', k, 'installed'],
        `revision ${revision} is built in on ${installed}, before its day, ${date}`,
        'write the day on which it was built in',
      );
}
