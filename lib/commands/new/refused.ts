import type { Effects } from '../effects.ts';
import { type ExitStatus, exitStatus } from '../exit-status.ts';

/** Tells why nothing new is made. */
export function refused(effects: Effects, ...faults: readonly string[]): ExitStatus {
  for (const fault of faults) effects.tell(`new: ${fault}`);
  return exitStatus.inputErrors;
}
