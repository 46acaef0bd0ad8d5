import { describe, expect, test } from 'vitest';
import { inJob, vehicleFile, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const mm = (value: number) => expect.closeTo(value / 1000, 9);
const obstacle = (text: string): Change => [
  vehicleFile,
  '    depth: 200 mm\n',
  `    depth: 200 mm\n    obstacles: { hinge: { what: seat hinge, ${text} } }\n`,
];
const amp = inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
const rulesOf = (remarks: readonly { readonly rule: string }[]) => remarks.map(({ rule }) => rule);
const misfits = ['no-place-for-board', 'obstacle-in-the-way', 'space-too-small'];

// The space is 800 by 500 mm, the board 500 by 300 mm; points at 50, 50 and 450, 50; 6 mm is left round a board.
describe('a board whose place the job leaves open', () => {
  test('goes to the first place of a 10 mm grid that is clear of the edges of the space', () => {
    const { plan, remarks } = smallPlan(withBoard(), amp);
    const board = byId(plan.boards, 'main');
    expect(board.datumInSpace).toEqual({ xM: mm(10), yM: mm(10) });
    expect(board.fixings.map(({ id, xM, yM }) => [id, xM, yM])).toEqual([
      ['a', mm(40), mm(40)],
      ['b', mm(440), mm(40)],
    ]);
    expect(rulesOf(remarks).filter((rule) => misfits.includes(rule))).toEqual([]);
    expect(plan.traces['boards.main.datumInSpace.xM']).toMatchObject({
      origin: 'computed',
      rule: 'board-place',
    });
  });

  test('stands beside an obstacle, its fixings still in their points', () => {
    // Taken to 13 mm from the left, with 6 mm to spare: 20 mm is the first column that is free.
    const { plan, remarks } = smallPlan(
      withBoard(),
      amp,
      obstacle('x: 0 mm, y: 0 mm, width: 13 mm, height: 500 mm, stands-out: 100 mm'),
    );
    const board = byId(plan.boards, 'main');
    expect(board.datumInSpace).toEqual({ xM: mm(20), yM: mm(10) });
    expect(board.fixings[0]).toMatchObject({ xM: mm(30), yM: mm(40) });
    expect(rulesOf(remarks).filter((rule) => misfits.includes(rule))).toEqual([]);
  });

  describe('with something in its space that has to be reached', () => {
    const drain = (x: string, width: string, must: boolean): Change => [
      vehicleFile,
      '    depth: 200 mm\n',
      `    depth: 200 mm\n    keep-reachable: { drain: { x: ${x}, y: 0 mm, width: ${width}, height: 500 mm, before: 100 mm, must: ${must}, what: drain } }\n`,
    ];

    test('stands beside it, as beside an obstacle', () => {
      for (const must of [true, false]) {
        const { plan } = smallPlan(withBoard(), amp, drain('0 mm', '13 mm', must));
        expect(byId(plan.boards, 'main').datumInSpace).toEqual({ xM: mm(20), yM: mm(10) });
      }
    });

    test('has no place where that must be reached and lies across it; where it is a wish, it has one', () => {
      const stopped = smallPlan(withBoard(), amp, drain('250 mm', '20 mm', true));
      expect(stopped.remarks.find(({ rule }) => rule === 'no-place-for-board')?.of).toEqual([
        'main',
        'drain',
      ]);
      const wished = smallPlan(withBoard(), amp, drain('250 mm', '20 mm', false));
      expect(rulesOf(wished.remarks)).not.toContain('no-place-for-board');
      expect(byId(wished.plan.boards, 'main').datumInSpace).toEqual({ xM: mm(10), yM: mm(10) });
    });
  });

  test('without a free place stops, names the obstacle and by how much, and all else is planned', () => {
    const wall = 'x: 250 mm, y: 0 mm, width: 20 mm, height: 500 mm, stands-out: 100 mm';
    const { plan, remarks } = smallPlan(withBoard(), amp, obstacle(wall));
    const found = remarks.find(({ rule }) => rule === 'no-place-for-board');
    expect(found).toMatchObject({ level: 'stop', of: ['main', 'hinge'] });
    expect(found?.value).toBeLessThan(0);
    expect(found?.message).toMatch(/main reaches [\d.]+ mm .*past hinge/);
    expect(byId(plan.boards, 'main').placements.map(({ item }) => item)).toEqual(['amp']);
    expect(plan.wires.every(({ lengthM }) => lengthM > 0)).toBe(true);
    expect(plan.power.fuses.length).toBeGreaterThan(0);
  });

  test('too large for the space says by how much', () => {
    const { remarks } = smallPlan(withBoard('width: 500 mm', 'width: 850 mm'), amp);
    const found = remarks.find(({ rule }) => rule === 'no-place-for-board');
    expect(found).toMatchObject({ level: 'stop', of: ['main'], value: mm(-50) });
  });

  test('a place that the job gives is kept, free or not', () => {
    const given = withBoard('sheet: ply-a\n', 'sheet: ply-a\n    at: { x: 0 mm, y: 0 mm }\n');
    const { plan, remarks } = smallPlan(given, amp);
    expect(byId(plan.boards, 'main').datumInSpace).toEqual({ xM: 0, yM: 0 });
    expect(rulesOf(remarks)).toContain('space-too-small');
    expect(rulesOf(remarks)).not.toContain('no-place-for-board');
  });
});
