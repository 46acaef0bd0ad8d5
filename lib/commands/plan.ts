import { planJsonSchema } from '../model/plan/index.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { anyStopped, loadShop, missingJob, missingStatus } from './shop/load-shop.ts';
import { standingText, tellProblems } from './told/report.ts';

/** `rackleaf plan JOB [--json]`: the whole plan document, or one line and its findings' count. */
export async function plan(effects: Effects, jobId: string, json: boolean): Promise<ExitStatus> {
  const shop = await withCrew(effects, (crew) =>
    loadShop(effects, crew, { only: (id) => id === jobId, compares: true }),
  );
  tellProblems(shop, effects);
  const [loaded] = shop.jobs;
  if (!loaded) {
    effects.tell(missingJob(shop, jobId));
    return missingStatus(shop);
  }
  effects.out(json ? JSON.stringify(loaded.plan, null, 2) : standingText(loaded));
  return statusOf({ problems: shop.problems.length > 0, stopped: anyStopped(shop) });
}

/** `rackleaf plan --schema`: the JSON Schema of the plan document. */
export function planSchema(effects: Effects): ExitStatus {
  effects.out(JSON.stringify(planJsonSchema(), null, 2));
  return exitStatus.done;
}
