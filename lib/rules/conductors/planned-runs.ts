import type { Run } from '../../model/content/resolved-job.ts';
import type { PlanRun } from '../../model/plan/index.ts';
import type { Case } from '../rule.ts';

/** A run of the job with what the plan made of it. */
export interface PlannedRun {
  readonly run: Run;
  readonly planned: PlanRun;
}

/** Runs of the job with what the plan made of them; a run without wires is none. */
export function plannedRuns({ job, plan }: Case): readonly PlannedRun[] {
  return job.runs.flatMap((run) => {
    const planned = plan.runs.find(({ id }) => id === run.id);
    return planned && planned.wires.length > 0 ? [{ run, planned }] : [];
  });
}
