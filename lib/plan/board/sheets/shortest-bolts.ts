import { threadM } from '../../../board/strength/screw-thread.ts';
import { partsOfKind } from '../../../model/content/parts-of-kind.ts';
import { hasFields } from '../../../model/content/proposal.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { shelvedFirst } from '../../../shelf/shelf-lengths.ts';

type Fixing = Board['given']['fixings'][string];

/**
 * The job with each bolt that a rule proposed for a board of an open sheet as short as the sheet allows that was chosen:
 * it was proposed for the most of those that it may come to be of. A bolt passes board and spacer and goes one measure of
 * `thread-engagement` into its thread, and no farther than is free behind; one on the shelf goes before another of its
 * length.
 */
export function withShortestBolts(job: Job): Job {
  const bolts = new Map<string, string>();
  const boards = job.boards.map((board) => {
    const own = withBoltsOfSheet(job, board);
    for (const [name, { fixing }] of Object.entries(own.given.fixings))
      if (fixing !== board.given.fixings[name]?.fixing) bolts.set(`${board.id} ${name}`, fixing);
    return own;
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

/** A board with the shortest bolt that its sheet allows at each fixing that a rule proposed, where its sheet is open. */
export function withBoltsOfSheet(job: Job, board: Board): Board {
  if (board.given.sheet !== undefined) return board;
  const isProposed = (name: string) =>
    job.proposals.some(
      ({ path: [section, on, field, fixing], since }) =>
        section === 'boards' &&
        on === board.id &&
        field === 'fixings' &&
        fixing === name &&
        since === undefined,
    );
  const fixings = Object.entries(board.given.fixings).map(([name, fixing]): [string, Fixing] => {
    const bolt = isProposed(name) ? shortestBolt(job, board, fixing) : null;
    return [name, bolt === null ? fixing : { ...fixing, fixing: bolt }];
  });
  return { ...board, given: { ...board.given, fixings: Object.fromEntries(fixings) } };
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
