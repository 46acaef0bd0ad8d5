import type { BuiltJob } from '../../model/content/built.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { BuildPlan, PlanBuilt } from '../../model/plan/index.ts';
import { printedMetres } from '../../model/printed/lengths.ts';
import { builtJob } from './built-job.ts';

type Compared = Pick<BuildPlan, 'items' | 'boards' | 'wires' | 'runs'>;

/**
 * What of the revision that a job is built on stays as it is, and what is otherwise: places, boards and wires, with their
 * reel, ends, length and label. Null for a first revision.
 */
export function compareBuilt({ built }: Pick<Job, 'built'>, plan: Compared): PlanBuilt | null {
  if (!built) return null;
  const today = saidOf(builtJob({ ...plan, job: { revision: built.revision } }));
  const unchanged: string[] = [];
  const changed: PlanBuilt['changed'][number][] = [];
  for (const [id, was] of saidOf(built)) {
    const is = today.get(id) ?? 'nothing';
    if (is === was) unchanged.push(id);
    else changed.push({ id, was, is });
  }
  return { revision: built.revision, unchanged, changed };
}

/** What each thing that is built is, in ids and measures. */
function saidOf({ items, places, boards, wires }: Omit<BuiltJob, 'proposals'>): ReadonlyMap<string, string> {
  return new Map([
    ...Object.entries(items).map(([id, { part, board, seat }]) => {
      return [id, `${part ?? 'none'} at ${board ?? seat ?? 'none'}`] as const;
    }),
    ...Object.entries(places).map(([id, { board, xM, yM, turnDeg }]) => {
      return [`place of ${id}`, `${board} ${millimetres(xM)}, ${millimetres(yM)}, ${turnDeg} deg`] as const;
    }),
    ...Object.entries(boards).map(([id, { space, sheet, xM, yM }]) => {
      return [id, `${sheet} in ${space} at ${millimetres(xM)}, ${millimetres(yM)}`] as const;
    }),
    ...Object.entries(wires).map(([id, { label, from, to, part, lengthM }]) => {
      const cut = [label, part, `${from} to ${to}`].filter((one) => one !== null && one !== '').join(' ');
      return [id, `${cut}, ${printedMetres('wire', lengthM)}`] as const;
    }),
  ]);
}

function millimetres(lengthM: number): string {
  return `${Math.round(lengthM * 1000) + 0} mm`;
}
