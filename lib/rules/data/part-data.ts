import type { Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { partDoubts } from './part-doubts.ts';

/** The parts of what stands in the job and its vehicle, each once. */
function mountedParts(job: Job): readonly string[] {
  return [...new Set(job.devices.flatMap(({ part }) => part ?? []))];
}

const unlikely: Rule = {
  id: 'part-data-unlikely',
  judge({ job }) {
    const length = lengthIn(job);
    return mountedParts(job).flatMap((id) => {
      const device = job.devices.find(({ part }) => part === id);
      if (!device?.spec) return [];
      return partDoubts(device.spec, device.facts, length).map(
        ({ keys, message, remedy }): Verdict<'part-data-unlikely'> => {
          return {
            level: 'caution',
            of: [`${id}.${keys.join('.')}`, id],
            message: `${id} ${message}`,
            remedy,
            file: 'part',
            path: pointer(['parts', id, ...keys]),
          };
        },
      );
    });
  },
};

export const partDataRules: readonly Rule[] = [unlikely];
