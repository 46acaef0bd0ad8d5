import { pointer } from '../model/place.ts';
import type { Rule, Verdict } from './rule.ts';
import { figure } from './words.ts';

/** Why a reading may differ. */
function likely(id: string, what: string, ratio: number): string {
  if (/ground/i.test(`${id} ${what}`) && ratio >= 3)
    return `${figure(ratio)} times the prediction on the ground side points at a joint: clean and tighten the ground point first`;
  if (/drop/i.test(`${id} ${what}`) && ratio > 1)
    return 'look for a loose set screw, a poor crimp or a longer conductor than planned, one joint at a time';
  return 'measure again at the named points; if it stays, look for what was built otherwise than planned';
}

const differs: Rule = {
  id: 'as-built-differs',
  judge({ plan }) {
    return plan.measurements.flatMap(
      ({ id, what, predicted, unit, asBuilt, state, explanation }): Verdict<'as-built-differs'>[] => {
        if (state !== 'differs') return [];
        const ratio =
          predicted === null || asBuilt === undefined || predicted === 0 ? 1 : asBuilt / predicted;
        const read = asBuilt === undefined ? 'not read' : `${figure(asBuilt)} ${unit}`;
        const expected =
          predicted === null ? 'nothing was predicted' : `${figure(predicted)} ${unit} was predicted`;
        return [
          {
            level: 'caution',
            of: [id],
            message: `${what}: ${read}, where ${expected}`,
            ...(asBuilt !== undefined && { value: asBuilt }),
            ...(predicted !== null && { limit: predicted }),
            unit,
            remedy: explanation ?? likely(id, what, ratio),
            path: pointer(['as-built', id]),
          },
        ];
      },
    );
  },
};

export const asBuiltRules: readonly Rule[] = [differs];
