import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanBoard, PlanPick } from '../../model/plan/index.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';

/** The bolts that stand on rubber, which nothing is tightened down on: a lock alone keeps them. */
function boltsOnRubber({ parts }: Pick<Job, 'parts'>, boards: readonly PlanBoard[]): number {
  const isBush = (id: string): boolean => {
    const part = parts[id];
    return part?.kind === 'fixing' && part.form === 'rubber-bush';
  };
  return boards.flatMap(({ fixings, pieces }) =>
    fixings.filter(({ id }) =>
      pieces.some((piece) => piece.carries === id && piece.parts.some(({ part }) => isBush(part))),
    ),
  ).length;
}

/** The thread lock of the catalogue for bolts on rubber, one of the shelf first; null where none is needed or known. */
export function threadLockFor(
  { parts, shop }: Pick<Job, 'parts' | 'shop'>,
  boards: readonly PlanBoard[],
): string | null {
  if (boltsOnRubber({ parts }, boards) === 0) return null;
  const locks = partsOfKind(parts, 'fixing').flatMap(([id, { form }]) =>
    form === 'thread-lock' ? [id] : [],
  );
  const inOrder = shelvedFirst(shop);
  const [best] = locks.toSorted((a, b) => inOrder(a, b) || (a < b ? -1 : 1));
  return best ?? null;
}

/** Thread lock that the catalogue lacks: it has no part, and is to be bought all the same. */
export function threadLockToBuy(job: Pick<Job, 'parts' | 'shop'>, boards: readonly PlanBoard[]): PlanPick[] {
  const bolts = boltsOnRubber(job, boards);
  if (bolts === 0 || threadLockFor(job, boards) !== null) return [];
  return [
    {
      part: 'thread-lock',
      title: `Thread lock for ${bolts} bolts on rubber, not in the catalogue`,
      ...{ kind: 'fixing', quantity: 1, unit: 'piece', stockQuantity: 0, short: 1 },
    },
  ];
}
