import { describe, expect, test } from 'vitest';
import { sheetFaults } from '../../../../lib/board/cut/sheet-faults.ts';
import { nestJobs } from '../../../../lib/board/cut/sheet-pieces.ts';
import { drawJob } from '../../../../lib/draw/draw-job.ts';
import { risers } from '../../../../lib/publish/sheets/board/risers.ts';
import { pickList } from '../../../../lib/publish/sheets/pick-list.ts';
import { shippedMetrics } from '../../../draw/lettering/shipped-metrics.ts';
import { inJob, partsFile, withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';

const onShelf = (text: string): Change => [
  'content/shop.yaml',
  '  large-60: { pieces: 2 }\n',
  `  large-60: { pieces: 2 }\n  ply-a: ${text}\n`,
];
/** A board of 500 x 300 mm in a shop that has sheets of 1500 x 1500 mm and off-cuts. */
const withShelf = (text: string, ...more: readonly Change[]) =>
  smallPlan(
    withBoard(),
    inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
    onShelf(text),
    ...more,
  );
const cutFrom = (plan: ReturnType<typeof smallPlan>['plan']) =>
  nestJobs([plan]).sheets.map(({ stock }) => stock.offCut ?? 'whole');

describe('off-cuts on the shelf', () => {
  const shelf =
    '{ pieces: 1, off-cuts: { small: { width: 200 mm, height: 900 mm }, good: { width: 520 mm, height: 400 mm } } }';

  test('are cut before a sheet is opened, the smallest that takes the board', () => {
    const { plan } = withShelf(shelf);
    expect(cutFrom(plan)).toEqual(['good']);
    // No whole sheet is to be fetched, so that none is short.
    expect(plan.pick.filter(({ part }) => part === 'ply-a')).toEqual([]);
  });

  test('are named on the pick list, the riser sheet and the drawing, with what is left of them', () => {
    const { plan } = withShelf(shelf);
    const sheet = JSON.stringify(pickList.model(plan));
    expect(sheet).toMatch(/Off-cuts of sheet, instead.*off-cut good of ply-a/);
    // 400 mm less 300 mm less a saw cut of 1/8 in: a strip of 96.8 mm is under the least of 100 mm that is kept.
    expect(sheet).not.toContain('to put back');
    expect(JSON.stringify(risers.model(plan))).toContain('cut from off-cut good of ply-a');
    const drawings = drawJob(plan, shippedMetrics).filter(({ id }) => id.startsWith('nest-'));
    expect(drawings.map(({ id }) => id)).toEqual(['nest-ply-a-off-cut-good-1']);
    expect(drawings[0]?.svg).toContain('Nesting: off-cut good of ply-a');
  });

  test('leave what is worth keeping on the list of what goes back', () => {
    const { plan } = withShelf(shelf.replace('height: 400 mm', 'height: 600 mm'));
    const sheet = JSON.stringify(pickList.model(plan));
    // 600 less 300 mm less the saw cut of 1/8 in are 296.8 mm.
    expect(sheet).toMatch(/Sheet left after cutting, to put back.*off-cut good of ply-a/);
    expect(sheet).toContain('11 5/8');
  });

  test('that are too small, used up or of another sheet leave the board to a whole sheet', () => {
    for (const text of [
      '{ pieces: 1, off-cuts: { a: { width: 299 mm, height: 2 m } } }',
      '{ pieces: 1, off-cuts: { a: { width: 900 mm, height: 900 mm, pieces: 0 } } }',
      '{ pieces: 1 }',
    ]) {
      const { plan } = withShelf(text);
      expect(cutFrom(plan)).toEqual(['whole']);
      expect(plan.pick.find(({ part }) => part === 'ply-a')).toMatchObject({ quantity: 1, short: 0 });
    }
  });

  test('keep the grain: an off-cut lies as it would in its sheet', () => {
    const grained = (grain: string) => [
      [partsFile, 'height: 1500 mm', `height: 1600 mm\n    grain: ${grain}`] as const,
      inJob('height: 300 mm } }', 'height: 300 mm }, grain: level }'),
    ];
    const long = '{ pieces: 1, off-cuts: { a: { width: 520 mm, height: 320 mm } } }';
    // Level means along the 500 mm of the board. Along the height of the off-cut there are 320 mm.
    expect(cutFrom(withShelf(long, ...grained('width')).plan)).toEqual(['a']);
    expect(cutFrom(withShelf(long, ...grained('height')).plan)).toEqual(['whole']);
  });

  test('add no finding that stops', () => {
    const stops = ({ remarks }: ReturnType<typeof smallPlan>) =>
      remarks.filter(({ level }) => level === 'stop').map(({ rule }) => rule);
    expect(stops(withShelf(shelf))).toEqual(stops(withShelf('{ pieces: 1 }')));
    const { plan } = withShelf('{ pieces: 0, off-cuts: { tiny: { width: 1 mm, height: 1 mm } } }');
    expect(plan.boards.flatMap((board) => sheetFaults(board, plan.rules))).toEqual([]);
  });
});
