import type { ModeLimits } from '../../board/strength/stiffness.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';

/** What the first mode of a board is judged by: the house's limit, and a higher one beside a subwoofer. */
export function modeLimits({ rules }: Pick<Job, 'rules'>, { space }: Board): ModeLimits {
  const leastHz = rules['first-mode'].value;
  const besideHz = rules['first-mode-bass'].value;
  return { leastHz, wantedHz: space['beside-subwoofer'] ? Math.max(leastHz, besideHz) : leastHz };
}
