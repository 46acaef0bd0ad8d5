import type { PlanFuse } from '../model/plan/index.ts';
import { fuseForms } from '../model/tables/fuse-forms.ts';
import { interruptNeedA } from '../power/interrupting.ts';
import { isPowerFault } from '../power/traced.ts';
import { firstFuses } from './fuse-at-source.ts';
import { deviceIdOf, deviceOf, fuseSpot } from './look-up.ts';
import type { Case, Rule, Verdict } from './rule.ts';
import { fromMemory } from './source.ts';
import { amps } from './words.ts';

const source = fromMemory('ABYC E-11');

function judgeFuse({ job }: Case, fuse: PlanFuse, battery: string): Verdict[] {
  const spec = deviceOf(job, battery)?.spec;
  if (spec?.kind !== 'battery') return [];
  const crankingA = spec['cold-cranking'];
  const need = interruptNeedA(crankingA);
  if (isPowerFault(need)) return [];
  const limit = need.value;
  const { interruptA } = fuse;
  if (interruptA !== null && interruptA >= limit) return [];
  const form = fuseForms[fuse.form].name;
  const has =
    interruptA === null
      ? `it is not known what fault current the ${form} fuse ${fuse.id} interrupts`
      : `the ${form} fuse ${fuse.id} interrupts ${amps(interruptA)}`;
  return [
    {
      level: 'caution',
      of: [fuse.id, battery],
      message: `${has}; behind ${battery} with ${amps(crankingA)} of cold cranking, ${amps(limit)} is asked for`,
      ...(interruptA !== null && { value: interruptA }),
      limit,
      unit: 'A',
      remedy: "use a form with a higher interrupting rating, or write the maker's figure in the fuse's part",
      ...source,
      ...fuseSpot(job, fuse),
    },
  ];
}

const interrupting: Rule = {
  id: 'fuse-interrupting',
  asks: 'The first fuse behind a battery can interrupt what the battery gives into a short.',
  levels: ['caution'],
  ...source,
  judge(about) {
    const ways = firstFuses(about);
    return about.plan.power.fuses.flatMap((fuse) => {
      const way = ways.find(({ fuse: id }) => id === fuse.id);
      return way ? judgeFuse(about, fuse, deviceIdOf(way.source)) : [];
    });
  },
};

export const interruptingRules: readonly Rule[] = [interrupting];
