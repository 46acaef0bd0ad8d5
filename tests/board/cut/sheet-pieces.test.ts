import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetFaults } from '../../../lib/board/cut/sheet-faults.ts';
import { type NestedJob, nestJobs } from '../../../lib/board/cut/sheet-pieces.ts';
import type { PlanBoard } from '../../../lib/model/plan/index.ts';
import { boardOf } from '../../export/board-of.ts';
import { inWords } from '../in-words.ts';

const sheet = { sheet: 'ply', sheetWidthM: 1.22, sheetHeightM: 2.44 } as const;
const plate = (widthMm: number, heightMm: number, change: Partial<PlanBoard> = {}): PlanBoard =>
  boardOf(
    { rectangle: { width: `${widthMm} mm`, height: `${heightMm} mm` } },
    { ...sheet, pieces: [], holes: [], grain: null, sheetGrain: null, ...change },
  );
const job = (id: string, ...boards: PlanBoard[]): NestedJob => ({ job: { id }, boards, rules: [] });
const laid = (board: PlanBoard) => nestJobs([job('one', board)]).sheets[0]?.pieces[0];

describe('the pieces of jobs on stock sheets', () => {
  it('of several jobs share a sheet, and keep the name of their job', () => {
    const { sheets, pieces } = nestJobs([job('one', plate(600, 400)), job('two', plate(500, 300))]);
    expect(sheets).toHaveLength(1);
    expect(pieces.map(({ id, title }) => [id, title])).toEqual([
      ['one.main-board', 'one: Main board'],
      ['two.main-board', 'two: Main board'],
    ]);
    expect(sheets[0]?.used).toBeCloseTo((0.6 * 0.4 + 0.5 * 0.3) / (1.22 * 2.44), 9);
  });

  it('lie so that the grain runs as each board asks, on a sheet whose grain runs along its longer side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 1100 }), fc.integer({ min: 100, max: 1100 }), (w, h) => {
        const sheetGrain = 'height';
        expect(laid(plate(w, h, { sheetGrain, grain: 'level' }))?.turned).toBe(false);
        expect(laid(plate(w, h, { sheetGrain, grain: 'upright' }))?.turned).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it('are cut by the kerf that the plan was made by', () => {
    const rules = [{ name: 'kerf', value: 0.01 }];
    const { sheets } = nestJobs([{ ...job('one', plate(600, 400), plate(600, 400, { id: 'b' })), rules }]);
    const [a, b] = sheets[0]?.pieces ?? [];
    if (!a || !b) throw new Error('Two boards go on one sheet.');
    const gapM = Math.max(
      b.xM - a.xM - a.widthM,
      b.yM - a.yM - a.heightM,
      a.xM - b.xM - b.widthM,
      a.yM - b.yM - b.heightM,
    );
    expect(gapM).toBeGreaterThanOrEqual(0.01 - 1e-9);
  });

  it('that come out of no sheet are told, with both sizes; turned by 90 degrees is tried first', () => {
    expect(sheetFaults(plate(1100, 2300), [])).toEqual([]);
    const [fault] = sheetFaults(plate(1300, 1300), []);
    // 1220 less two trimmed edges of 10 mm is 1200 mm: 47.244 in, which is told as less.
    expect(inWords(fault?.message)).toContain('1300.0 mm (51 3/16 in) by 1300.0 mm (51 3/16 in)');
    expect(inWords(fault?.message)).toContain('1200.0 mm (47 7/32 in) by 2420.0 mm (95 1/4 in)');
    const held = plate(1100, 2300, { sheetGrain: 'height', grain: 'level' });
    expect(inWords(sheetFaults(held, [])[0]?.message)).toContain('with its grain as asked');
  });
});
