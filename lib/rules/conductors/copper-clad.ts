import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanWire, WireEnd } from '../../model/plan/index.ts';
import { jobWires, partOf, terminalSpecOf, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';

/** True where a ferrule is crimped on the end. */
export function hasFerrule(job: Job, { part, form }: WireEnd): boolean {
  const spec = partOf(job, part);
  if (spec?.kind === 'terminal') return spec.form === 'ferrule' || spec.form === 'twin-ferrule';
  return form === 'ferrule' || form === 'twin-ferrule';
}

function isClad({ job, plan }: Case, wire: PlanWire): boolean {
  const part = partOf(job, wire.part);
  const conductor = plan.power.conductors.find(({ id }) => id === wire.id);
  const material = conductor?.material ?? (part?.kind === 'wire' ? part.material : 'copper');
  return material === 'copper-clad-aluminium';
}

const cladSetScrew: Rule = {
  id: 'copper-clad-in-set-screw',
  judge(about) {
    return jobWires(about)
      .filter((wire) => isClad(about, wire))
      .flatMap((wire) =>
        wire.ends.flatMap((end): Verdict<'copper-clad-in-set-screw'>[] => {
          if (terminalSpecOf(about.job, end.terminal)?.joint !== 'set-screw') return [];
          const ferrule = hasFerrule(about.job, end);
          return [
            {
              level: ferrule ? 'note' : 'stop',
              of: [end.terminal, wire.id],
              message: ferrule
                ? `${wire.id} is copper-clad aluminium under the set screw of ${end.terminal}: it settles under pressure`
                : `${wire.id} is copper-clad aluminium and goes bare under the set screw of ${end.terminal}`,
              remedy: ferrule
                ? `tighten the screw again at the visit after ${about.job.rules['retorque-days'].value} days`
                : `crimp a ferrule on it and tighten the screw again after ${about.job.rules['retorque-days'].value} days, or use copper`,
              ...wireSpot(about, wire.id),
              ...(ferrule && { givesWayTo: ['port-note'] }),
            },
          ];
        }),
      );
  },
};

export const copperCladRules: readonly Rule[] = [cladSetScrew];
