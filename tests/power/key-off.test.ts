import { expect, test } from 'vitest';
import { isFault } from '../../lib/model/fault.ts';
import { keyOffDraw } from '../../lib/power/key-off.ts';
import { redone } from '../publish/workings/redo.ts';
import { usualRules } from './usual-rules.ts';

test('the draw with everything off is set against 50 mA', () => {
  expect(keyOffDraw({ vehicle: 0.025, processor: 0.004 }, usualRules)).toMatchObject({
    over: false,
    limitA: 0.05,
  });
  expect(keyOffDraw({ vehicle: 0.025, processor: 0.026 }, usualRules)).toMatchObject({ over: true });
  expect(keyOffDraw({ vehicle: -1 }, usualRules)).toHaveProperty('fault');
  expect(keyOffDraw({ vehicle: 0.025, processor: 0.025 }, usualRules)).toMatchObject({ over: false });
  const all: readonly Readonly<Record<string, number>>[] = [{ vehicle: 0.025, processor: 0.004 }, {}];
  for (const draws of all) {
    const made = keyOffDraw(draws, usualRules);
    if (isFault(made)) throw new Error(made.message);
    const { trace, value } = made.drawA;
    expect(redone(trace), trace.rule).toBeCloseTo(value, 9);
  }
});
