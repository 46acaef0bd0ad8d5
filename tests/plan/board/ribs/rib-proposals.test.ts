import { describe, expect, test } from 'vitest';
import type { Keep } from '../../../../lib/model/keep.ts';
import type { PlanHole } from '../../../../lib/model/plan/index.ts';
import { boardFixings } from '../../../../lib/plan/board/board-shape.ts';
import { onFixings, stiffnessStep } from '../../../../lib/plan/board/board-steps.ts';
import { countedRibs, planRibs } from '../../../../lib/plan/board/ribs/plan-ribs.ts';
import { proposeRibs } from '../../../../lib/plan/board/ribs/rib-proposals.ts';
import { buildOf } from '../../../../lib/plan/board/sheets/sheet-build.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../../shop-changes.ts';
import { bentCoarsely, laidOut, oneBoardOn } from '../one-board.ts';

/** A board that ribs are looked for, on spacers of 40 mm. */
const taskOf = (spacer: string, ...changes: readonly Change[]) => {
  const found = oneBoardOn(spacer, ['sheet: ply-12'], ...changes);
  const fixings = boardFixings(found.board, found.job.parts);
  return { job: found.job, laid: laidOut(found), fixings, holes: [], keep: bentCoarsely };
};
const proposed = (wantedHz: number, ...changes: readonly Change[]) =>
  proposeRibs({ ...taskOf('40 mm', ...changes), wantedHz });

/** How stiff that board is with ribs as a job writes them, and how heavy. */
function bentWith(ribs: string, ...changes: readonly Change[]) {
  const { job, board, ...more } = oneBoardOn('40 mm', ['sheet: ply-12', `ribs: ${ribs}`], ...changes);
  const laid = laidOut({ job, board, ...more });
  const counted = countedRibs(job, board, planRibs(job, laid, []));
  expect(counted.length).toBeGreaterThan(0);
  const bent = bentCoarsely(stiffnessStep, {
    board: onFixings(laid, boardFixings(board, job.parts)),
    build: buildOf(job, laid, counted),
    aim: { wantedHz: 0 },
  });
  return { hz: bent?.firstModeHz.value ?? Number.NaN, massKg: bent?.massKg ?? Number.NaN };
}

/** Screwed alone: nothing is glued. */
const screwed: readonly Change[] = [
  inParts('  glue-a: { kind: fixing, title: Glue, form: adhesive }\n', ''),
  inShop('  glue-a: { pieces: 1 }\n', ''),
];

/** The board stood on end, 300 mm wide and 480 mm high, with its fixings near its corners. */
const stoodUp: readonly Change[] = [
  inJob(
    'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
    'outline: { rectangle: { width: 300 mm, height: 480 mm } }',
  ),
  inJob('at: { x: 200 mm, y: 110 mm }', 'at: { x: 100 mm, y: 200 mm }'),
  inVehicle('p2: { x: 450 mm, y: 50 mm', 'p2: { x: 270 mm, y: 50 mm'),
  inVehicle('p3: { x: 50 mm, y: 270 mm', 'p3: { x: 50 mm, y: 450 mm'),
  inVehicle('p4: { x: 450 mm, y: 270 mm', 'p4: { x: 270 mm, y: 450 mm'),
];

describe('ribs that are proposed', () => {
  test('run upright on a board that is higher than wide', () => {
    expect(proposed(60, ...screwed, ...stoodUp)?.text).toBe(
      '{ rib-1: { edge: left, distance: 5 7/8 in, height: 20 mm } }',
    );
    const hzOf = (edge: string, distance: string) =>
      bentWith(`{ r: { edge: ${edge}, distance: ${distance}, height: 20 mm } }`, ...screwed, ...stoodUp).hz;
    expect(hzOf('left', '150 mm')).toBeGreaterThan(hzOf('bottom', '240 mm'));
  });

  // Beside the middle lines are tried at 0.38 and 0.62 of the height: of 300 mm 114 mm, on its eighth 4 1/2 in.
  const beside = '{ rib-1: { edge: bottom, distance: 4 1/2 in, height: 20 mm } }';

  test('keep off a hole that stays open, which they would close', () => {
    const through = { depthM: null, purpose: 'mounting', of: 'amp', pilotFor: null, behind: null } as const;
    const hole: PlanHole = { n: 1, xM: 0.25, yM: 0.15, diameterM: 0.02, ...through };
    expect(proposeRibs({ ...taskOf('40 mm', ...screwed), holes: [hole], wantedHz: 60 })?.text).toBe(beside);
  });

  test('leave a line that what stands behind the board cuts into stretches shorter than half of it', () => {
    const pipe =
      'obstacles: { pipe: { x: 230 mm, y: 140 mm, width: 60 mm, height: 40 mm, stands-out: 35 mm, what: a pipe } }';
    const behind = inVehicle('    sound-points:', `    ${pipe}\n    sound-points:`);
    expect(proposed(60, ...screwed, behind)?.text).toBe(beside);
  });

  test('are two on edge where these are lighter than one that lies flat', () => {
    const thick = [
      ...screwed,
      addParts(
        'ply-18: { kind: board-sheet, title: Sheet, material: birch-plywood, thickness: 18 mm, width: 1500 mm, height: 1500 mm, grain: height, density: 680 kg/m3, modulus: 9 GPa, modulus-across: 9 GPa, shear-modulus: 3.4 GPa }',
      ),
      inShop('  screw-25: { pieces: 50 }\n', '  ply-18: { pieces: 1 }\n  screw-25: { pieces: 50 }\n'),
    ];
    const found = proposed(87, ...thick);
    expect(found?.text).toBe(
      '{ rib-1: { edge: bottom, distance: 5 7/8 in, height: 30 mm }, rib-2: { edge: bottom, distance: 4 1/2 in, height: 30 mm } }',
    );
    const flat = '{ r: { edge: bottom, distance: 5 7/8 in, height: 18 mm, width: 150 mm, sheet: ply-18 } }';
    const other = bentWith(flat, ...thick);
    expect(other.hz).toBeGreaterThanOrEqual(87);
    expect(other.massKg).toBeGreaterThan(found?.stiffness.massKg ?? Number.NaN);
  });

  test('are the lightest that keep the limit, cut from the sheet of the board or another on the shelf', () => {
    const found = proposed(60);
    expect(found?.stiffness.firstModeHz.value).toBeGreaterThanOrEqual(60);
    expect(found?.text).toMatch(
      /^\{ rib-1: \{ edge: (bottom|left), distance: .* in, height: \d+ mm.* \} \}$/,
    );
  });

  test.each([
    [40, []],
    [60, []],
    [75, []],
    [60, stoodUp],
  ] as const)('written as they are told make the board as stiff as is told: %s Hz', (wantedHz, changes) => {
    const found = proposed(wantedHz, ...changes);
    if (!found) throw new Error('There is a rib that does.');
    const written = bentWith(found.text, ...changes);
    expect(written.hz).toBeCloseTo(found.stiffness.firstModeHz.value, 6);
    expect(written.massKg).toBeCloseTo(found.stiffness.massKg, 9);
  });

  // Screwed alone, of the sheet of the board, a rib of 15 mm takes no screw. Across the longer way of the board it helps most.
  test.each([
    [60, 20],
    [75, 25],
    [80, 30],
  ])('run where one helps most, no higher than it takes: for %s Hz %s mm', (wantedHz, heightMm) => {
    const found = proposed(wantedHz, ...screwed);
    expect(found?.text).toBe(`{ rib-1: { edge: bottom, distance: 5 7/8 in, height: ${heightMm} mm } }`);
    const hzOf = (mm: number) =>
      bentWith(`{ r: { edge: bottom, distance: 150 mm, height: ${mm} mm } }`, ...screwed).hz;
    expect(hzOf(heightMm)).toBeGreaterThanOrEqual(wantedHz);
    if (heightMm > 20) expect(hzOf(heightMm - 5)).toBeLessThan(wantedHz);
  });

  test('are none where no rib has room, or none does', () => {
    expect(proposeRibs({ ...taskOf('10 mm'), wantedHz: 60 })).toBeNull();
    expect(proposed(5000)).toBeNull();
  });

  test('are looked for no longer than twelve ways that do by a coarse look and not with all elements', () => {
    let looks = 0;
    /** A look with all elements finds nothing that holds the board. */
    const deceived: Keep = (step, input) => {
      if (typeof input !== 'object' || input === null || !('aim' in input && 'board' in input))
        return bentCoarsely(step, input);
      const isCoarse = typeof input.aim === 'object' && input.aim !== null && 'elements' in input.aim;
      if (isCoarse) return bentCoarsely(step, input);
      looks += 1;
      return bentCoarsely(step, { ...input, board: { ...Object(input.board), supports: [] } });
    };
    expect(proposeRibs({ ...taskOf('40 mm'), wantedHz: 40, keep: deceived })).toBeNull();
    expect(looks).toBe(12);
  });
});
