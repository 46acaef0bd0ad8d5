import type { PlanFuse } from '../model/plan/index.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import { unfusedWays } from './fuse-at-source.ts';
import { batteriesAmong, type LiveEdge, type LiveSide, liveSide, reached } from './live-side.ts';
import { deviceOf, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { amps, listed } from './words.ts';

/** What clears a fault behind a fuse if that fuse fails to. */
interface Backup {
  /** The fuses before it that interrupt the whole fault current, nearest to it on each way. */
  readonly by: readonly PlanFuse[];
  /** The batteries that reach it past all of these. */
  readonly past: readonly string[];
}

/** Every battery that reaches a fuse must meet one that interrupts the fault current (A) on each of its ways. */
function backupOf({ job, plan }: Case, side: LiveSide, fuse: PlanFuse, faultA: number): Backup {
  const own = side.edges.find(({ kind, id }) => kind === 'fuse' && id === fuse.id);
  const strong = plan.power.fuses.filter(
    ({ id, interruptA }) => id !== fuse.id && interruptA !== null && interruptA >= faultA,
  );
  const isStrong = (edge: LiveEdge) => edge.kind === 'fuse' && strong.some(({ id }) => id === edge.id);
  const others = side.edges.filter((edge) => edge !== own);
  const near = reached(others, own?.ends ?? [], (edge) => !isStrong(edge));
  const batteries = batteriesAmong(
    job,
    side,
    reached(others, own?.ends ?? [], () => true),
  );
  const fed = reached(others, batteries, (edge) => !edge.ends.some((end) => near.has(end)));
  const entering = others.filter(
    (edge) =>
      isStrong(edge) &&
      edge.ends.some((end) => near.has(end)) &&
      edge.ends.some((end) => !near.has(end) && fed.has(end)),
  );
  return {
    by: strong.filter(({ id }) => entering.some((edge) => edge.id === id)),
    past: batteries.filter((battery) => near.has(battery)),
  };
}

/** What stands before the fuse, for a message. */
function backupText({ by, past }: Backup): string {
  const names = listed(by.map(({ id }) => id));
  if (by.length === 0) return '';
  const clears = by.length === 1 ? 'clears' : 'clear';
  return past.length === 0
    ? `: ${names} before it ${clears} that`
    : `: ${names} before it ${clears} that, but not what comes from ${listed(past)}`;
}

const downstream: Rule = {
  id: 'fuse-interrupting-downstream',
  judge(about) {
    const side = liveSide(about);
    const first = new Set(unfusedWays(about).map(({ fuse }) => fuse));
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-interrupting-downstream'>[] => {
      const { faultA, interruptA, needsInterruptA } = fuse;
      if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
      // The first fuse behind a battery is judged by the battery itself.
      if (first.has(fuse.id) || needsInterruptA !== null) return [];
      if (faultA === undefined || faultA === null || interruptA === null || faultA <= interruptA) return [];
      const backup = backupOf(about, side, fuse, faultA);
      const backed = backup.by.length > 0 && backup.past.length === 0;
      const form = fuseForms[fuse.form].name;
      return [
        {
          level: backed ? 'note' : 'caution',
          of: [fuse.id, ...backup.by.map(({ id }) => id)],
          message: `a dead short behind the ${form} fuse ${fuse.id} draws about ${amps(faultA)}, and it interrupts ${amps(interruptA)}${backupText(backup)}`,
          value: faultA,
          limit: interruptA,
          unit: 'A',
          remedy: backed
            ? 'replace the fuses and look at the holder after a dead short; or use a form with a higher interrupting rating'
            : "use a form with a higher interrupting rating, a longer or thinner conductor before it, or write the maker's figure in the fuse's part",
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const interruptingDownstreamRules: readonly Rule[] = [downstream];
