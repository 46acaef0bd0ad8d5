import type { Job } from '../../model/content/resolved-job.ts';
import { catalogueSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn, torqueIn } from '../words.ts';
import { partDoubts } from './part-doubts.ts';

/** The parts of what stands in the job and its vehicle, each once. */
function mountedParts(job: Job): readonly string[] {
  return [...new Set(job.devices.flatMap(({ part }) => part ?? []))];
}

const unlikely: Rule = {
  id: 'part-data-unlikely',
  judge({ job }) {
    return mountedParts(job).flatMap((id) => {
      const device = job.devices.find(({ part }) => part === id);
      if (!device?.spec) return [];
      const spot = catalogueSpot(id);
      const isOnBoard = job.devices.some(({ part, board }) => part === id && board);
      return partDoubts(device.spec, device.facts, lengthIn(job, spot), torqueIn(job, spot), isOnBoard).map(
        ({ keys, message, remedy }): Verdict<'part-data-unlikely'> => {
          return {
            level: 'caution',
            of: [`${id}.${keys.join('.')}`, id],
            message: `${id} ${message}`,
            remedy,
            ...catalogueSpot(id, ...keys),
          };
        },
      );
    });
  },
};

export const partDataRules: readonly Rule[] = [unlikely];
