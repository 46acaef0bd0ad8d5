import { pointer } from '../model/place.ts';
import type { Rule, Verdict } from './rule.ts';
import { figure } from './words.ts';

/** What to do about a reading that nothing explains. */
const again =
  'measure again at the named points; if it stays, look for what was built otherwise than planned';

const differs: Rule = {
  id: 'as-built-differs',
  judge({ plan }) {
    return plan.measurements.flatMap(
      ({ id, what, predicted, unit, asBuilt, state, explanation }): Verdict<'as-built-differs'>[] => {
        if (state !== 'differs') return [];
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
            remedy: explanation ?? again,
            path: pointer(['as-built', id]),
          },
        ];
      },
    );
  },
};

export const asBuiltRules: readonly Rule[] = [differs];
