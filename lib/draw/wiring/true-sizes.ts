import { bendRadiusM } from '../../board/route/bend-radius.ts';
import { isFault } from '../../model/fault.ts';
import type { BuildPlan, PlanCable, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import { bundleDiameterM, outsideDiameterM } from '../../power/conductor/bundle-diameter.ts';

/** Over the insulation of a wire, metres: as its plan tells, or for an older plan by the stated model; null for one without area. */
export function wireDiameterM({ diameterM, size }: Pick<PlanWire, 'diameterM' | 'size'>): number | null {
  if (diameterM !== undefined) return diameterM;
  const model = outsideDiameterM(size.areaMm2);
  return isFault(model) ? null : model.value;
}

/** Over the sheath of a cable, metres: its maker's figure, that of its route, or a bundle of its conductors. */
export function cableDiameterM(
  cable: Pick<PlanCable, 'diameterM'>,
  { diameterM }: Pick<PlanRoute, 'diameterM'>,
  wires: readonly PlanWire[],
): number | null {
  const known = cable.diameterM ?? diameterM;
  if (known !== undefined && known !== null) return known;
  const bundle = bundleDiameterM(wires.flatMap((wire) => wireDiameterM(wire) ?? []));
  return isFault(bundle) ? null : bundle.value;
}

/** The radius that a route is bent to, metres: as its plan tells, or for an older plan by the house rule from its thickest wire. */
export function routeBendM(
  plan: Pick<BuildPlan, 'rules'>,
  { bendRadiusM: known }: Pick<PlanRoute, 'bendRadiusM'>,
  wires: readonly PlanWire[],
): number {
  const thickestM = Math.max(0, ...wires.flatMap((wire) => wireDiameterM(wire) ?? []));
  return known ?? bendRadiusM(thickestM, ruleOf(plan, 'bend-diameters'));
}
