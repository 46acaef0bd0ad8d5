import { whyNotFixed } from '../../propose/laying/fixings.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { holeCorner, holeEdge, holeOff, narrowWeb } from './board-holes.ts';
import { boardSpot } from './board-spot.ts';
import { creeps, firstMode, retention } from './board-strength.ts';

/** Why each sound point of the space of a board was not taken for a fixing by itself. */
function pointsNotTaken({ job }: Case, board: string): readonly string[] {
  const own = job.boards.find(({ id }) => id === board);
  if (!own) return [];
  const { 'hole-edge': edge, 'hole-corner': corner } = job.rules;
  const length = lengthIn(job, boardSpot(board));
  return Object.entries(own.space['sound-points']).flatMap(([name, point]) => {
    const why = whyNotFixed(job, own.given, point);
    if (why === null) return [];
    const told = {
      behind: point.behind === 'unknown' ? 'nobody has looked behind it' : `${point.behind} behind it`,
      'not-under': `not under ${board}`,
      edge: `less than ${length(edge.value)} from an edge of ${board}`,
      corner: `less than ${length(corner.value)} from a corner of ${board}`,
    };
    return [`${name}, ${told[why]}`];
  });
}

const heldByTrim: Rule = {
  id: 'held-by-trim',
  judge(about: Case) {
    return about.plan.boards.flatMap(({ id, space, fixings }): Verdict<'held-by-trim'>[] => {
      if (fixings.length > 0) return [];
      const points = pointsNotTaken(about, id);
      const none = points.length === 0 ? '' : `; no fixing is proposed at ${points.join('; ')}`;
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} has no fixing: trim and carpet alone would hold it in ${space}${none}`,
          remedy:
            points.length === 0
              ? `write fixings: at sound points of the space, at least three that are not in one line`
              : `look behind those points, and write behind: nothing at each in the vehicle's file where that is so; or move ${id} over others; or write fixings: at points that you answer for, at least three that are not in one line`,
          ...boardSpot(id, 'fixings'),
        },
      ];
    });
  },
};

export const mountingRules: readonly Rule[] = [
  heldByTrim,
  narrowWeb,
  firstMode,
  retention,
  creeps,
  holeOff,
  holeEdge,
  holeCorner,
];
