import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { madePoint } from '../../../../lib/plan/board/made-points.ts';
import { orderOfWork } from '../../../../lib/plan/work/steps/order-of-work.ts';
import { withBoard } from '../../../read/problem-case.ts';
import { smallShop } from '../../../read/small-shop.ts';
import { jobOf, smallPlan } from '../../plan-small-shop.ts';
import { onTheBoard } from '../../power/four-points.ts';
import { addParts, inShop, inVehicle } from '../../shop-changes.ts';
import { randomWork } from '../random-work.ts';
import { allBefore } from './step-order.ts';

const nut = (id: string, more = ''): string =>
  `${id}: { kind: fixing, title: Rivet nut, form: rivet-nut, thread: M6, length: 16 mm, pilot: 9 mm${more} }`;

const toMake = inVehicle('      p1: {', '      p1: { there: false, ');

describe('a point that is still to be made', () => {
  const { plan } = smallPlan(withBoard(), ...onTheBoard, toMake, addParts(nut('nut-a')));
  const step = plan.steps.find(({ id }) => id === 'points-main');

  test('is drilled with the battery off, and before the board goes in', () => {
    expect(step?.text).toMatch(/drill .*9 mm.* and set nut-a at p1\. First look and feel behind each/);
    expect(step?.text).toMatch(/set a nut in sealer where the far side of its panel is open to the weather$/);
    expect(step?.tools).toContain('sealer');
    expect(step?.after).toEqual(['battery-off']);
    expect(plan.steps.find(({ id }) => id === 'board-in-main')?.after).toContain('points-main');
  });

  test('has its part fetched', () => {
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'nut-a', quantity: 1 }));
    expect(plan.boards[0]?.fixings.map(({ made }) => made?.part ?? null)).toEqual(
      expect.arrayContaining(['nut-a', null]),
    );
  });

  test('asks for nothing where it is there', () => {
    const { plan: made } = smallPlan(withBoard(), ...onTheBoard, addParts(nut('nut-a')));
    expect(made.steps.filter(({ id }) => id.startsWith('points'))).toEqual([]);
    expect(made.pick.map(({ part }) => part)).not.toContain('nut-a');
  });
});

describe('what a point is made with', () => {
  const chosen = (freeMm: number, ...parts: readonly string[]) => {
    const job = jobOf(
      smallShop(
        withBoard(),
        ...onTheBoard,
        inVehicle('      p1: {', `      p1: { there: false, free-depth: ${freeMm} mm, `),
        addParts(...parts),
        inShop('  red-8:', '  nut-b: { pieces: 3 }\n  red-8:'),
      ),
    );
    const point = job.boards[0]?.space['sound-points'].p1;
    if (!point) throw new Error('The small shop has a point p1.');
    return madePoint(job, point)?.part;
  };

  test('is a nut that lies on the shelf before one that does not', () => {
    expect(chosen(50, nut('nut-a', ', holds: 300 kg'), nut('nut-b', ', holds: 100 kg'))).toBe('nut-b');
  });

  // Both sides of the bound: a nut of 16 mm before 16 mm and before a hair less.
  test('is none that is longer than what is free behind the panel', () => {
    expect(chosen(16, nut('nut-b'))).toBe('nut-b');
    expect(chosen(15.9, nut('nut-b'))).toBeNull();
  });

  test('is none that does not tell its hole, or has another thread', () => {
    const noHole = nut('nut-b').replace(', pilot: 9 mm', '');
    expect(chosen(50, noHole, nut('nut-a').replace('M6', 'M8'))).toBeNull();
  });
});

test('in any order of work points are made after the battery is off and before their board goes in', () => {
  fc.assert(
    fc.property(randomWork, (work) => {
      const boards = work.plan.boards.map((board) => ({
        ...board,
        fixings: board.fixings.map((fixing) => ({
          ...fixing,
          made: { part: 'nut', holeM: 0.009, behind: 'nothing', freeM: null },
        })),
      }));
      const { steps } = orderOfWork({ ...work, plan: { ...work.plan, boards } });
      for (const { id, fixings } of boards) {
        if (fixings.length === 0) continue;
        expect(allBefore(steps, `points-${id}`)).toContain('battery-off');
        expect(allBefore(steps, `board-in-${id}`)).toContain(`points-${id}`);
      }
    }),
  );
});
