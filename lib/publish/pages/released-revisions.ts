import type { BuildPlan } from '../../model/plan/index.ts';
import type { Link } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import type { PublishedJob } from '../site/shop-site.ts';

/** Two plans of one job that follow each other, and where they are compared. */
export interface Succession {
  readonly before: BuildPlan;
  readonly after: BuildPlan;
  readonly address: string;
}

/** True where the job's page shows a plan that is released: its revision is among those that were frozen. */
export function isReleased({ plan, revisions }: Pick<PublishedJob, 'plan' | 'revisions'>): boolean {
  return revisions.some(({ revision }) => revision === plan.job.revision);
}

/** Each released revision after the one before, and the job as it stands after the last one where it went on. */
export function successions(job: Pick<PublishedJob, 'plan' | 'revisions'>): Succession[] {
  const { plan, revisions } = job;
  const { id } = plan.job;
  const followed = revisions.slice(1).map(({ revision, plan: after }, nth): Succession => {
    const before = revisions[nth]?.plan ?? after;
    return { before, after, address: addresses.revisionChanges(id, revision) };
  });
  const last = revisions.at(-1)?.plan;
  return last === undefined || isReleased(job)
    ? followed
    : [...followed, { before: last, after: plan, address: addresses.changes(id) }];
}

/** The ways from a page of a job to what changed from revision to revision. */
export function changeLinks(job: Pick<PublishedJob, 'plan' | 'revisions'>, from: string): Link[] {
  return successions(job).map(({ before, after, address }) => ({
    title: `What changed from ${before.job.revision} to ${after.job.revision}`,
    href: linkTo(from, address),
  }));
}

/** What a page of a job says of the revision that it shows, and of the one that stands. */
export interface RevisionStanding {
  readonly says: string;
  /** The revision that stands or is drawn: the way there. */
  readonly to: Link | null;
  /** What changed since the released one before: the way there, and how much it is. */
  readonly changes: (Link & { readonly counts: string }) | null;
}

/** Tells how much differs between two plans, such as `1 gone, 24 changed`. */
export type CountsOf = (pair: Pick<Succession, 'before' | 'after'>) => string;

/** What the page of a released revision says: whether it stands, and which one does. */
export function standingOf(
  job: PublishedJob,
  revision: string,
  from: string,
  countsOf: CountsOf,
): RevisionStanding {
  const { id, revision: shown } = job.plan.job;
  const standing = job.revisions.at(-1)?.revision ?? shown;
  const stood = successions(job).find(({ address }) => address === addresses.revisionChanges(id, revision));
  const changes = stood
    ? {
        title: `What changed since revision ${stood.before.job.revision}`,
        href: linkTo(from, stood.address),
        counts: countsOf(stood),
      }
    : null;
  const toJob = linkTo(from, addresses.job(id));
  const isOut = job.revisions.some(
    (one) => one.revision === revision && one.plan.job.status === 'superseded',
  );
  if (revision === standing && isOut)
    return {
      says: `Revision ${revision} is superseded: do not build from it.`,
      to: { title: 'Go to the job', href: toJob },
      changes,
    };
  if (revision !== standing)
    return {
      says: `Revision ${revision} is superseded: do not build from it. Revision ${standing} stands.`,
      to: {
        title: `Go to revision ${standing}`,
        href: shown === standing ? toJob : linkTo(from, addresses.revision(id, standing)),
      },
      changes,
    };
  return shown === revision
    ? {
        says: `Revision ${revision} stands, as it was released.`,
        to: { title: 'Go to the job', href: toJob },
        changes,
      }
    : {
        says: `Revision ${revision} stands, as it was released. Revision ${shown} is drawn after it.`,
        to: { title: `Go to revision ${shown}`, href: toJob },
        changes,
      };
}

/** What the page of a job says that went on after a release; null where it shows what is released, or nothing is. */
export function goneOnFrom(job: PublishedJob, from: string, countsOf: CountsOf): RevisionStanding | null {
  const last = job.revisions.at(-1);
  if (last === undefined || isReleased(job)) return null;
  const { id, revision } = job.plan.job;
  return {
    says: `Revision ${last.revision} is released and stands; this is revision ${revision}, drawn after it.`,
    to: {
      title: `Go to revision ${last.revision}`,
      href: linkTo(from, addresses.revision(id, last.revision)),
    },
    changes: {
      title: `What differs from revision ${last.revision}`,
      href: linkTo(from, addresses.changes(id)),
      counts: countsOf({ before: last.plan, after: job.plan }),
    },
  };
}
