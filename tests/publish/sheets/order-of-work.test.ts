import { describe, expect, test } from 'vitest';
import type { PlanStep } from '../../../lib/model/plan/index.ts';
import { orderOfWork } from '../../../lib/publish/sheets/order-of-work.ts';
import { samplePlan } from '../sample/sample-plan.ts';

type Drawn = readonly [id: string, by: PlanStep['by'], startMinute: number, minutes: number];

/** The ids of the steps as the sheet shows them: side by side, then the rest. */
function shown(...drawn: readonly Drawn[]) {
  const plan = samplePlan();
  const [sample] = plan.steps;
  if (!sample) throw new Error('The sample plan has steps.');
  const steps = drawn.map(
    ([id, by, startMinute, minutes]): PlanStep => ({ ...sample, id, by, startMinute, minutes }),
  );
  const sheet = orderOfWork.model({ ...plan, steps });
  const idsOf = (column: { readonly steps: readonly { readonly id: string }[] }) =>
    column.steps.map(({ id }) => id);
  return { beside: sheet?.columns.map(idsOf), rest: sheet?.rest ? idsOf(sheet.rest) : null };
}

describe('the order of work on its sheet', () => {
  test('shows side by side what begins before the work at the board ends, then the rest', () => {
    const found = shown(
      ['cut', 'board', 0, 30],
      ['wire', 'board', 30, 30],
      ['check-in', 'vehicle', 0, 40],
      ['run', 'vehicle', 40, 40],
      ['board-in', 'both', 80, 10],
      ['power', 'vehicle', 90, 10],
    );
    expect(found.beside).toEqual([
      ['cut', 'wire'],
      ['check-in', 'run'],
    ]);
    expect(found.rest).toEqual(['board-in', 'power']);
  });

  test('has no columns without a board, and loses no step where one place waits for the other', () => {
    expect(shown(['check-in', 'vehicle', 0, 40], ['run', 'vehicle', 40, 40])).toEqual({
      beside: [],
      rest: ['check-in', 'run'],
    });
    expect(shown(['cut', 'board', 0, 30], ['run', 'vehicle', 30, 40])).toEqual({
      beside: [['cut'], ['run']],
      rest: null,
    });
  });
});
