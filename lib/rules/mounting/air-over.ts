import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { bodyInSpace } from './reach-in-space.ts';

/** Air that a maker asks for over the face of a part, where the front of the space closes it in. */
const airOverShort: Rule = {
  id: 'air-over-short',
  judge({ job, plan }) {
    return plan.boards.flatMap((board) => {
      const own = job.boards.find(({ id }) => id === board.id);
      if (own?.space.bounds.front === 'open') return [];
      return board.placements.flatMap((at): Verdict<'air-over-short'>[] => {
        const limit = deviceOf(job, at.item)?.facts.footprint?.airM.face;
        const value = Math.max(0, board.spaceDepthM - bodyInSpace(board, at).maxZ);
        if (!own || limit === undefined || value >= limit - 1e-6) return [];
        const spot = deviceSpot(job, at.item, 'at');
        const length = lengthIn(job, spot);
        return [
          {
            level: 'caution',
            of: [at.item, board.id],
            message: `over ${at.item}, ${length(value)} of air are free up to the front of ${own.spaceId}; its maker asks for ${length(limit)}`,
            value,
            limit,
            unit: 'm',
            remedy: `take lower spacers or less raised:, or a deeper space; where nothing closes the front of ${own.spaceId} in use, write bounds: { front: open } in the vehicle's file`,
            ...spot,
          },
        ];
      });
    });
  },
};

export const airOverRules: readonly Rule[] = [airOverShort];
