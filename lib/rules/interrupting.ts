import type { PlanFuse } from '../model/plan/index.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import { powerRules } from '../plan/power-rules.ts';
import { interruptNeedA } from '../power/interrupting.ts';
import { isPowerFault } from '../power/traced.ts';
import { firstFuses } from './fuse-at-source.ts';
import { deviceIdOf, deviceOf, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { defaultSource } from './source.ts';
import { amps } from './words.ts';

const source = defaultSource('interrupt-to-650');

/** What a fuse must interrupt (A) and behind what: by the battery that it stands first behind, or as the plan has it. */
function needOf({ job }: Case, fuse: PlanFuse, battery: string | null) {
  const spec = battery === null ? undefined : deviceOf(job, battery)?.spec;
  const crankingA = spec?.kind === 'battery' ? spec['cold-cranking'] : null;
  const byBattery = crankingA === null ? null : interruptNeedA(crankingA, powerRules(job.rules));
  const ownA = byBattery === null || isPowerFault(byBattery) ? 0 : byBattery.value;
  const needA = Math.max(ownA, fuse.needsInterruptA ?? 0);
  const behind = battery ?? fuse.source ?? 'its source';
  const cranks = crankingA === null ? '' : ` with ${amps(crankingA)} of cold cranking`;
  return { needA, behind, text: `behind ${behind}${cranks}` };
}

const interrupting: Rule = {
  id: 'fuse-interrupting',
  asks: 'The first fuse behind a battery can interrupt what the battery gives into a short.',
  levels: ['caution'],
  ...source,
  judge(about) {
    const ways = firstFuses(about);
    return about.plan.power.fuses.flatMap((fuse): Verdict[] => {
      if (deviceOf(about.job, fuse.item)?.origin === 'vehicle') return [];
      const way = ways.find(({ fuse: id }) => id === fuse.id);
      const { needA, behind, text } = needOf(about, fuse, way ? deviceIdOf(way.source) : null);
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
          ...source,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const interruptingRules: readonly Rule[] = [interrupting];
