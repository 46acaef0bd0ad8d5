import { describe, expect, test } from 'vitest';
import { countedRibs, planRibs, traceRibs } from '../../../../lib/plan/board/ribs/plan-ribs.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import type { Change } from '../../../read/small-shop.ts';
import { laidOut, oneBoard } from '../one-board.ts';

describe('the ribs of a board', () => {
  const ribbed = (rib: string, ...more: readonly Change[]) => {
    const found = oneBoard(['sheet: ply-12', `ribs: { ${rib} }`], ...more);
    const laid = laidOut(found);
    const book = new PlanBook();
    const planned = planRibs(found.job, laid, []);
    traceRibs('main', planned, book);
    return { ...found, laid, planned, rib: planned.ribs[0], traces: book.traces() };
  };

  test('run where the job starts them, for so long; from its edge for as far as they are free', () => {
    const at = (more: string) => ribbed(`r1: { edge: bottom, distance: 150 mm, height: 20 mm${more} }`).rib;
    expect(at('')).toMatchObject({ from: { xM: expect.closeTo(0.006, 6) }, ends: 'computed' });
    expect(at(', start: 100 mm, length: 200 mm')).toMatchObject({
      ...{ from: { xM: expect.closeTo(0.1, 9), yM: expect.closeTo(0.15, 9) }, ends: 'given' },
      ...{ to: { xM: expect.closeTo(0.3, 9) }, lengthM: expect.closeTo(0.2, 9) },
    });
    expect(
      ribbed('r1: { from: [50 mm, 150 mm], to: [450 mm, 150 mm], height: 20 mm }').rib?.lengthM,
    ).toBeCloseTo(0.4, 9);
  });

  test('weigh length by width by height by density, and say so', () => {
    const { rib, traces } = ribbed('r1: { from: [50 mm, 150 mm], to: [450 mm, 150 mm], height: 20 mm }');
    expect(rib?.massKg).toBeCloseTo(0.4 * 0.012 * 0.02 * 680, 9);
    expect(traces['boards.main.ribs.r1.massKg']).toMatchObject({ rule: 'rib-mass', unit: 'kg' });
    expect(traces['boards.main.ribs.r1.massKg']?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['length', expect.closeTo(0.4, 9)],
      ['width', 0.012],
      ['height', 0.02],
      ['sheet', 'ply-12'],
    ]);
  });

  test('have screws, and glue where they are glued', () => {
    const line = 'r1: { edge: bottom, distance: 150 mm, height: 20 mm';
    expect(ribbed(`${line} }`).rib).toMatchObject({
      screw: { part: 'screw-25' },
      glue: null,
      joint: 'screwed',
    });
    expect(ribbed(`${line}, joint: glued }`).rib).toMatchObject({ glue: 'glue-a', joint: 'glued' });
    const hole = { n: 1, xM: 0.25, yM: 0.15, diameterM: 0.9, depthM: 0.01, purpose: 'mounting' as const };
    const { job, laid } = ribbed(`${line} }`);
    const drilled = planRibs(job, laid, [{ ...hole, of: 'amp', pilotFor: null, behind: null }]);
    expect(drilled.ribs.map((one) => one.screw)).toEqual([null]);
    // 13 mm of bite do not go into 14 mm with a skin.
    expect(ribbed('r1: { edge: bottom, distance: 150 mm, height: 14 mm }').rib?.screw).toBeNull();
  });

  test('count in its stiffness as they can be built, one that hits its panel not', () => {
    const counted = (height: string) => {
      const { job, board, planned } = ribbed(`r1: { edge: bottom, distance: 150 mm, height: ${height} }`);
      return countedRibs(job, board, planned).map(({ id }) => id);
    };
    expect(counted('20 mm')).toEqual(['r1']);
    expect(counted('26 mm')).toEqual([]);
  });
});
