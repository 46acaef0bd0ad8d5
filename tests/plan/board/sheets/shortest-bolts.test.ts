import { describe, expect, test } from 'vitest';
import type { Proposal } from '../../../../lib/model/content/proposal.ts';
import type { Job } from '../../../../lib/model/content/resolved-job.ts';
import { isQuantity } from '../../../../lib/model/quantity/quantity.ts';
import { withShortestBolts } from '../../../../lib/plan/board/sheets/shortest-bolts.ts';
import { withBoard } from '../../../read/problem-case.ts';
import { smallShop } from '../../../read/small-shop.ts';
import { jobOf } from '../../plan-small-shop.ts';
import { addParts, inVehicle } from '../../shop-changes.ts';

const bolt = (mm: number) =>
  `bolt-${mm}: { kind: fixing, title: "M6 bolt", form: bolt, thread: M6, length: ${mm} mm, clearance: 6.4 mm, holds: 40 kg }`;

/** A board on bolts of 60 mm at two points, of a sheet that is open, and the thickness that was chosen. */
function chosen(thicknessMm: number, more: Partial<Job> = {}, freeDepth = '60 mm') {
  const job = jobOf(
    smallShop(
      addParts(...[24, 28, 40, 60].map(bolt)),
      withBoard(
        '    sheet: ply-a\n    outline: { rectangle: { width: 500 mm, height: 300 mm } }\n    fixings: { a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }',
        '    outline: { rectangle: { width: 500 mm, height: 300 mm } }\n    fixings: { a: { point: p1, fixing: bolt-60, spacer: 10 mm }, b: { point: p2, fixing: bolt-60, spacer: 10 mm } }',
      ),
      inVehicle('p1: { x: 50 mm,', `p1: { free-depth: ${freeDepth}, x: 50 mm,`),
    ),
  );
  const thickness = thicknessMm / 1000;
  if (!isQuantity<'m'>(thickness)) throw new Error(`${thicknessMm} mm is no length.`);
  const boards = job.boards.map((board) => ({ ...board, sheet: { ...board.sheet, thickness } }));
  const made = withShortestBolts({ ...job, boards, ...more });
  const at = (name: string) => made.boards[0]?.given.fixings[name]?.fixing;
  return { made, bolts: [at('a'), at('b')] };
}

const proposed: Proposal = {
  path: ['boards', 'main', 'fixings', 'a'],
  ...{ rule: 'fixings', reason: 'sound', value: { point: 'p1', fixing: 'bolt-60' } },
};

// Spacer of 10 mm, and 6 mm of thread for M6 (common practice, no source): sheet and 16 mm.
describe('a proposed bolt of a board', () => {
  test('is the shortest that passes the sheet that was chosen, and is proposed as that', () => {
    const { made, bolts } = chosen(12, { proposals: [proposed] });
    expect(bolts).toEqual(['bolt-28', 'bolt-60']);
    expect(made.proposals).toEqual([{ ...proposed, value: { point: 'p1', fixing: 'bolt-28' } }]);
    expect(chosen(12.1, { proposals: [proposed] }).bolts[0]).toBe('bolt-a');
    expect(chosen(18, { proposals: [proposed] }).bolts[0]).toBe('bolt-40');
  });

  test('stays where none does, where it was written, and where a released board has it', () => {
    expect(chosen(50, { proposals: [proposed] }).bolts[0]).toBe('bolt-60');
    expect(chosen(12, { proposals: [proposed] }, '5 mm').bolts[0]).toBe('bolt-60');
    expect(chosen(12).bolts[0]).toBe('bolt-60');
    expect(chosen(12, { proposals: [{ ...proposed, since: 'A' }] }).bolts[0]).toBe('bolt-60');
  });
});
