import { isStopped, planJsonSchema } from '../model/plan/index.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { loadJob } from './shop/load-job.ts';
import { anyStopped, type LoadedJob } from './shop/load-shop.ts';
import { findingText, standingText } from './told/report.ts';

/** `rackleaf plan JOB [--json]`: the whole plan document, or in a line where it stands with its findings' count, and the first to mend. */
export async function plan(effects: Effects, jobId: string, json: boolean): Promise<ExitStatus> {
  const found = await loadJob(effects, jobId, { compares: true });
  if (typeof found === 'number') return found;
  const { shop, loaded } = found;
  effects.out(json ? JSON.stringify(loaded.plan, null, 2) : planText(loaded));
  return statusOf({ problems: shop.problems.length > 0, stopped: anyStopped(shop) });
}

/** Where a job stands; where it is stopped, also what is mended first, and where the rest is told. */
function planText(loaded: LoadedJob): string {
  const { job, plan } = loaded;
  const [first] = plan.findings;
  if (!first || !isStopped(plan)) return standingText(loaded);
  return [
    standingText(loaded),
    `mend first: ${findingText(first)}`,
    `all findings: rackleaf check ${job.id}`,
  ].join('\n');
}

/** `rackleaf plan --schema`: the JSON Schema of the plan document. */
export function planSchema(effects: Effects): ExitStatus {
  effects.out(JSON.stringify(planJsonSchema(), null, 2));
  return exitStatus.done;
}
