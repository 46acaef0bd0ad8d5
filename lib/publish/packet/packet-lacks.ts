import type { BuildPlan, PlanMeasurement } from '../../model/plan/index.ts';
import { isStopped } from '../../model/plan/index.ts';
import { counted } from '../words/words.ts';

/** Why a job can't be handed over, with the lines of its record that it is about. */
interface HandOverLack {
  readonly why: 'draft' | 'stopped' | 'out-of-limit' | 'not-read';
  readonly lines: readonly string[];
}

/**
 * Why no packet is made: the job is a draft, a finding stops it, a reading lies outside its limits, or one is not taken
 * that the record holds against a limit. None: it may be handed over.
 */
export function handOverLacks(plan: Pick<BuildPlan, 'job' | 'findings' | 'measurements'>): HandOverLack[] {
  const ids = (isMeant: (line: PlanMeasurement) => boolean): string[] =>
    plan.measurements.filter(isMeant).map(({ id }) => id);
  const outside = ids(({ state }) => state === 'differs');
  const missing = ids((line) => isAskedFor(line) && line.asBuilt === undefined);
  const lacks: readonly (HandOverLack & { readonly holds: boolean })[] = [
    { why: 'draft', lines: [], holds: plan.job.status === 'draft' },
    { why: 'stopped', lines: [], holds: isStopped(plan) },
    { why: 'out-of-limit', lines: outside, holds: outside.length > 0 },
    { why: 'not-read', lines: missing, holds: missing.length > 0 },
  ];
  return lacks.filter(({ holds }) => holds).map(({ why, lines }) => ({ why, lines }));
}

/** A line with a limit must be read; what has none is noted for the vehicle file. */
export function isAskedFor({ least, greatest }: PlanMeasurement): boolean {
  return least !== null || greatest !== null;
}

/** A reason as any reader may have it: how many, and no name of the bench. */
export function lackText({ why, lines }: HandOverLack): string {
  switch (why) {
    case 'draft':
      return 'The job is still a draft.';
    case 'stopped':
      return 'A fault that stops the job is still to be mended.';
    case 'out-of-limit':
      return `${counted(lines.length, 'reading lies', 'readings lie')} outside the limits.`;
    case 'not-read':
      return `${counted(lines.length, 'reading of the record is', 'readings of the record are')} still to be taken.`;
  }
}
