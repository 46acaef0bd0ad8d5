import type { PartOf } from '../../model/kinds/index.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { deviceOf } from '../look-up.ts';
import type { Case } from '../rule.ts';

/** A speaker as a channel drives it. */
export interface Speaker {
  readonly id: string;
  readonly spec: PartOf<'speaker'>;
  /** The filters of its channel, and those of the crossover that stands before it. */
  readonly filters: readonly PlanFilter[];
}

/** The speakers of a channel with their data. */
export function speakersOf({ job, plan }: Case, { speakers, filters }: PlanChannel): readonly Speaker[] {
  return speakers.flatMap((id): Speaker[] => {
    const spec = deviceOf(job, id)?.spec;
    const passive = plan.audio.speakers.find((one) => one.id === id)?.passive ?? [];
    return spec?.kind === 'speaker' ? [{ id, spec, filters: [...filters, ...passive] }] : [];
  });
}
