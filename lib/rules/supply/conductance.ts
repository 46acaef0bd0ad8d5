import type { PlanWire } from '../../model/plan/index.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { conductanceSm } from '../../power/network/conductance.ts';
import { partOf } from '../look-up.ts';
import type { Case } from '../rule.ts';

/** Conductance of one metre of a wire (S m) at 20 C by the shop's rules: the measure that sizes grounds, too. */
export function conductanceOf({ job, plan }: Case, wire: PlanWire): number {
  const part = partOf(job, wire.part);
  const conductor = plan.power.conductors.find(({ id }) => id === wire.id);
  const measured = part?.kind === 'wire' ? part.measured : undefined;
  return conductanceSm(
    {
      areaMm2: wire.size.areaMm2,
      material: conductor?.material ?? (part?.kind === 'wire' ? part.material : 'copper'),
      ...(measured !== undefined && { measuredOhmPerM: measured }),
    },
    powerRules(job.rules),
  );
}
