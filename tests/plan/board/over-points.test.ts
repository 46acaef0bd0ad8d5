import { describe, expect, test } from 'vitest';
import { boardOverPoints } from '../../../lib/plan/board/over-points.ts';
import { withBoard } from '../../read/problem-case.ts';
import { smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { addParts, inShop, inVehicle } from '../shop-changes.ts';

/** What is found with two more points above the two of the space, and something that stands out. */
const over = (obstacle: string, tallestM = 0.06) => {
  const job = jobOf(
    smallShop(
      withBoard('fixings:', 'at: { x: 0 mm, y: 0 mm }\n    fixings:'),
      addParts(
        'stand-12: { kind: fixing, title: S, form: spacer, thread: M6, length: 12 mm }',
        'bolt-b: { kind: fixing, title: B, form: bolt, thread: M6, length: 60 mm, clearance: 6.6 mm }',
      ),
      inShop('stock:\n', 'stock:\n  stand-12: { pieces: 8 }\n'),
      inVehicle(
        '    sound-points:\n      p1:',
        `    obstacles:\n      rib: { what: rib, ${obstacle} }\n    sound-points:\n      p3: { x: 100 mm, y: 400 mm, stud: M6, what: rivet nut, behind: nothing }\n      p4: { x: 500 mm, y: 400 mm, stud: M6, what: rivet nut, behind: nothing }\n      p1:`,
      ),
    ),
  );
  const [board] = job.boards;
  return board ? boardOverPoints(job, board, tallestM) : null;
};

const mm = (lengthM: number | undefined) => Math.round((lengthM ?? 0) * 10_000) / 10;
const across = 'x: 0 mm, y: 200 mm, width: 800 mm, height: 20 mm';

// House rules, common practice, no source: a good web of 25 mm beside the rim of a hole of 6.6 mm, so 28.3 mm from its
// middle to the edge, out to the next eighth of an inch; 6 mm of room to what stands out.
describe('a place and a size of a board over the points of its space', () => {
  test('has a good web beside each, on the spacer that the shelf makes over what stands out', () => {
    const found = over(`${across}, stands-out: 5 mm`);
    expect(found?.points.toSorted()).toEqual(['p1', 'p2', 'p3', 'p4']);
    expect([found?.xM, found?.yM, found?.widthM, found?.heightM].map(mm)).toEqual([19, 19, 511.2, 409.6]);
    expect(found?.spacerM).toBe(0.012);
  });

  test('leaves out the point that something stands before, which no spacer lifts it over', () => {
    const found = over('x: 515 mm, y: 380 mm, width: 50 mm, height: 40 mm, stands-out: 150 mm');
    expect(found?.points.toSorted()).toEqual(['p1', 'p2', 'p3']);
    expect(found?.spacerM).toBe(0);
  });

  test('is none where what stands out parts the points, or what stands on the board leaves no depth for a spacer', () => {
    expect(over(`${across}, stands-out: 150 mm`)).toBeNull();
    expect(over(`${across}, stands-out: 5 mm`, 0.175)).toBeNull();
  });
});
