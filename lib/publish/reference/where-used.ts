import type { BuildPlan } from '../../model/plan/index.ts';
import { counted } from '../words/words.ts';
import type { Writer } from '../words/written.ts';

/** For what a job has a part: the devices that are of it, its boards, how much of it is taken from the shelf. */
export function usesOfPart(
  plan: Pick<BuildPlan, 'items' | 'boards' | 'pick' | 'pickBeyond'>,
  part: string,
  write: Pick<Writer, 'wire'>,
): string[] {
  const items = plan.items.filter((item) => item.part === part);
  const named = items.map(({ title, origin }) => (origin === 'vehicle' ? `${title}, as it came` : title));
  const boards = plan.boards.filter(({ sheet }) => sheet === part).map(({ title }) => title);
  // A device says more than that one piece of it is taken.
  const taken = items.length > 0 ? [] : plan.pick.filter((line) => line.part === part);
  const inPlace = plan.pickBeyond?.inPlace.some((line) => line.part === part) ?? false;
  return [
    ...named,
    ...boards,
    ...taken.map(({ quantity, unit }) =>
      unit === 'm' ? write.wire('length-taken', quantity).text : counted(quantity, 'piece'),
    ),
    ...(inPlace ? ['in place since an earlier revision'] : []),
  ];
}
