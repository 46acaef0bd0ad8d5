import type { Job, ReadJob } from '../model/content/resolved-job.ts';
import type { Step } from '../model/keep.ts';
import { type BuildPlan, planFormat } from '../model/plan/index.ts';
import type { PlacedRemark } from '../model/remark.ts';
import { jobHead } from './title-block-heads.ts';

/** A plan before it was judged, and what its computations noticed. */
export interface Planned {
  /** Its findings are still empty. */
  readonly plan: BuildPlan;
  readonly remarks: readonly PlacedRemark[];
}

/** A plan without its head, and what its computations noticed. */
export interface PlannedBody extends Pick<Planned, 'remarks'> {
  readonly plan: Omit<BuildPlan, 'rackleaf' | 'format' | 'job'>;
}

/** What the computing of a plan without its head is kept as: it can be asked for where nothing that computes is loaded. */
export const plannedBody: Pick<Step<Job, PlannedBody>, 'id'> = { id: 'plan-body' };

/** A plan under the head of its job. */
export function withHead(written: ReadJob, { plan, remarks }: PlannedBody): Planned {
  return { plan: { rackleaf: 1, format: planFormat, job: jobHead(written), ...plan }, remarks };
}

/** What a job file says that no plan but its head is computed from. */
const headNames = new Set([
  'title',
  'revision',
  'revisions',
  'status',
  'issued-on',
  'drawn-by',
  'approved-by',
  'fabricator',
  'customer',
  'accepted',
  'as-built',
  'hours',
  'notes',
]);

function isOfHead(pointer: string): boolean {
  return headNames.has(pointer.split('/')[1] ?? '');
}

/** What of a written job its plan is computed from, and nothing else. */
export function computedFrom({ file, measures, ...job }: ReadJob): Job {
  const { cables, 'left-open': leftOpen, 'as-built': asBuilt } = file;
  const own = Object.fromEntries(Object.entries(measures.job).filter(([head]) => !isOfHead(head)));
  return {
    id: job.id,
    shop: job.shop,
    promised: job.promised,
    rules: job.rules,
    vehicle: job.vehicle,
    parts: job.parts,
    devices: job.devices,
    links: job.links,
    boards: job.boards,
    runs: job.runs,
    proposals: job.proposals,
    asksForLinks: job.asksForLinks,
    releasedLabels: job.releasedLabels,
    built: job.built,
    ...(job.inPlace && { inPlace: job.inPlace }),
    held: job.held,
    file: { cables, 'left-open': leftOpen, 'as-built': asBuilt },
    measures: { ...measures, job: own },
  };
}
