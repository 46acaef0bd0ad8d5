import type { PlanFuse } from '../model/plan/index.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import { unfusedWays } from './fuse-at-source.ts';
import { deviceOf, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { amps } from './words.ts';

const source = {
  source: "Ohm's law over the sized conductors; interrupting ratings from memory",
  mark: 'mem',
} as const;

/** The greatest interrupting rating of the fuses before one, by whose opening a fault is cleared if it fails (A). */
function backedUpBy({ plan }: Case, fuse: PlanFuse): PlanFuse | null {
  const before = plan.power.fuses.filter(
    ({ id, loads }) =>
      id !== fuse.id && fuse.loads.length > 0 && fuse.loads.every((load) => loads.includes(load)),
  );
  return (
    before.toSorted((a, b) => (b.interruptA ?? 0) - (a.interruptA ?? 0) || (a.id < b.id ? -1 : 1))[0] ?? null
  );
}

const downstream: Rule = {
  id: 'fuse-interrupting-downstream',
  asks: 'A fuse further down the line can interrupt the fault current that the conductors let through to it.',
  levels: ['caution', 'note'],
  ...source,
  judge(about) {
    const first = new Set(unfusedWays(about).map(({ fuse }) => fuse));
    return about.plan.power.fuses.flatMap((fuse): Verdict[] => {
      const { faultA, interruptA, needsInterruptA } = fuse;
      if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
      // The first fuse behind a battery is judged by the battery itself.
      if (first.has(fuse.id) || needsInterruptA !== null) return [];
      if (faultA === undefined || faultA === null || interruptA === null || faultA <= interruptA) return [];
      const backup = backedUpBy(about, fuse);
      const backed = backup !== null && (backup.interruptA ?? 0) >= faultA;
      const form = fuseForms[fuse.form].name;
      return [
        {
          level: backed ? 'note' : 'caution',
          of: [fuse.id, ...(backup ? [backup.id] : [])],
          message: `a dead short behind the ${form} fuse ${fuse.id} draws about ${amps(faultA)}, and it interrupts ${amps(interruptA)}${backed ? `: ${backup.id} before it clears that` : ''}`,
          value: faultA,
          limit: interruptA,
          unit: 'A',
          remedy: backed
            ? 'replace both fuses and look at the holder after a dead short; or use a form with a higher interrupting rating'
            : "use a form with a higher interrupting rating, a longer or thinner conductor before it, or write the maker's figure in the fuse's part",
          ...source,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const interruptingDownstreamRules: readonly Rule[] = [downstream];
