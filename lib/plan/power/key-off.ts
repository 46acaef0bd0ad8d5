import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanPower } from '../../model/plan/index.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { keyOffDraw } from '../../power/key-off.ts';
import type { PlanBook } from '../plan-book.ts';
import { supplyOf } from './device-loads.ts';

/** What the devices of the job draw with everything switched off, as far as their makers tell. */
export function planKeyOff(job: Job, book: PlanBook): NonNullable<PlanPower['keyOff']> {
  const items = job.devices.flatMap(({ id, origin, spec }) => {
    const supply = supplyOf(spec);
    return origin === 'job' && supply ? [{ item: id, drawA: supply['key-off'] ?? null }] : [];
  });
  const told = items.flatMap(({ item, drawA }) => (drawA === null ? [] : [[item, drawA] as const]));
  const sum = keyOffDraw(Object.fromEntries(told), powerRules(job.rules));
  // The draws were read as quantities, so a negative one never comes this far.
  if (isFault(sum)) return { items, drawA: 0, limitA: job.rules['key-off-draw'].value };
  return { items, drawA: book.trace('power.keyOff.drawA', sum.drawA), limitA: sum.limitA };
}
