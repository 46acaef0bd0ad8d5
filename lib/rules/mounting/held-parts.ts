import { houseRule } from '../house-rule-of.ts';
import { deviceOf, deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { kilograms } from '../words.ts';

/** What sticks a part on and gives in heat or in a crash. */
const stuck: readonly string[] = ['tape', 'hook-and-loop'];

/** What is screwed to the board beside a part. */
const screwed: readonly string[] = ['bracket', 'clamp'];

const notHeld: Rule = {
  id: 'part-not-held',
  judge({ job, plan }) {
    const { value: limit, from } = houseRule(job, 'stuck-mass');
    return plan.boards.flatMap(({ id: board, placements }) =>
      placements.flatMap(({ item }): Verdict<'part-not-held'>[] => {
        const device = deviceOf(job, item);
        const print = device?.facts.footprint;
        if (!device || !print || print.holes.length + print.bracketHoles.length > 0) return [];
        const held = device.given?.held;
        const isScrewed = held !== undefined && screwed.includes(held);
        const verdict = { level: 'caution', of: [item, board], ...deviceSpot(job, item) } as const;
        if (held === undefined)
          return [
            {
              ...verdict,
              message: `${item} has no mounting holes, and nothing says what holds its ${kilograms(print.massKg)} on ${board}`,
              remedy: `write held: of ${item} (strap, bracket, clamp), or mounting-holes: or bracket-holes: of its part`,
            },
          ];
        if (isScrewed)
          return [
            {
              ...verdict,
              message: `${item} is held on ${board} by a ${held}, and nothing says where its screws go: the drill table has no holes for it`,
              remedy: `measure them from the lower left corner of ${item}, and write bracket-holes: of ${device.part ?? 'its part'}: [{ x: , y: , diameter: }]`,
            },
          ];
        if (!stuck.includes(held) || print.massKg <= limit + 1e-9) return [];
        return [
          {
            ...verdict,
            message: `${item}, ${kilograms(print.massKg)}, is held on ${board} by ${held === 'tape' ? 'tape' : 'hook-and-loop'} alone; ${kilograms(limit)} is the most for it`,
            value: print.massKg,
            limit,
            unit: 'kg',
            remedy: 'screw a strap, a bracket or a clamp over it, and write it under held:',
            ...from,
          },
        ];
      }),
    );
  },
};

export const heldPartRules: readonly Rule[] = [notHeld];
