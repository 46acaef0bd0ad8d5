import type { Finding } from '../../model/finding.ts';
import type { LoadedJob } from '../shop/load-shop.ts';
import { findingText } from './report.ts';

/** What several jobs have from the same place of the shop, a vehicle or a part. */
export interface SharedFinding {
  readonly finding: Finding;
  /** Ids of the jobs that have it. */
  readonly jobs: readonly string[];
}

/** The findings of several jobs: what they share once, and what is left of each. */
export interface ToldFindings {
  readonly shared: readonly SharedFinding[];
  readonly own: (job: string) => readonly Finding[];
}

type JobWithFindings = {
  readonly job: Pick<LoadedJob['job'], 'id'>;
  readonly plan: Pick<LoadedJob['plan'], 'findings'>;
};

/**
 * Findings as a check of several jobs tells them: what a vehicle, the shop or a part lacks is told once, with the jobs
 * that it is of. On the sheets of each of these it stands all the same.
 */
export function toldFindings(jobs: readonly JobWithFindings[]): ToldFindings {
  const known = new Map<string, { finding: Finding; jobs: Set<string> }>();
  for (const { job, plan } of jobs)
    for (const finding of plan.findings.filter(isOfNoJob)) {
      const text = findingText(finding);
      const one = known.get(text) ?? { finding, jobs: new Set<string>() };
      one.jobs.add(job.id);
      known.set(text, one);
    }
  const shared = [...known].filter(([, one]) => one.jobs.size > 1);
  const texts = new Set(shared.map(([text]) => text));
  const own = new Map(
    jobs.map(({ job, plan }) => [
      job.id,
      plan.findings.filter((one) => !isOfNoJob(one) || !texts.has(findingText(one))),
    ]),
  );
  return {
    shared: shared.map(([, one]) => ({ finding: one.finding, jobs: [...one.jobs] })),
    own: (job) => own.get(job) ?? [],
  };
}

/** True for what stands in a file that jobs share. */
function isOfNoJob({ where }: Finding): boolean {
  return !where.file.startsWith('content/jobs/');
}
