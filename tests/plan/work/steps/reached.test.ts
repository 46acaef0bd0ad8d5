import { describe, expect, test } from 'vitest';
import { withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';
import { onTheBoard } from '../../power/four-points.ts';
import { inVehicle } from '../../shop-changes.ts';

const thing = (name: string, x: number) =>
  `${name}: { x: ${x} mm, y: 440 mm, width: 30 mm, height: 30 mm, before: 100 mm, what: thing }`;
const steps = (...changes: readonly Change[]) => smallPlan(withBoard(), ...onTheBoard, ...changes).plan.steps;

describe('what has to stay reachable in the space of a board', () => {
  const told = steps(
    inVehicle(
      '    sound-points:\n',
      `    keep-reachable: { ${thing('jack', 700)}, ${thing('spare-wheel', 750)} }\n    sound-points:\n`,
    ),
  );

  test('is reached for once the board is in, and once more before the vehicle is handed over', () => {
    expect(byId(told, 'board-in-main').text).toContain(
      'then reach for jack and spare-wheel: it must still come out past the board',
    );
    expect(byId(told, 'hand-over').text).toContain('again, reach for jack and spare-wheel once more');
  });

  test('is no word in a step where nothing is told', () => {
    expect(steps().filter(({ text }) => text.includes('reach for'))).toEqual([]);
  });
});
