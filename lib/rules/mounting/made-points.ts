import { spaceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

/** A point that is not there yet, and that nothing of the catalogue makes. */
const pointNotMade: Rule = {
  id: 'point-not-made',
  judge({ job, plan }) {
    return plan.boards.flatMap((planned): Verdict<'point-not-made'>[] => {
      const board = job.boards.find(({ id }) => id === planned.id);
      if (!board) return [];
      return planned.fixings.flatMap(({ point, made }) => {
        const spot = board.space['sound-points'][point];
        if (!spot || !made || made.part !== null) return [];
        const where = spaceSpot(board, 'sound-points', point, 'there');
        const length = lengthIn(job, where);
        const room = made.freeM === null ? '' : `, its length: at most ${length(made.freeM)}`;
        return [
          {
            level: 'stop',
            of: [point, board.id],
            message: `${point} of ${board.spaceId} is not there yet and takes ${spot.stud}, and ${spot.insert === 'welded' ? 'what is welded is not planned' : 'no rivet nut of the catalogue makes it'}`,
            value: spot.stud,
            remedy: `${spot.insert === 'welded' ? 'write insert: rivet-nut and ' : ''}add a rivet nut ${spot.stud} to the catalogue, with its hole under pilot:${room}; where something takes the bolt already, take there: false out`,
            ...where,
          },
        ];
      });
    });
  },
};

export const madePointRules: readonly Rule[] = [pointNotMade];
