import { bodyId } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { ohmPerM } from '../../../power/conductor/resistance.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import type { NetworkElement } from '../../../power/network/network-types.ts';
import type { CircuitEdge } from './circuit.ts';
import { type PassiveInput, sizedFuseOhm } from './passive-elements.ts';

/**
 * What one edge of the circuit puts in the way of a dead short, at the least: a conductor cold and without its joints, a
 * fuse cold, the body at its lowest. That joints count for nothing where the greatest current is sought: IEC 61660-1,
 * from memory.
 */
export function coldElements(
  input: PassiveInput,
  { id, kind, from, to, device }: CircuitEdge,
): NetworkElement[] {
  const { job, conductors, fuses } = input;
  const { rules } = job;
  const base = { id, from, to, model: 'resistance' } as const;
  if (kind === 'conductor') {
    const sized = conductors.get(id);
    if (!sized) return [];
    const { size, material, measuredOhmPerM } = sized.cable;
    const perM = ohmPerM(
      { areaMm2: size.areaMm2, material, ...(measuredOhmPerM === undefined ? {} : { measuredOhmPerM }) },
      rules['short-conductor-temperature'].value,
      powerRules(rules),
    );
    if (isFault(perM)) return [];
    return [{ ...base, of: sized.link.id, kind, ohm: perM.value * sized.lengthM }];
  }
  if (kind === 'joint') {
    const of = device?.id ?? id;
    // Two ground points share the way through the body, so each has half of it.
    return [{ ...base, of, kind, ohm: of === bodyId ? rules['short-body-resistance'].value / 2 : 0 }];
  }
  const fuse = fuses.find(({ edge }) => edge.id === id);
  return fuse
    ? [{ ...base, of: id, kind, ohm: sizedFuseOhm(job, fuse) * rules['short-fuse-cold'].value }]
    : [];
}
