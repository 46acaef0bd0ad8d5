import type { Finding } from '../model/finding.ts';
import { contentFiles } from '../read/read-content.ts';
import { withCrew } from './crew/with-crew.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, statusOf } from './exit-status.ts';
import { shopSchemas } from './kept/schema-steps.ts';
import { renewSchemas } from './schemas/renew-schemas.ts';
import { anyStopped, type LoadedShop, loadShop, missingJob, photosOf } from './shop/load-shop.ts';
import { plainFinding, plainProblem } from './told/plain-lines.ts';
import {
  findingText,
  standingText,
  tellBuilt,
  tellChanges,
  tellFailed,
  tellProblems,
} from './told/report.ts';
import { toldFindings } from './told/shared-findings.ts';

/** How a check is told: to a person, in one line each for an editor, or whole for a program. */
export type CheckForm = 'told' | 'plain' | 'json';

/** `rackleaf check [JOB]`: reads, plans and judges; prints every problem and finding, and renews the schemas for editors. */
export async function check(effects: Effects, jobId: string | null, form: CheckForm): Promise<ExitStatus> {
  const only = (id: string) => jobId === null || id === jobId;
  const { shop, schemas } = await withCrew(effects, async (crew) => {
    const loaded = await loadShop(effects, crew, { only, compares: true });
    const photos = await photosOf(effects, loaded);
    return {
      shop: { ...loaded, problems: [...loaded.problems, ...(photos?.problems ?? [])] },
      schemas: shopSchemas(contentFiles(loaded.files), crew.read, crew.keep, only),
    };
  });
  await renewSchemas(effects, schemas);
  const missing = jobId !== null && shop.jobs.length === 0 ? missingJob(shop, jobId) : null;
  tellers[form](shop, effects, missing === null);
  if (missing !== null) effects.tell(missing);
  return statusOf({
    problems: shop.problems.length > 0 || missing !== null,
    stopped: anyStopped(shop),
    failed: shop.failed.length > 0,
  });
}

/** Tells what came of it; of jobs that broke down only where none is missing that was asked for. */
type Tell = (shop: LoadedShop, effects: Effects, tellsFailed: boolean) => void;

const tellers: Readonly<Record<CheckForm, Tell>> = {
  json: ({ problems, promisedOver, jobs, failed }, effects) => {
    const findings = jobs.map(({ job, plan }) => ({ id: job.id, findings: plan.findings }));
    effects.out(JSON.stringify({ problems, shop: promisedOver, jobs: findings, failed }, null, 2));
  },
  plain: (shop, effects, tellsFailed) => {
    for (const problem of shop.problems) effects.out(plainProblem(problem));
    if (tellsFailed) tellFailed(shop, effects);
    for (const finding of ofShopAlone(shop)) effects.out(plainFinding(finding));
    for (const loaded of shop.jobs) {
      for (const finding of loaded.plan.findings) effects.out(plainFinding(finding));
      tellChanges(loaded, effects);
      if (!loaded.released) tellBuilt(loaded, effects);
      effects.tell(standingText(loaded));
    }
  },
  told: (shop, effects, tellsFailed) => {
    tellProblems(shop, effects);
    if (tellsFailed) tellFailed(shop, effects);
    const { shared, own } = toldFindings(shop.jobs);
    for (const { finding, jobs } of shared)
      effects.out(`${findingText(finding)}\n  told once, of ${jobs.join(', ')}`);
    for (const finding of ofShopAlone(shop)) effects.out(findingText(finding));
    for (const loaded of shop.jobs) {
      for (const finding of own(loaded.job.id)) effects.out(findingText(finding));
      tellChanges(loaded, effects);
      effects.out(standingText(loaded));
    }
  },
};

/** The findings of the shop that no job has as well. */
function ofShopAlone({ promisedOver, jobs }: LoadedShop): readonly Finding[] {
  const told = new Set(jobs.flatMap(({ plan }) => plan.findings.map(findingText)));
  return promisedOver.filter((one) => !told.has(findingText(one)));
}
