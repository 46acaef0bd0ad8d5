import type { BuildPlan } from './index.ts';
import { isStopped } from './index.ts';

/** What every sheet of a plan says that nobody may build from. */
export interface SheetMark {
  readonly word: 'DRAFT' | 'SUPERSEDED';
  readonly reason: string;
}

/** The mark of a plan's sheets: a later revision stands in their place, a finding stops them, or they are not released. */
export function sheetMark(plan: Pick<BuildPlan, 'findings' | 'job'>): SheetMark | null {
  const { status } = plan.job;
  if (status === 'superseded')
    return { word: 'SUPERSEDED', reason: 'A later one stands: do not build from this sheet' };
  if (isStopped(plan))
    return { word: 'DRAFT', reason: 'Findings stop this job: do not build from this sheet' };
  return status === 'draft'
    ? { word: 'DRAFT', reason: 'Not released: for checking, not for building' }
    : null;
}
