import { pointer } from '../../model/place.ts';
import { partOf } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

const onRubber: Rule = {
  id: 'board-on-rubber',
  judge({ job, plan }) {
    return plan.boards.flatMap(({ id, fixings, pieces }): Verdict<'board-on-rubber'>[] => {
      const bushes = fixings.flatMap((fixing) => {
        const stack = pieces.filter(({ carries, form }) => carries === fixing.id && form === 'pad');
        const found = stack.flatMap(({ parts }) => parts).filter(({ part }) => isBush(part));
        return found.map(({ part }) => ({ fixing: fixing.id, part }));
      });
      const names = [...new Set(bushes.map(({ fixing }) => fixing))];
      if (names.length === 0) return [];
      const parts = [...new Set(bushes.map(({ part }) => part))];
      return [
        {
          level: 'note',
          of: [...names, id, ...parts],
          message: `${id} stands at ${listed(names)} on rubber (${listed(parts)}): its first mode and what its fixings hold are reckoned as on hard spacers, and no torque is told for them`,
          remedy:
            'tighten until the rubber begins to bulge and no further, keep the bolt by a lock nut or thread lock, and look after it at the next visit; or stand the board on hard spacers',
          path: pointer(['boards', id]),
        },
      ];
    });
    function isBush(id: string): boolean {
      const part = partOf(job, id);
      return part?.kind === 'fixing' && part.form === 'rubber-bush';
    }
  },
};

export const rubberBushRules: readonly Rule[] = [onRubber];
