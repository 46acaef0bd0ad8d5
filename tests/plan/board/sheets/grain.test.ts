import { describe, expect, test } from 'vitest';
import { nestJobs } from '../../../../lib/board/cut/sheet-pieces.ts';
import { drawJob } from '../../../../lib/draw/draw-job.ts';
import { cutAndDrill } from '../../../../lib/publish/sheets/board/cut-and-drill.ts';
import { shippedMetrics } from '../../../draw/lettering/shipped-metrics.ts';
import { inJob, partsFile, vehicleFile } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';
import { onFourPoints, stocked } from '../../power/four-points.ts';

/** A board of 500 x 300 mm of plywood of 4 mm, beside a subwoofer: far too soft, so that its grain matters. */
function thin(figures: string, shelf: string, ...more: readonly Change[]) {
  const sheet = `  thin: { kind: board-sheet, title: Thin, material: birch-plywood, thickness: 4 mm, width: 1500 mm, height: 1600 mm, density: 680 kg/m3, ${figures} }\n`;
  const { plan, remarks } = smallPlan(
    ...stocked({ id: 'ply-12', mm: 12 }),
    [partsFile, '  ply-a:\n', `${sheet}  ply-a:\n`],
    ['content/shop.yaml', '  large-60: { pieces: 2 }\n', `  large-60: { pieces: 2 }\n  thin: ${shelf}\n`],
    ...onFourPoints(['sheet: thin']),
    [vehicleFile, '    depth: 200 mm', '    depth: 200 mm\n    beside-subwoofer: true'],
    ...more,
  );
  const board = byId(plan.boards, 'main');
  return {
    plan,
    board,
    hz: board.firstModeHz ?? 0,
    soft: remarks.find(({ rule }) => rule === 'first-mode-low'),
  };
}

const both = 'modulus: 12 GPa, modulus-across: 6 GPa, shear-modulus: 0.7 GPa';
const along = `grain: height, ${both}`;
const written = (grain: string): Change => inJob('height: 300 mm } }', `height: 300 mm }, grain: ${grain} }`);

describe('the grain of a plywood board', () => {
  test('left open, is asked for the stiffer way where the weaker is too soft, and the sheets keep and show it', () => {
    const { plan, board, hz } = thin(along, '{ pieces: 1 }');
    expect(board).toMatchObject({ grain: 'level', grainChosen: 'computed' });
    expect(hz).toBe(thin(along, '{ pieces: 1 }', written('level')).hz);
    expect(hz).toBeGreaterThan(thin(along, '{ pieces: 1 }', written('upright')).hz);
    expect(plan.traces['boards.main.grain']).toMatchObject({ value: 'level', rule: 'board-grain' });
    // The grain runs along the height of the sheet, 1600 mm, which lies along the drawing: the board lies as written.
    expect(nestJobs([plan]).sheets[0]?.pieces.find(({ id }) => id === 'main')?.turned).toBe(false);
    const drawn = drawJob(plan, shippedMetrics).find(({ id }) => id === 'cut-main');
    expect(drawn?.svg).toContain('GRAIN');
    expect(JSON.stringify(cutAndDrill.model(plan))).toContain('left to right');
  });

  test('written, is kept and drawn, and counts as it is', () => {
    const { plan, board } = thin(along, '{ pieces: 1 }', written('upright'));
    expect(board).toMatchObject({ grain: 'upright', grainChosen: 'given' });
    expect(nestJobs([plan]).sheets[0]?.pieces.find(({ id }) => id === 'main')?.turned).toBe(true);
  });

  test('that the sheet does not tell counts as the weaker one, is not drawn, and lies either way', () => {
    const { plan, board, hz } = thin(both, '{ pieces: 1 }');
    expect(board).toMatchObject({ grain: null, grainChosen: null });
    expect(hz).toBe(thin(along, '{ pieces: 1 }', written('upright')).hz);
    expect(thin(both, '{ pieces: 1 }', written('level')).hz).toBe(hz);
    expect(drawJob(plan, shippedMetrics).find(({ id }) => id === 'cut-main')?.svg).not.toContain('GRAIN');
  });

  test('takes an off-cut only where the grain runs as the plan relies on', () => {
    const offCut = (width: number, height: number) =>
      `{ pieces: 1, off-cuts: { a: { width: ${width} mm, height: ${height} mm } } }`;
    const cutFrom = (shelf: string) =>
      nestJobs([thin(along, shelf).plan]).sheets.find(({ pieces }) => pieces.some(({ id }) => id === 'main'))
        ?.stock.offCut ?? 'whole';
    expect(cutFrom(offCut(320, 520))).toBe('a');
    expect(cutFrom(offCut(520, 320))).toBe('whole');
  });

  test('with one modulus alone counts by the house rule, and the finding says what was assumed', () => {
    const { hz, soft } = thin('grain: height, modulus: 12 GPa, shear-modulus: 0.7 GPa', '{ pieces: 1 }');
    expect(soft?.message).toMatch(/assumed: its modulus across the grain/);
    expect(thin(along, '{ pieces: 1 }').soft?.message).not.toContain('assumed');
    // 0.63 of 12 GPa are 7.56 GPa, more than 6.
    expect(hz).toBeGreaterThan(thin(along, '{ pieces: 1 }').hz);
  });
});
