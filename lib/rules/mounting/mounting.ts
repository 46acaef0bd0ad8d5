import type { Case, Rule, Verdict } from '../rule.ts';
import { holeCorner, holeEdge, holeOff, narrowWeb } from './board-holes.ts';
import { boardSpot } from './board-spot.ts';
import { creeps, firstMode, retention } from './board-strength.ts';

const heldByTrim: Rule = {
  id: 'held-by-trim',
  judge({ plan }: Case) {
    return plan.boards.flatMap(({ id, space, fixings }): Verdict<'held-by-trim'>[] => {
      if (fixings.length > 0) return [];
      return [
        {
          level: 'stop',
          of: [id],
          message: `${id} has no fixing: trim and carpet alone would hold it in ${space}`,
          remedy: 'write fixings: at sound points of the space',
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
