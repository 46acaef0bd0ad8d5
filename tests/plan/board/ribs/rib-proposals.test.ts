import { describe, expect, test } from 'vitest';
import { boardFixings } from '../../../../lib/plan/board/board-shape.ts';
import { onFixings, stiffnessStep } from '../../../../lib/plan/board/board-steps.ts';
import { countedRibs, planRibs } from '../../../../lib/plan/board/ribs/plan-ribs.ts';
import { proposeRibs } from '../../../../lib/plan/board/ribs/rib-proposals.ts';
import { buildOf } from '../../../../lib/plan/board/sheets/sheet-build.ts';
import type { Change } from '../../../read/small-shop.ts';
import { inParts, inShop } from '../../shop-changes.ts';
import { bentCoarsely, laidOut, oneBoardOn } from '../one-board.ts';

describe('ribs that are proposed', () => {
  const proposed = (wantedHz: number, spacer = '40 mm', ...more: readonly Change[]) => {
    const found = oneBoardOn(spacer, ['sheet: ply-12'], ...more);
    const laid = laidOut(found);
    const fixings = boardFixings(found.board, found.job.parts);
    return proposeRibs({ job: found.job, laid, fixings, holes: [], wantedHz, keep: bentCoarsely });
  };

  test('are the lightest that keep the limit, cut from the sheet of the board or another on the shelf', () => {
    const found = proposed(60);
    expect(found?.stiffness.firstModeHz.value).toBeGreaterThanOrEqual(60);
    expect(found?.text).toMatch(
      /^\{ rib-1: \{ edge: (bottom|left), distance: .* in, height: \d+ mm.* \} \}$/,
    );
  });

  test.each([40, 60, 75])(
    'written as they are told make the board as stiff as is told: %s Hz',
    (wantedHz) => {
      const found = proposed(wantedHz);
      if (!found) throw new Error('There is a rib that does.');
      const written = oneBoardOn('40 mm', ['sheet: ply-12', `ribs: ${found.text}`]);
      const laid = laidOut(written);
      const ribs = countedRibs(written.job, written.board, planRibs(written.job, laid, []));
      expect(ribs.length).toBeGreaterThan(0);
      const bent = bentCoarsely(stiffnessStep, {
        board: onFixings(laid, boardFixings(written.board, written.job.parts)),
        build: buildOf(written.job, laid, ribs),
        aim: { wantedHz },
      });
      expect(bent?.firstModeHz.value).toBeCloseTo(found.stiffness.firstModeHz.value, 6);
      expect(bent?.massKg).toBeCloseTo(found.stiffness.massKg, 9);
    },
  );

  // Screwed alone, of the sheet of the board, a rib of 15 mm takes no screw. Across the longer way of the board it helps most.
  test.each([
    [60, 20],
    [75, 25],
    [80, 30],
  ])('run where one helps most, no higher than it takes: for %s Hz %s mm', (wantedHz, heightMm) => {
    const screwed = [
      inParts('  glue-a: { kind: fixing, title: Glue, form: adhesive }\n', ''),
      inShop('  glue-a: { pieces: 1 }\n', ''),
    ];
    const found = proposed(wantedHz, '40 mm', ...screwed);
    expect(found?.text).toBe(`{ rib-1: { edge: bottom, distance: 5 7/8 in, height: ${heightMm} mm } }`);
    const hzOf = (mm: number) => {
      const rib = `ribs: { r: { edge: bottom, distance: 150 mm, height: ${mm} mm } }`;
      const { job, board, ...more } = oneBoardOn('40 mm', ['sheet: ply-12', rib], ...screwed);
      const laid = laidOut({ job, board, ...more });
      const ribs = countedRibs(job, board, planRibs(job, laid, []));
      const bent = bentCoarsely(stiffnessStep, {
        board: onFixings(laid, boardFixings(board, job.parts)),
        build: buildOf(job, laid, ribs),
        aim: { wantedHz },
      });
      return bent?.firstModeHz.value ?? Number.NaN;
    };
    expect(hzOf(heightMm)).toBeGreaterThanOrEqual(wantedHz);
    if (heightMm > 20) expect(hzOf(heightMm - 5)).toBeLessThan(wantedHz);
  });

  test('are none where no rib has room, or none does', () => {
    expect(proposed(60, '10 mm')).toBeNull();
    expect(proposed(5000)).toBeNull();
  });
});
