import { threadM } from '../../../board/strength/screw-thread.ts';
import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import { hasFields } from '../../../model/content/proposal.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { shelvedFirst } from '../../../shelf/shelf-lengths.ts';

type Fixing = Board['given']['fixings'][string];

/**
 * The job with each bolt that a rule proposed for a board of an open sheet as short as the sheet allows that was chosen:
 * it was proposed long enough for the thickest. A bolt passes board and spacer and goes one measure of `thread-engagement`
 * into its thread, and no farther than is free behind; one on the shelf goes before another of its length.
 */
export function withShortestBolts(job: Job): Job {
  const proposed = new Set(
    job.proposals.flatMap(({ path: [section, board, field, fixing], since }) =>
      section === 'boards' && field === 'fixings' && since === undefined ? [`${board} ${fixing}`] : [],
    ),
  );
  if (proposed.size === 0) return job;
  const bolts = new Map<string, string>();
  const boards = job.boards.map((board) => {
    if (board.given.sheet !== undefined) return board;
    const fixings = Object.entries(board.given.fixings).map(([name, fixing]): [string, Fixing] => {
      const at = `${board.id} ${name}`;
      const bolt = proposed.has(at) ? shortestBolt(job, board, fixing) : null;
      if (bolt === null || bolt === fixing.fixing) return [name, fixing];
      bolts.set(at, bolt);
      return [name, { ...fixing, fixing: bolt }];
    });
    return { ...board, given: { ...board.given, fixings: Object.fromEntries(fixings) } };
  });
  if (bolts.size === 0) return job;
  const proposals = job.proposals.map((proposal) => {
    const { path, value } = proposal;
    const bolt =
      path[0] === 'boards' && path[2] === 'fixings' ? bolts.get(`${path[1]} ${path[3]}`) : undefined;
    return bolt === undefined || !hasFields(value)
      ? proposal
      : { ...proposal, value: { ...value, fixing: bolt } };
  });
  return { ...job, boards, proposals };
}

/** The shortest bolt of the catalogue that holds a board of its sheet in a point; null where none does. */
function shortestBolt({ parts, shop, rules }: Job, { sheet, space }: Board, given: Fixing): string | null {
  const point = space['sound-points'][given.point];
  if (!point) return null;
  const stackM = sheet.thickness + (given.spacer ?? 0);
  const threadedM = (threadM(point.stud) ?? 0) * rules['thread-engagement'].value;
  const freeM = point['free-depth'] ?? Number.POSITIVE_INFINITY;
  const inOrder = shelvedFirst(shop);
  const [best] = partsOfKind(parts, 'fixing')
    .flatMap(([id, { form, thread, length = 0 }]) => {
      const isLong = length >= stackM + threadedM - 1e-9 && length - stackM <= freeM + 1e-9;
      return form === 'bolt' && thread === point.stud && isLong ? [{ id, lengthM: length }] : [];
    })
    .toSorted((a, b) => a.lengthM - b.lengthM || inOrder(a.id, b.id) || (a.id < b.id ? -1 : 1));
  return best?.id ?? null;
}
