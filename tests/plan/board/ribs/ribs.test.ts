import { describe, expect, test } from 'vitest';
import { nestJobs } from '../../../../lib/board/cut/sheet-pieces.ts';
import type { BuildPlan, PlanBoard } from '../../../../lib/model/plan/index.ts';
import type { JoinedRemark } from '../../../../lib/model/remark.ts';
import { inJob, vehicleFile } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';
import { onFourPoints, stocked } from '../../power/four-points.ts';

const sheets = stocked({ id: 'ply-9', mm: 9, pieces: 1 }, { id: 'ply-12', mm: 12, pieces: 1 });
interface Ribbed {
  readonly plan: BuildPlan;
  readonly remarks: readonly JoinedRemark[];
  readonly board: PlanBoard;
}
function ribbed(ribs: string, ...more: readonly Change[]): Ribbed {
  const lines = ['sheet: ply-9', ...(ribs === '' ? [] : [`ribs: { ${ribs} }`])];
  const made = smallPlan(...sheets, ...onFourPoints(lines), ...more);
  return { ...made, board: byId(made.plan.boards, 'main') };
}
const bare = ribbed('');

describe('a rib on its edge, measured from the lower side', () => {
  const { plan, board } = ribbed('r1: { edge: bottom, distance: 150 mm, height: 18 mm }');
  const rib = byId(board.ribs, 'r1');

  test('runs as far as it is free, one strip of the sheet of its board', () => {
    expect(rib).toMatchObject({ face: 'rear', joint: 'screwed', sheet: 'ply-9', form: 'on-edge', strips: 1 });
    expect(rib.from).toEqual({ xM: expect.closeTo(0.006, 6), yM: expect.closeTo(0.15, 6) });
    expect(rib.to).toEqual({ xM: expect.closeTo(0.494, 6), yM: expect.closeTo(0.15, 6) });
    expect(rib.roomM).toBeCloseTo(0.025 - 0.018, 9);
    expect(plan.traces['boards.main.ribs.r1.lengthM']).toMatchObject({ origin: 'computed', mark: 'cp' });
  });

  test('makes the board stiffer, and heavier by its own mass', () => {
    expect(board.firstModeHz).toBeGreaterThan(bare.board.firstModeHz ?? Number.NaN);
    expect(board.massKg - bare.board.massKg).toBeCloseTo(0.488 * 0.009 * 0.018 * 680, 6);
    expect(board.loadedMassKg - bare.board.loadedMassKg).toBeCloseTo(rib.massKg, 9);
  });

  test('has screws through the board from 30 mm inside its ends, no more than 125 mm apart', () => {
    // A screw of 25 mm through 9 mm bites 16 mm, but a rib of 18 mm leaves only 15 mm for it.
    expect(rib.screw).toBeNull();
    const higher = ribbed('r1: { edge: bottom, distance: 150 mm, height: 19 mm }').board;
    expect(byId(higher.ribs, 'r1').screw).toEqual({
      part: 'screw-25',
      count: 5,
      apartM: expect.closeTo(0.107, 6),
    });
    const holes = higher.holes.filter(({ of }) => of === 'r1');
    expect(holes.map(({ yM }) => yM)).toEqual(Array(5).fill(expect.closeTo(0.15, 9)));
    expect(Math.min(...holes.map(({ xM }) => xM))).toBeCloseTo(0.036, 6);
    expect(Math.max(...holes.map(({ xM }) => xM))).toBeCloseTo(0.464, 6);
  });

  test('is cut from the sheet along its grain, and stands in the order of work', () => {
    const nested = nestJobs([plan]);
    const piece = nested.pieces.find(({ id }) => id === 'main.rib-r1');
    // The sheet is nested on its longer side or square; its grain runs along its height.
    expect(piece).toMatchObject({ widthM: 0.018, heightM: expect.closeTo(0.488, 6), lies: 'as-written' });
    const step = plan.steps.find(({ acts }) => acts.includes('rib:main.r1'));
    const drilled = plan.steps.findIndex(({ acts }) => acts.includes('drill:main'));
    expect(step?.text).toMatch(/r1 to the rear/);
    expect(step && plan.steps.indexOf(step)).toBeGreaterThan(drilled);
  });
});

describe('a glued rib', () => {
  const flat = 'height: 12 mm, width: 100 mm, sheet: ply-12';
  const screwed = ribbed(`r1: { edge: bottom, distance: 150 mm, ${flat} }`);
  const glued = ribbed(`r1: { edge: bottom, distance: 150 mm, joint: glued, ${flat} }`);

  test('stiffens more than a screwed one', () => {
    expect(glued.board.firstModeHz).toBeGreaterThan(screwed.board.firstModeHz ?? Number.NaN);
    expect(screwed.board.firstModeHz).toBeGreaterThan(bare.board.firstModeHz ?? Number.NaN);
  });

  test('takes glue and its own sheet from the shelf', () => {
    expect(glued.plan.pick).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ part: 'glue-a', quantity: 1 }),
        expect.objectContaining({ part: 'ply-12', quantity: 1 }),
        expect.objectContaining({ part: 'ply-9', quantity: 1 }),
      ]),
    );
    expect(screwed.plan.pick.map(({ part }) => part)).not.toContain('glue-a');
    expect(glued.plan.steps.find(({ id }) => id === 'ribs-main')?.tools).toContain('glue');
  });
});

describe('a rib on the mounting side', () => {
  const lip = (at: string) => `lip: { edge: bottom, distance: ${at}, height: 30 mm, face: mounting }`;

  test('keeps parts off that the plan places', () => {
    const open = inJob('\n    at: { x: 200 mm, y: 110 mm }', '');
    const { board } = ribbed(lip('150 mm'), open);
    const [amp] = board.placements;
    if (!amp) throw new Error('The amplifier has no place.');
    const rib = byId(board.ribs, 'lip');
    const inPlanM = Math.max(amp.yM - (rib.from.yM + 0.0045), rib.from.yM - 0.0045 - (amp.yM + amp.depthM));
    expect(inPlanM).toBeGreaterThan(0);
  });

  test('sends wires round', () => {
    /** Stretches of wire over the rectangle that the rib takes. */
    const over = ({ routes }: PlanBoard) =>
      routes.flatMap(({ points }) =>
        points.slice(1).filter((to, at) => {
          const from = points[at] ?? to;
          const [low, high] = [Math.min(from.yM, to.yM), Math.max(from.yM, to.yM)];
          const [left, right] = [Math.min(from.xM, to.xM), Math.max(from.xM, to.xM)];
          return low < 0.0645 && high > 0.0555 && left < 0.35 && right > 0.15;
        }),
      );
    const { board } = ribbed(lip('60 mm').replace(' height', ' start: 150 mm, length: 200 mm, height'));
    expect(over(bare.board).length).toBeGreaterThan(0);
    expect(over(board)).toEqual([]);
    expect(board.routes).toHaveLength(bare.board.routes.length);
  });
});

describe('a rib that can not be as it is written', () => {
  const told = ({ remarks }: Ribbed, rule: string) => remarks.find((one) => one.rule === rule);

  test('is left out where no stretch is free', () => {
    const off = ribbed('r1: { edge: top, distance: 400 mm, height: 18 mm }');
    expect(off.board.ribs).toEqual([]);
    expect(told(off, 'rib-off-board')).toMatchObject({ level: 'stop', of: ['r1', 'main'] });
    expect(off.board.firstModeHz).toBe(bare.board.firstModeHz);
  });

  test('does not count where it is over a fixing, or higher than its room', () => {
    for (const rib of [
      'r1: { from: [20 mm, 40 mm], to: [480 mm, 40 mm], height: 18 mm }',
      'r1: { edge: bottom, distance: 150 mm, height: 26 mm }',
    ]) {
      const { board } = ribbed(rib);
      expect(byId(board.ribs, 'r1').bendingNm2).toBeNull();
      expect(board.firstModeHz).toBe(bare.board.firstModeHz);
    }
  });

  test('is told where an obstacle of the space stands behind it', () => {
    const obstacle: Change = [
      vehicleFile,
      '    sound-points:',
      '    obstacles: { pipe: { x: 250 mm, y: 100 mm, width: 20 mm, height: 100 mm, stands-out: 10 mm, what: a pipe } }\n    sound-points:',
    ];
    // Left to the plan it ends before the pipe; written through it, the pipe is in the way.
    const ends = byId(
      ribbed('r1: { edge: bottom, distance: 150 mm, height: 18 mm }', obstacle).board.ribs,
      'r1',
    );
    expect(ends.to.xM).toBeLessThan(0.25);
    const through = ribbed('r1: { from: [20 mm, 150 mm], to: [480 mm, 150 mm], height: 18 mm }', obstacle);
    expect(told(through, 'obstacle-in-the-way')).toMatchObject({ level: 'stop', of: ['r1', 'pipe', 'main'] });
  });
});
