import type { Device } from '../../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../../model/kinds/fields/control-spec.ts';

/** How a control stands after commissioning: as the job says, as its part says, or as it was preset. */
export function stateAfterwards({ given }: Device, control: string, { final, safe }: ControlSpec): string {
  return given?.['after-commissioning'][control] ?? final ?? given?.settings[control] ?? safe;
}

/** True for two ways of writing one state. */
export function isSameState(one: string, other: string): boolean {
  return one.trim().toLocaleLowerCase('en') === other.trim().toLocaleLowerCase('en');
}
