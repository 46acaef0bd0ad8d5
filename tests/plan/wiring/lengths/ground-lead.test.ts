import { describe, expect, test } from 'vitest';
import { overWantedM } from '../../../../lib/board/layout/score/links.ts';
import { boardWires, layoutLinks } from '../../../../lib/plan/board/board-wires.ts';
import { wantedGround } from '../../../../lib/plan/wiring/lengths/ground-lead.ts';
import { inJob, vehicleFile, withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId } from '../../plan-small-shop.ts';
import { small } from '../small-wiring.ts';

/** The small job with its amplifier on a board, and its ground lead cut to its way in one of the runs. */
function grounded(...more: readonly Change[]) {
  const found = small(
    withBoard(),
    inJob('    in: boot\n    settings', '    on: main\n    settings'),
    inJob('to: body.cargo, length: 12 in }', 'to: body.cargo }'),
    ...more,
  );
  const [board] = found.job.boards;
  if (!board) throw new Error('The job has a board.');
  return { ...found, board, lead: byId(found.job.links, 'ground') };
}
/** A run of 200 mm in place of 3 m, and one of 300 mm in place of 3.5 m. */
const shortRuns: readonly Change[] = [
  [
    vehicleFile,
    'side: right, passes: [{ zone: sill, length: 3 m }]',
    'side: right, passes: [{ zone: sill, length: 200 mm }]',
  ],
  [
    vehicleFile,
    '[{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }]',
    '[{ zone: engine-bay, length: 100 mm }, { zone: sill, length: 200 mm }]',
  ],
];
const byTurnOn = inJob('links: [turn-on] }', 'links: [turn-on, ground] }');
const byFeed = inJob('links: [feed],', 'links: [feed, ground],');

describe('how long a ground lead is to be on its board', () => {
  test('is what the house leaves of its longest beside its run and the loop at the board', () => {
    const { job, board, lead } = grounded(byTurnOn, ...shortRuns);
    // 18 in and a loop of 3 in are house rules, common practice, no source; the run is 200 mm.
    expect(wantedGround(job, board, lead)?.lengthM).toBeCloseTo(0.4572 - 0.2 - 0.0762, 9);
    expect(wantedGround(job, board, byId(job.links, 'feed'))).toBeNull();
    expect(wantedGround(job, { ...board, id: 'other' }, lead)).toBeNull();
  });

  test('is nothing where the rest of the lead is too long wherever on its board it begins', () => {
    const { job, board, lead } = grounded(byTurnOn);
    expect(wantedGround(job, board, lead)).toBeNull();
  });

  test('tells by how much the lead is longer than the house has it, as it is cut', () => {
    const { job, board, lead, settled } = grounded(byFeed, ...shortRuns);
    const wanted = wantedGround(job, board, lead);
    const exit = settled.routed[0]?.exits.find(({ wire }) => wire === 'ground');
    const { lengthM, parts } = settled.sizing.lengths('ground');
    const { board: boardM = 0, 'board to rim': rimM = 0 } = Object.fromEntries(parts);
    if (!wanted || !exit) throw new Error('The lead leaves the board.');
    expect(rimM).toBeGreaterThan(0);
    expect(overWantedM(boardM, exit, wanted)).toBeCloseTo(lengthM - job.rules['ground-lead'].value, 9);
  });

  test('is asked of the wires that places are searched for by, but of none that is written', () => {
    const links = (...more: readonly Change[]) => {
      const { job, board, circuit } = grounded(...shortRuns, ...more);
      return layoutLinks(job, board, boardWires(job, board, circuit.roles), () => undefined);
    };
    expect(
      links(byFeed)
        .filter(({ wanted }) => wanted)
        .map(({ id }) => id),
    ).toEqual(['ground']);
    const written = inJob('to: body.cargo }', 'to: body.cargo, length: 2 ft }');
    expect(links(written).filter(({ wanted }) => wanted)).toEqual([]);
  });
});
