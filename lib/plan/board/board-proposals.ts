import { routingHouse } from '../../board/route/routing-house.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { withProposals } from './board-layout.ts';
import { fixedBarriers, routeBoards } from './board-routes.ts';
import { proposalStep } from './board-steps.ts';
import { boardWires, wiresOnBoard } from './board-wires.ts';
import type { LaidBoard } from './laid-board.ts';

/** What layouts are wired with. */
export interface WiringOnTrial {
  readonly sized: ReadonlyMap<string, SizedConductor>;
  readonly roles: ReadonlyMap<string, ConductorRole>;
  /** True where whoever asks does not lay the wires for good before the layout is taken. */
  readonly layFirst: boolean;
}

/**
 * Lays each board out as it can be wired best, from the layouts proposed for it: the search goes by the way ahead of each
 * wire; only routing, with the diameters that the wires have, shows whether they get through and reach. `layFirst`: what
 * was laid on trial is laid for good before it is taken: where a wire then has no way or does not reach, the next is.
 */
export function chooseProposals(
  job: Job,
  laid: readonly LaidBoard[],
  { sized, roles, layFirst }: WiringOnTrial,
  keep: Keep,
): LaidBoard[] {
  return laid.map((one) => {
    const { search, board, shape, items } = one;
    if (!search || one.proposals.length === 0) return one;
    const wires = wiresOnBoard(job, board, boardWires(job, board, roles), (link) => sized.get(link)?.cable);
    const { proposals, trials } = keep(proposalStep, {
      task: search.task,
      rules: search.rules,
      proposals: one.proposals,
      wiring: {
        shape,
        items,
        barriers: fixedBarriers(job, one),
        wires,
        house: routingHouse((name) => job.rules[name].value),
      },
    });
    const wired = proposals.find((_, index) => {
      if (!layFirst) return true;
      const next = withProposals(one, proposals.slice(index));
      const [routed] = routeBoards(job, [next], sized, roles, { isDraft: true, keep });
      return routed?.faults.every(({ level }) => level !== 'stop');
    });
    return { ...withProposals(one, wired ? firstOf(proposals, wired) : proposals), trials };
  });
}

/** A list with one of it first. */
function firstOf<T>(list: readonly T[], first: T): T[] {
  return [first, ...list.filter((one) => one !== first)];
}
