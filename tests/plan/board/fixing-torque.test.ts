import { describe, expect, test } from 'vitest';
import { placement } from '../../../lib/publish/sheets/board/placement.ts';
import { partsFile, vehicleFile } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { onFourPoints, stocked } from '../power/four-points.ts';
import { addParts, inShop } from '../shop-changes.ts';

/** The board of the small shop of a sheet of 12 mm on four points and bolts M6, without spacers. */
function fixed(material: string, figures: string, ...more: readonly Change[]) {
  const { plan } = smallPlan(
    ...stocked({ id: 'sheet-12', mm: 12, pieces: 1, material }),
    ...onFourPoints(['sheet: sheet-12'], '0 mm'),
    [
      partsFile,
      'thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 400 kg',
      `thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 400 kg${figures}`,
    ],
    ...more,
  );
  return { plan, board: byId(plan.boards, 'main') };
}

describe('each fixing is told its torque', () => {
  test('in plywood what is borne below its washer, with its trace, on the sheet and in the order of work', () => {
    const { plan, board } = fixed('birch-plywood', ', bears-on: 18 mm');
    // By hand: 0.2 x 9 MPa x pi/4 (18^2 - 6.4^2) mm2 x 6 mm.
    expect(board.fixings[0]?.torqueNm).toBeCloseTo(2.401, 3);
    expect(board.fixings[0]?.torqueBy).toBe('board');
    expect(plan.traces['boards.main.fixings.a.torqueNm']).toMatchObject({
      rule: 'fixing-torque',
      unit: 'N m',
    });
    expect(JSON.stringify(placement.model(plan))).toContain('2.4 N m');
    expect(plan.steps.find(({ id }) => id === 'board-in-main')?.text).toContain('a, b, c, d to 2.4 N m');
  });

  test('over a bush of rubber none, over a spacer of the same height one', () => {
    const over = (form: string, ...more: readonly Change[]) =>
      smallPlan(
        ...stocked({ id: 'sheet-12', mm: 12, pieces: 1 }),
        ...onFourPoints(['sheet: sheet-12'], '10 mm'),
        addParts(
          `stand-10: { kind: fixing, title: Stand, form: ${form}, thread: M6, length: 10 mm, bears-on: 20 mm }`,
        ),
        inShop('  large-60:', '  stand-10: { pieces: 8 }\n  large-60:'),
        ...more,
      ).plan;
    const [hard, soft] = [over('spacer'), over('rubber-bush')];
    for (const plan of [hard, soft])
      expect(plan.pick.find(({ part }) => part === 'stand-10')?.quantity).toBe(4);
    expect(byId(hard.boards, 'main').fixings[0]?.torqueNm).toBeGreaterThan(0);
    expect(byId(soft.boards, 'main').fixings[0]).toMatchObject({ torqueNm: null, torqueBy: null });
    expect(soft.steps.find(({ id }) => id === 'board-in-main')?.text).not.toContain('N m');
    // What keeps the bolts instead is fetched: of the catalogue, or to be ordered.
    const locks = ({ pick }: typeof soft) =>
      pick.filter(({ part }) => part.includes('lock')).map(({ part }) => part);
    expect(locks(hard)).toEqual([]);
    expect(locks(soft)).toEqual(['thread-lock']);
    const bottle = addParts('lock-bottle: { kind: fixing, title: Thread lock, form: thread-lock }');
    expect(locks(over('rubber-bush', bottle))).toEqual(['lock-bottle']);
  });

  test('in metal that of the bolt', () => {
    expect(fixed('aluminium', '').board.fixings[0]).toMatchObject({ torqueNm: 10, torqueBy: 'bolt' });
  });

  test('of a ground bolt: 20 N m in a rivet nut M8, 25 N m where it is welded', () => {
    const torqueOf = (...changes: readonly Change[]) =>
      smallPlan(...changes)
        .plan.wires.flatMap(({ ends }) => ends)
        .find(({ terminal }) => terminal === 'body.engine')?.torqueNm;
    expect(torqueOf()).toBe(20);
    expect(
      torqueOf([
        vehicleFile,
        'engine: { zone: engine-bay, stud: M8',
        'engine: { zone: engine-bay, insert: welded, stud: M8',
      ]),
    ).toBe(25);
  });
});
