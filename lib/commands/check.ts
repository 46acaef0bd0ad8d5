import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, statusOf } from './exit-status.ts';
import { anyStopped, loadShop, missingJob } from './shop/load-shop.ts';
import { findingText, standingText, tellChanges, tellFailed, tellProblems } from './told/report.ts';

/** `rackleaf check [JOB]`: reads, plans and judges; prints every problem and finding. */
export async function check(effects: Effects, jobId: string | null, json: boolean): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => jobId === null || id === jobId, compares: true }),
  );
  const missing = jobId !== null && shop.jobs.length === 0 ? missingJob(shop, jobId) : null;
  if (json) {
    const jobs = shop.jobs.map(({ job, plan }) => ({ id: job.id, findings: plan.findings }));
    const { problems, failed } = shop;
    effects.out(JSON.stringify({ problems, jobs, failed }, null, 2));
  } else {
    tellProblems(shop, effects);
    if (missing === null) tellFailed(shop, effects);
    for (const loaded of shop.jobs) {
      for (const finding of loaded.plan.findings) effects.out(findingText(finding));
      tellChanges(loaded, effects);
      effects.out(standingText(loaded));
    }
  }
  if (missing !== null) effects.tell(missing);
  return statusOf({
    problems: shop.problems.length > 0 || missing !== null,
    stopped: anyStopped(shop),
    failed: shop.failed.length > 0,
  });
}
