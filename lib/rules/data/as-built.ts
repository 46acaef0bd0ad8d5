import { pointer } from '../../model/place.ts';
import type { PlanMeasurement } from '../../model/plan/index.ts';
import { printedNumber, withoutNoughts } from '../../model/printed/index.ts';
import { lineFigures } from '../../model/printed/record.ts';
import type { Rule, Verdict } from '../rule.ts';
import { asRead } from '../words.ts';

/** What to do about a reading that nothing explains. */
const again =
  'measure again at the named points; if it stays, look for what was built otherwise than planned';

/** A prediction as the record prints it, without noughts at its end. */
function predictedText(line: PlanMeasurement): string {
  const names = lineFigures(line);
  const digits =
    names === null ? asRead(line.predicted ?? 0) : printedNumber(names.predicted, line.predicted);
  return `${withoutNoughts(digits)} ${line.unit}`;
}

const differs: Rule = {
  id: 'as-built-differs',
  judge({ plan }) {
    return plan.measurements.flatMap((line): Verdict<'as-built-differs'>[] => {
      const { id, what, predicted, unit, asBuilt, state, explanation } = line;
      if (state !== 'differs') return [];
      const read = asBuilt === undefined ? 'not read' : `${asRead(asBuilt)} ${unit}`;
      const expected = predicted === null ? 'nothing was predicted' : `${predictedText(line)} was predicted`;
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
    });
  },
};

export const asBuiltRules: readonly Rule[] = [differs];
