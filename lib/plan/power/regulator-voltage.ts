import type { Job } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { varyingCharge } from '../../power/network/varying-charge.ts';
import type { SupplyEnd } from './supply-spread.ts';

/**
 * What the regulator of an alternator holds (V): as measured in the vehicle; else what its part says, else the house
 * rule for hot idle. One that varies it holds the voltage for sizing. Where it was not measured a hot regulator may hold
 * no more than at hot idle, and a cold one what rated power is stated at.
 */
export function setPointV(
  { devices, rules, vehicle }: Pick<Job, 'devices' | 'rules' | 'vehicle'>,
  spec: PartOf<'alternator'>,
  end?: SupplyEnd,
): number {
  const told = spec['set-point'];
  const varying = varyingCharge({ devices, rules, vehicle });
  if (varying) {
    if (end) return end === 'weak' ? varying.lowV : varying.highV;
    return Math.min(varying.sizingV, told ?? Number.POSITIVE_INFINITY);
  }
  const measured = vehicle['charging-voltage'];
  if (measured !== undefined) return measured;
  const hotV = rules['voltage-sizing'].value;
  if (end === 'weak') return Math.min(hotV, told ?? hotV);
  return end === 'strong' ? Math.max(told ?? hotV, rules['voltage-rated'].value) : (told ?? hotV);
}
