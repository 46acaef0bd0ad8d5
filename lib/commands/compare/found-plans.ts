import type { SourceFile } from '../../model/content/source-file.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { frozenAt } from '../../read/frozen-file.ts';
import { remedyFor } from '../../read/report.ts';
import { type LoadedShop, missingJob, superseded } from '../shop/load-shop.ts';
import type { ComparedName } from './compared-name.ts';

/** A plan that was found, with what it is called beside another. */
export interface Found {
  readonly name: string;
  readonly plan: BuildPlan;
}

/** True where a name is that of a released revision, so that nothing need be planned for it. */
export function isFrozenIn(files: readonly SourceFile[], { job, revision }: ComparedName): boolean {
  return files.some(({ path }) => {
    const of = frozenAt(path);
    return of?.job === job && of.revision === revision;
  });
}

/** The plan of a job as its sheets show it, or of a revision; why there is none in place of it. */
export function foundIn(shop: LoadedShop, { job, revision }: ComparedName): Found | string {
  const frozen = shop.frozen.filter((one) => one.job === job);
  const own = frozen.find((one) => one.revision === revision);
  if (own) {
    const plan = own === frozen.at(-1) ? own.plan : superseded(own.plan);
    return { name: nameOf(plan), plan };
  }
  const loaded = shop.jobs.find((one) => one.job.id === job);
  if (!loaded) return missingJob(shop, job);
  const { plan } = loaded;
  if (revision === null || revision === plan.job.revision) return { name: nameOf(plan), plan };
  const known = [...new Set([...frozen.map((one) => one.revision), plan.job.revision])];
  return `${job} has no revision "${revision}"; ${remedyFor(revision, known)}`;
}

/** The last release of a job, and what its file asks for today; why there are not both in place of them. */
export function lastAndToday(shop: LoadedShop, job: string): readonly [Found, Found] | string {
  const loaded = shop.jobs.find((one) => one.job.id === job);
  if (!loaded) return missingJob(shop, job);
  const last = shop.frozen.filter((one) => one.job === job).at(-1);
  if (!last)
    return `${job} was not released yet: name another job or revision, such as rackleaf compare ${job} OTHER`;
  const today = loaded.today ?? loaded.plan;
  return [
    { name: `${nameOf(last.plan)}, as released`, plan: last.plan },
    { name: `${nameOf(today)}, as planned today`, plan: today },
  ];
}

function nameOf({ job: { id, revision } }: Pick<BuildPlan, 'job'>): string {
  return `${id}, revision ${revision}`;
}
