import type { PartPromise, PromisedShelf } from '../../../model/content/promised.ts';
import type { BuildPlan } from '../../../model/plan/index.ts';
import { partsOf } from '../../reference/parts-used.ts';
import type { PublishedJob, ShopSite } from '../shop-site.ts';
import { type OtherJob, unnamedTo, type WithoutNames, withoutNames } from './other-jobs.ts';

/** A site for one job, and what was left out of it since it tells of another. */
export interface LoneSite {
  readonly site: ShopSite;
  /** Guides that name another job, by their slugs. */
  readonly leftOut: readonly string[];
}

/**
 * The site of one job alone: the job with its revisions, their vehicles, the parts that they use and that these vehicles
 * came with, and the guides of the shop. No other job is told of: not by a page, and not by what is promised to it from the
 * shelf, of which only the amount is told. Throws where the shop has no such job: a bug.
 */
export function loneSite(shop: ShopSite, id: string, others: readonly OtherJob[]): LoneSite {
  const job = shop.jobs.find(({ plan }) => plan.job.id === id);
  if (!job) throw new Error(`There is no job ${id} to make a site of.`);
  const told = withoutNames(id, others);
  const plans = [job.plan, ...job.revisions.map(({ plan }) => plan)];
  const vehicleIds = new Set(plans.map(({ vehicle }) => vehicle.id));
  const vehicles = pickedFrom(shop.vehicles, (name) => vehicleIds.has(name));
  const fitted = Object.values(vehicles).flatMap((one) => Object.values(one.fitted).map(({ part }) => part));
  const parts = new Set([...fitted, ...plans.flatMap((plan) => [...partsOf(plan)])]);
  const [guides, leftOut] = [
    shop.guides.filter((guide) => !told.isNamedIn([guide.title, guide.summary, guide.body])),
    shop.guides.filter((guide) => told.isNamedIn([guide.title, guide.summary, guide.body])),
  ];
  return {
    site: {
      ...shop,
      isOneJob: true,
      promised: promisedOf(id, shop.promised),
      parts: pickedFrom(shop.parts, (name) => parts.has(name)),
      vehicles,
      guides,
      jobs: [loneJob(job, told)],
    },
    leftOut: leftOut.map(({ slug }) => slug),
  };
}

function loneJob(job: PublishedJob, told: WithoutNames): PublishedJob {
  return {
    ...job,
    plan: lonePlan(job.plan, told),
    revisions: job.revisions.map((one) => ({ ...one, plan: lonePlan(one.plan, told) })),
  };
}

/** A plan that tells what of the shelf is promised to others, and not to whom. */
function lonePlan(plan: BuildPlan, told: WithoutNames): BuildPlan {
  const own = told.also(plan.pick.flatMap(({ promised = [] }) => promised.map(({ job }) => job)));
  const finding = <F extends { readonly message: string; readonly remedy: string }>(one: F): F => ({
    ...one,
    message: own.text(one.message),
    remedy: own.text(one.remedy),
  });
  return {
    ...plan,
    pick: plan.pick.map((one) =>
      one.promised ? { ...one, promised: unnamedTo(plan.job.id, one.promised) } : one,
    ),
    findings: plan.findings.map((one) => ({
      ...finding(one),
      ...(one.follows && { follows: one.follows.map(finding) }),
    })),
  };
}

function promisedOf(id: string, promised: PromisedShelf): PromisedShelf {
  return Object.fromEntries(
    Object.entries(promised).map(([part, promise]): [string, PartPromise] => [
      part,
      { ...promise, to: unnamedTo(id, promise.to) },
    ]),
  );
}

function pickedFrom<T>(
  all: Readonly<Record<string, T>>,
  isPicked: (name: string) => boolean,
): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => isPicked(name)));
}
