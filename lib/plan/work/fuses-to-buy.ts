import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanFuse, PlanPick } from '../../model/plan/index.ts';
import { amps, ampsDrawn } from '../../model/printed/told.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';

interface Fused {
  readonly job: Pick<Job, 'devices' | 'proposals'>;
  readonly fuses: readonly PlanFuse[];
}

/** Fuses of a rating that the catalogue lacks: they have no part, and are to be bought all the same. */
export function fusesToBuy({ job, fuses }: Fused): PlanPick[] {
  const ours = new Set(job.devices.flatMap(({ id, origin }) => (origin === 'job' ? [id] : [])));
  const counts = new Map<string, { readonly title: string; quantity: number }>();
  for (const { form, ratingA, part, item } of fuses) {
    if (part !== null || ratingA === null || !ours.has(item)) continue;
    const id = `fuse-${form}-${ratingA}`;
    const own = counts.get(id) ?? {
      title: `${fuseForms[form].name} fuse, ${ratingA} A, not in the catalogue`,
      quantity: 0,
    };
    own.quantity += 1;
    counts.set(id, own);
  }
  return [...counts].map(([part, { title, quantity }]): PlanPick => {
    return { part, title, kind: 'fuse', quantity, unit: 'piece', stockQuantity: 0, short: quantity };
  });
}

/**
 * What is to be bought in place of a holder that is proposed because the shelf has none whose fuse interrupts the short
 * behind it: a line for each, with what the fuse has to do. What the job writes is judged, and nothing is bought for it.
 */
export function interruptersToBuy({ job, fuses }: Fused): PlanPick[] {
  const proposed = new Set(
    job.proposals.flatMap(({ path: [where, id] }) => (where === 'devices' && id ? [id] : [])),
  );
  return fuses.flatMap(({ item, ratingA, interruptA, needsInterruptA, source, alternatives }): PlanPick[] => {
    if (!proposed.has(item) || source === null || ratingA === null || needsInterruptA === null) return [];
    if (interruptA !== null && interruptA >= needsInterruptA) return [];
    const forms = [...new Set(alternatives.map(({ form }) => fuseForms[form].name))];
    const such = forms.length === 0 ? '' : ` (${forms.join(', ')})`;
    return [
      {
        part: `fuse-and-holder-for-${item}`,
        title: `Fuse of about ${amps(ratingA)} that interrupts ${ampsDrawn(needsInterruptA)} or more, with its holder, in place of ${item}${such}`,
        kind: 'fuse',
        ...{ quantity: 1, unit: 'piece', stockQuantity: 0, short: 1 },
      },
    ];
  });
}
