import type { PlanWire } from '../model/plan/index.ts';
import { copperOhmMm2PerM } from '../model/tables/copper-wire.ts';
import { defaultPowerRules } from '../power/power-rules.ts';
import { ohmPerM } from '../power/resistance.ts';
import { isPowerFault } from '../power/traced.ts';
import { partOf } from './look-up.ts';
import type { Case } from './rule.ts';

/**
 * Conductance of one metre of a wire (S m) at 20 C, from its part's measured resistance, else from its area and
 * material (`conductor-resistance`). Two wires compare by it, whatever their gauge numbers say.
 */
export function conductanceOf({ job, plan }: Case, wire: PlanWire): number {
  const part = partOf(job, wire.part);
  const conductor = plan.power.conductors.find(({ id }) => id === wire.id);
  const measured = part?.kind === 'wire' ? part.measured : undefined;
  const resistance = ohmPerM(
    {
      areaMm2: wire.size.areaMm2,
      material: conductor?.material ?? (part?.kind === 'wire' ? part.material : 'copper'),
      ...(measured !== undefined && { measuredOhmPerM: measured }),
    },
    20,
    defaultPowerRules,
  );
  return isPowerFault(resistance) ? wire.size.areaMm2 / copperOhmMm2PerM : 1 / resistance.value;
}
