import { type Fault, faultOf, positiveFault } from '../../model/fault.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { ConductorMaterial } from '../../model/vocabulary.ts';
import type { PowerRules } from '../power-rules.ts';

/** What the resistance of a conductor depends on. */
export interface ResistiveConductor {
  readonly areaMm2: number;
  readonly material: ConductorMaterial;
  /** A solid conductor lacks the extra length of twisted strands. Default: stranded. */
  readonly solid?: boolean;
  /** Resistance of the part as measured or stated by its maker at 20 C (ohm/m): goes before the table. */
  readonly measuredOhmPerM?: number;
}

/** Resistivity of annealed copper at 20 C, 100 % IACS: 1/58 ohm mm2/m (IEC 60028). */
export const copperOhmMm2PerM = 1 / 58;
/** Temperature coefficient of annealed copper at 20 C, per K (IEC 60028). */
const copperPerK = 0.00393;
const referenceC = 20;
const materialCitation: Record<ConductorMaterial, string> = {
  copper: 'IEC 60028, annealed copper 100 % IACS; stranding: common practice, no source',
  'copper-clad-aluminium':
    'ASTM B566, 10 % copper by volume (from memory); stranding: common practice, no source',
};

/**
 * Resistance of one metre of conductor (ohm/m) at a conductor temperature. r = rho20 / A * stranding * (1 + alpha * (T - 20)), with rho20 = 1/58 ohm mm2/m for
 * copper (IEC 60028) and that over 0.62 for copper-clad aluminium; or r = r20 * (1 + alpha * (T - 20)) from the
 * part's own r20. Fault on an area or resistance that is not above zero.
 */
export function ohmPerM(
  conductor: ResistiveConductor,
  temperatureC: number,
  rules: PowerRules,
): Traced<number> | Fault {
  const { areaMm2, material, measuredOhmPerM, solid = false } = conductor;
  const bad = positiveFault(
    measuredOhmPerM === undefined ? { area: areaMm2 } : { 'measured resistance': measuredOhmPerM },
  );
  if (bad) return bad;
  if (!Number.isFinite(temperatureC) || temperatureC < -60 || temperatureC > 250)
    return faultOf(
      'temperature-unlikely',
      ['temperature'],
      `a conductor at ${temperatureC} C is outside -60 to 250 C`,
      'correct the temperature of conductors in the house rules, or the ambient of the zone',
    );
  const alpha = material === 'copper' ? copperPerK : rules.claddedPerK;
  const warming = 1 + alpha * (temperatureC - referenceC);
  const heat = [['alpha', alpha, '1/K'] as const, ['T', temperatureC, 'C'] as const];
  if (measuredOhmPerM !== undefined)
    return traced(measuredOhmPerM * warming, 'ohm/m', {
      rule: 'conductor-resistance',
      formula: 'r = r20 * (1 + alpha * (T - 20))',
      citation: "the part's own resistance; temperature coefficient IEC 60028",
      inputs: [['r20', measuredOhmPerM, 'ohm/m'], ...heat],
    });
  const rho = material === 'copper' ? copperOhmMm2PerM : copperOhmMm2PerM / rules.claddedConductivity;
  const stranding = solid ? 1 : rules.strandedFactor;
  return traced((rho / areaMm2) * stranding * warming, 'ohm/m', {
    rule: 'conductor-resistance',
    formula: 'r = rho20 / A * k * (1 + alpha * (T - 20))',
    citation: materialCitation[material],
    mark: material === 'copper' ? 'cp' : 'mem',
    inputs: [['rho20', rho, 'ohm mm2/m'], ['A', areaMm2, 'mm2'], ['k', stranding, ''], ...heat],
  });
}
