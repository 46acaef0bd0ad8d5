import { describe, expect, test } from 'vitest';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { boxOfSpace, planHeat } from '../../../../lib/plan/power/space-heat.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { supply } from './written-supply.ts';

describe('the heat of a space', () => {
  test('is the losses of what stands on its boards, while music plays', () => {
    const { job, paths } = supply();
    const element = (of: string, dropV: number, currentA: number) => ({
      ...{ id: `${of}:load`, of, kind: 'load' as const, model: 'power' as const, powerW: dropV * currentA },
      ...{ from: `${of}.B+`, to: `${of}.GND`, dropV, currentA, heatW: 0 },
    });
    const power = (name: 'music' | 'idle', state: 'solved' | 'no-solution' = 'solved') => {
      const at = { title: '', state, referenceNode: 'z', residualA: 0, nodes: [] };
      const elements = [element('dsp', 13, 1), element('radio', 13, 3), element('amp', 13, 2)];
      return { ...samplePlan().power, points: [{ name, ...at, elements }], loads: [] };
    };
    const [space, ...more] = planHeat(job, paths, power('music'), new PlanBook());
    expect(more).toEqual([]);
    // The radio stands in the dash. What no load tells the output of loses all that it takes.
    expect(space?.items.map(({ item, inputW, lossW }) => [item, inputW, lossW])).toEqual([
      ['amp', 26, 26],
      ['dsp', 13, 13],
    ]);
    expect(space).toMatchObject({ space: 'well', lossW: 39 });
    expect(space?.airC).toBeGreaterThan(space?.outsideC ?? Number.NaN);
    expect(planHeat(job, paths, power('idle'), new PlanBook())).toEqual([]);
    expect(planHeat(job, paths, power('music', 'no-solution'), new PlanBook())).toEqual([]);
  });

  test('leaves by the box round it: its plane stands where one way of it goes up or down', () => {
    const [board] = supply().job.boards;
    if (!board) throw new Error('There is a board.');
    const box = (right: 'up' | 'down' | 'front', upward: 'up' | 'down' | 'left') =>
      boxOfSpace({ ...board.space, right, upward });
    expect(box('front', 'up')).toMatchObject({ widthM: 0.8, heightM: 0.5, plane: 'standing' });
    expect(box('front', 'down').plane).toBe('standing');
    expect(box('front', 'left').plane).toBe('lying');
    expect(box('up', 'left')).toMatchObject({ widthM: 0.5, heightM: 0.8, plane: 'standing' });
    expect(box('down', 'left')).toMatchObject({ widthM: 0.5, heightM: 0.8, plane: 'standing' });
  });
});
