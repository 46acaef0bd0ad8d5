import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import { ohmPerM } from '../../../lib/power/conductor/resistance.ts';
import { publishedRows } from '../../model/tables/published.ts';
import { outsideCheck } from '../../outside-check.ts';
import { redone } from '../../publish/workings/redo.ts';
import { usualRules } from '../usual-rules.ts';

const inTable = outsideCheck('copper-wire-table');
const warm = outsideCheck('copper-warm');

type Result = ReturnType<typeof ohmPerM>;
function numberOf(result: Result): number {
  if (isFault(result)) throw new Error(result.message);
  return result.value;
}
const copper = (areaMm2: number) => ({ areaMm2, material: 'copper' }) as const;

describe('resistance of a conductor', () => {
  // NBS Handbook 100 (1966), solid annealed copper at 20 C: within one unit of the last digit printed (1 and
  // 2/0 AWG stand there rounded up).
  test.each(publishedRows('copper-wire-awg.csv'))(
    'matches the copper wire table at %s AWG',
    (awg = '', _mils, printed = '') => {
      const perThousandFeet =
        numberOf(ohmPerM({ ...copper(awgAreaMm2(awg)), solid: true }, 20, usualRules)) * 304.8;
      const lastDigit = 10 ** -(printed.split('.')[1] ?? '').length;
      expect(
        Math.abs(inTable.differs(perThousandFeet, Number(printed)) - Number(printed)),
      ).toBeLessThanOrEqual(lastDigit);
    },
  );

  test('of copper at 60 C is 16 % above that at 20 C', () => {
    // IEC 60028: 0.00393 per K at 20 C, so 15.7 %, which the trade rounds to 16.
    const ratio =
      numberOf(ohmPerM(copper(10), 60, usualRules)) / numberOf(ohmPerM(copper(10), 20, usualRules));
    expect(warm.differs(ratio, 1.1572)).toBeCloseTo(1.1572, 6);
  });

  test('of copper-clad aluminium is that of 62 % IACS', () => {
    // ASTM B566, 10 % copper by volume; 0.1 / 0.62 ohm.
    const ratio =
      numberOf(ohmPerM({ areaMm2: 10, material: 'copper-clad-aluminium' }, 20, usualRules)) /
      numberOf(ohmPerM(copper(10), 20, usualRules));
    expect(ratio).toBeCloseTo(1.6129, 4);
  });

  // IEC 60028 for copper; of copper-clad aluminium the house rule, here 0.005 per K: 1 + 0.005 * 40 = 1.2.
  test('warms as its own material does, and can be redone from its working', () => {
    const rules = { ...usualRules, claddedPerK: 0.005 };
    const ratio = (material: 'copper' | 'copper-clad-aluminium') =>
      numberOf(ohmPerM({ areaMm2: 10, material }, 60, rules)) /
      numberOf(ohmPerM({ areaMm2: 10, material }, 20, rules));
    expect(ratio('copper')).toBeCloseTo(1.1572, 9);
    expect(ratio('copper-clad-aluminium')).toBeCloseTo(1.2, 9);
    for (const more of [{}, { solid: true }, { measuredOhmPerM: 0.0013 }]) {
      const worked = ohmPerM({ ...copper(21.15), ...more }, 60, rules);
      if (isFault(worked)) throw new Error(worked.message);
      expect(redone(worked.trace)).toBeCloseTo(worked.value, 12);
    }
  });

  test('comes from the part where that was measured', () => {
    const short = ohmPerM({ ...copper(21.15), measuredOhmPerM: 0.0013 }, 20, usualRules);
    expect(numberOf(short)).toBe(0.0013);
  });

  test('tells bad input instead of a number', () => {
    for (const areaMm2 of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(ohmPerM(copper(areaMm2), 20, usualRules)).toHaveProperty('fault');
    expect(ohmPerM(copper(10), Number.NaN, usualRules)).toHaveProperty('fault');
  });
});
