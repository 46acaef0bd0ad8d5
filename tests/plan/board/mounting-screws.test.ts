import { describe, expect, test } from 'vitest';
import { boardItems } from '../../../lib/plan/board/board-items.ts';
import { drilling, mountingScrew } from '../../../lib/plan/board/board-shape.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import type { Change } from '../../read/small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';
import { oneBoard } from './one-board.ts';

describe('the holes for the screws of parts', () => {
  const screws = addParts(
    'screw-6: { kind: fixing, title: S, form: wood-screw, length: 16 mm, clearance: 3.6 mm, pilot: 2 mm }',
    'screw-a: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 4.4 mm, pilot: 3 mm }',
    'screw-bare: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 5 mm }',
    'screw-odd: { kind: fixing, title: S, form: wood-screw, length: 20 mm, pilot: 3 mm }',
    'bolt-4: { kind: fixing, title: S, form: machine-screw, thread: M4, length: 20 mm, clearance: 4.2 mm, pilot: 3 mm }',
  );
  const { parts } = oneBoard(undefined, screws).job;

  test('are of the thickest wood screw that passes, with a pilot and a clearance that are known', () => {
    expect(mountingScrew(0.0044, parts)?.id).toBe('screw-25');
    expect(mountingScrew(0.0043, parts)?.id).toBe('screw-6');
    expect(mountingScrew(0.006, parts)?.id).toBe('screw-25');
    expect(mountingScrew(0.0035, parts)).toBeNull();
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
    expect([...kept().drilledM]).toEqual([[0.005, 0.003]]);
    const split = inParts(
      'ply-12: { kind: board-sheet, title: Sheet, material: birch-plywood',
      'ply-12: { kind: board-sheet, title: Sheet, material: fibreboard',
    );
    expect(kept(split).toCornerM).toBe(rules['hole-corner'].value);
  });
});
