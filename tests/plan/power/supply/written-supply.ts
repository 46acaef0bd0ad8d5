import type { HouseRuleName } from '../../../../lib/model/house-rules.ts';
import { buildCircuit } from '../../../../lib/plan/power/circuit/circuit.ts';
import { circuitPaths } from '../../../../lib/plan/power/circuit/circuit-paths.ts';
import { usualHouseRules } from '../../../power/usual-rules.ts';
import { jobOf, partIn } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';

/** A job of the written content, its circuit and the paths of it, with a change made to its files. */
export function supply(change: (content: Written) => void = () => {}) {
  const content = written();
  change(content);
  const job = jobOf(content);
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const circuit = buildCircuit(job, devices);
  return { job, circuit, paths: circuitPaths(circuit) };
}

/** The alternator of its vehicle. */
export const alternator = (content: Written) => partIn(content, 'generator', 'alternator');

/** A house rule as it stands where the shop sets none. */
export const value = (name: HouseRuleName) => usualHouseRules[name].value;
