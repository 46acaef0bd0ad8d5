import { describe, expect, test } from 'vitest';
import { boardItems } from '../../../lib/plan/board/board-items.ts';
import { drilling } from '../../../lib/plan/board/board-shape.ts';
import { mountingScrew } from '../../../lib/plan/board/screws/mounting-screw.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import type { Change } from '../../read/small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';
import { oneBoard } from './one-board.ts';

describe('the holes for the screws of parts', () => {
  const screws = addParts(
    'screw-6: { kind: fixing, title: S, form: wood-screw, length: 16 mm, clearance: 3.6 mm, pilot: 2 mm }',
    'screw-a: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 4.4 mm, pilot: 3 mm }',
    'screw-short: { kind: fixing, title: S, form: wood-screw, length: 8 mm, clearance: 4.4 mm, pilot: 3 mm }',
    'screw-narrow: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 4 mm, bears-on: 5 mm, pilot: 3 mm }',
    'screw-bare: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 5 mm }',
    'screw-odd: { kind: fixing, title: S, form: wood-screw, length: 20 mm, pilot: 3 mm }',
    'bolt-4: { kind: fixing, title: S, form: machine-screw, thread: M4, length: 20 mm, clearance: 4.2 mm, pilot: 3 mm }',
  );
  const { job } = oneBoard(undefined, screws);
  const into = { thicknessM: 0.018, freeM: 0.012 };
  const chosen = (
    holeM: number,
    through = into,
    stock: Record<string, number> = {},
    foot: { readonly footM?: number } = {},
  ) => {
    const shelf = Object.entries(stock).map(([id, pieces]) => [id, { pieces, 'off-cuts': {} }] as const);
    const shop = { ...job.shop, stock: Object.fromEntries(shelf) };
    return mountingScrew({ diameterM: holeM, ...foot }, { ...job, shop }, through)?.id ?? null;
  };

  test('are of the thickest wood screw that passes, with a pilot and a clearance that are known', () => {
    expect(chosen(0.0044)).toBe('screw-a');
    expect(chosen(0.0039)).toBe('screw-6');
    expect(chosen(0.006)).toBe('screw-a');
    expect(chosen(0.0035)).toBeNull();
  });

  test('are of one from the shelf before one to buy', () => {
    expect(chosen(0.0044, into, { 'screw-25': 50 })).toBe('screw-25');
    expect(chosen(0.0044, into, { 'screw-6': 50 })).toBe('screw-6');
  });

  test('are of the one that the job names, though another lies on the shelf, and of none that it does not pass', () => {
    const by = { ...into, screw: 'screw-6' };
    expect(chosen(0.006, by, { 'screw-a': 50 })).toBe('screw-6');
    expect(chosen(0.0035, by)).toBeNull();
  });

  // The house asks for a bite of 10 mm: a board of 18 mm gives it, and one of 8 mm does not, whatever the screw.
  test('are of one that stays in the board, or in what is free behind it, though another lies on the shelf', () => {
    const flat = { thicknessM: 0.018, freeM: 0 };
    expect(chosen(0.0044, flat, { 'screw-25': 50, 'screw-a': 50 })).toBe('screw-6');
    expect(chosen(0.0044, { ...flat, freeM: 0.002 }, { 'screw-a': 50 })).toBe('screw-a');
  });

  test('are of one that bites enough, though a shorter one lies on the shelf', () => {
    expect(chosen(0.006, into, { 'screw-short': 50 })).toBe('screw-a');
  });

  // 20 mm through a foot of 11 mm leave 9 mm, less than the bite of 10; through 4 mm, 16 mm, which stay in a board of 18.
  test('are of one that bites, and stays in the board, past the foot that it goes through', () => {
    expect(chosen(0.0044, into, {}, { footM: 0.011 })).toBe('screw-25');
    const flat = { thicknessM: 0.018, freeM: 0 };
    expect(chosen(0.0044, flat, { 'screw-a': 50 })).toBe('screw-6');
    expect(chosen(0.0044, flat, { 'screw-a': 50 }, { footM: 0.004 })).toBe('screw-a');
  });

  test('are of one whose head is wider than the hole', () => {
    expect(chosen(0.0052, into, { 'screw-narrow': 50 })).toBe('screw-a');
    expect(chosen(0.0044, into, { 'screw-narrow': 50 })).toBe('screw-narrow');
  });

  test('keep from a corner only where the sheet may split there, and from an edge always', () => {
    const holes = inParts(
      'kind: amplifier\n    title: Amplifier\n    ',
      'kind: amplifier\n    title: Amplifier\n    mounting-holes: [{ x: 5 mm, y: 5 mm, diameter: 5 mm }]\n    ',
    );
    const kept = (...more: readonly Change[]) => {
      const found = oneBoard(undefined, screws, holes, ...more);
      return drilling(found.board, found.job, boardItems(found.job, 'main', found.roles, new PlanBook()));
    };
    const { rules } = oneBoard().job;
    expect(kept()).toMatchObject({ toEdgeM: rules['hole-edge'].value, toCornerM: 0 });
    // A hole of 5 mm takes the screw with a clearance of 4.4 mm, which is drilled to its pilot.
    expect([...kept().drilledM.values()]).toEqual([0.003]);
    const split = inParts(
      'ply-12: { kind: board-sheet, title: Sheet, material: birch-plywood',
      'ply-12: { kind: board-sheet, title: Sheet, material: fibreboard',
    );
    expect(kept(split).toCornerM).toBe(rules['hole-corner'].value);
  });

  // 25 mm past a foot of 16 mm bite 9 mm, and the house asks for 10: only the screw of 32 mm bites there.
  test('are drilled each for its own screw, where two of one diameter go through feet of different heights', () => {
    const long = addParts(
      'screw-32: { kind: fixing, title: S, form: wood-screw, length: 32 mm, clearance: 4.4 mm, pilot: 3.5 mm }',
    );
    const { job: own, board, roles } = oneBoard(undefined, long);
    const [amp] = boardItems(own, 'main', roles, new PlanBook());
    if (!amp) throw new Error('The board has an amplifier.');
    const hole = { xM: 0.005, yM: 0.005, diameterM: 0.005 };
    const items = [
      { ...amp, mountingHoles: [{ ...hole, id: 'thin' }] },
      { ...amp, mountingHoles: [{ ...hole, id: 'thick', footM: 0.016 }] },
    ];
    const drilled = [
      ['thin', 0.003],
      ['thick', 0.0035],
    ];
    expect([...drilling(board, own, items).drilledM]).toEqual(drilled);
    expect([...drilling(board, own, items.toReversed()).drilledM]).toEqual(drilled.toReversed());
  });
});
