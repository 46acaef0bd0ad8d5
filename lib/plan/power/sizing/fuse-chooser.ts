import type { Job } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { chooseFuse, type FuseChoice, type FuseDuty } from '../../../power/fuse-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { once, onceEach } from '../../once-each.ts';
import { fuseShelf } from './fuse-shelf.ts';

/** The choice of a fuse for its duty; null where none can be made. */
export type FuseChooser = (duty: FuseDuty) => FuseChoice | null;

/** Chooses the fuses of a job from its catalogue and shelf: for one duty once, since the loop of sizes asks many times. */
export function fuseChooser({ parts, shop, rules }: Pick<Job, 'parts' | 'shop' | 'rules'>): FuseChooser {
  const shelf = once(() => fuseShelf(parts, shop, rules));
  const power = powerRules(rules);
  return onceEach((duty) => {
    const choice = chooseFuse(duty, shelf(), power);
    return isFault(choice) ? null : choice;
  }, dutyKey);
}

/** All of a duty as text: what is infinite is not taken for what is null. */
function dutyKey(duty: FuseDuty): string {
  return JSON.stringify(duty, (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );
}
