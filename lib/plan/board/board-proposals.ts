import type { Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { withProposal } from './board-layout.ts';
import { type RoutedBoard, routeBoards } from './board-routes.ts';
import type { LaidBoard } from './laid-board.ts';

/**
 * Takes, of the layouts proposed for each board, the one that can be wired best: fewest wires without a way,
 * then fewest crossings, then the better score. The search counts wires as the crow flies; only routing
 * shows whether they get through.
 */
export function chooseProposals(
  job: Job,
  laid: readonly LaidBoard[],
  sized: ReadonlyMap<string, SizedConductor>,
  roles: ReadonlyMap<string, ConductorRole>,
  keep: Keep,
): LaidBoard[] {
  return laid.map((board) => {
    if (board.proposals.length < 2) return board;
    const tried = board.proposals.map((_, index) => {
      const layout = withProposal(board, index);
      const [routed] = routeBoards(job, [layout], sized, roles, keep);
      return { layout, index, cost: routed ? costOf(routed) : Number.POSITIVE_INFINITY };
    });
    const [best] = tried.toSorted((a, b) => a.cost - b.cost || a.index - b.index);
    return best?.layout ?? board;
  });
}

/** A wire without a way outweighs any number of crossings that a board could have. */
function costOf({ faults, crossings }: RoutedBoard): number {
  return faults.length * 1000 + crossings;
}
