import type { PlanFuse } from '../model/plan/index.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import { powerRules } from '../plan/power-rules.ts';
import { interruptNeedA } from '../power/interrupting.ts';
import { isPowerFault } from '../power/traced.ts';
import { unfusedWays } from './fuse-at-source.ts';
import { deviceIdOf, deviceOf, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { amps } from './words.ts';

interface Need {
  readonly needA: number;
  readonly behind: string;
  readonly text: string;
}

/** What each battery that a fuse stands first behind asks it to interrupt (A). */
function needsOf({ job }: Case, batteries: readonly string[]): Need[] {
  return batteries.flatMap((behind): Need[] => {
    const spec = deviceOf(job, behind)?.spec;
    if (spec?.kind !== 'battery') return [];
    const crankingA = spec['cold-cranking'];
    const need = interruptNeedA(crankingA, powerRules(job.rules));
    const text = `behind ${behind} with ${amps(crankingA)} of cold cranking`;
    return isPowerFault(need) ? [] : [{ needA: need.value, behind, text }];
  });
}

/** The gravest need of a fuse: of the worst battery that it stands first behind, or as the plan has it. */
function worstNeed(about: Case, fuse: PlanFuse, batteries: readonly string[]): Need {
  const behind = fuse.source ?? 'its source';
  const planned = { needA: fuse.needsInterruptA ?? 0, behind, text: `behind ${behind}` };
  return needsOf(about, batteries).reduce(
    (worst, need) => (need.needA >= worst.needA ? need : worst),
    planned,
  );
}

const interrupting: Rule = {
  id: 'fuse-interrupting',
  judge(about) {
    const ways = unfusedWays(about);
    return about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-interrupting'>[] => {
      if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
      const sources = ways.filter((way) => way.fuse === fuse.id).map(({ source: from }) => deviceIdOf(from));
      const { needA, behind, text } = worstNeed(about, fuse, sources);
      const { interruptA } = fuse;
      if (needA <= 0 || (interruptA !== null && interruptA >= needA)) return [];
      const form = fuseForms[fuse.form].name;
      const has =
        interruptA === null
          ? `it is not known what fault current the ${form} fuse ${fuse.id} interrupts`
          : `the ${form} fuse ${fuse.id} interrupts ${amps(interruptA)}`;
      return [
        {
          level: 'caution',
          of: [fuse.id, behind],
          message: `${has}; ${text}, ${amps(needA)} is asked for`,
          ...(interruptA !== null && { value: interruptA }),
          limit: needA,
          unit: 'A',
          remedy:
            "use a form with a higher interrupting rating, or write the maker's figure in the fuse's part",
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const interruptingRules: readonly Rule[] = [interrupting];
