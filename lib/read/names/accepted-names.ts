import type { JobFile } from '../../model/content/job.ts';
import { findingCatalogue } from '../../model/findings/index.ts';
import type { Report } from '../report.ts';

/** Reports what a job accepts under a name that no finding has, or twice. */
export function checkAccepted({ accepted }: JobFile, report: Report): void {
  const seen = new Set<string>();
  for (const [k, { finding, of, value, limit }] of accepted.entries()) {
    const path = ['accepted', k] as const;
    if (!report.look([...path, 'finding'], 'finding', finding, findingCatalogue)) continue;
    const key = JSON.stringify([finding, of, value, limit]);
    if (seen.has(key)) report.at(path, `${finding} of ${of} is accepted twice`, 'take one of them out');
    seen.add(key);
  }
}
