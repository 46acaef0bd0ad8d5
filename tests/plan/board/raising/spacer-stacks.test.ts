import { describe, expect, test } from 'vitest';
import { risers } from '../../../../lib/publish/sheets/board/risers.ts';
import { pickList } from '../../../../lib/publish/sheets/pick-list.ts';
import { inJob, partsFile, withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { byId, smallPlan } from '../../plan-small-shop.ts';

const onShelf = (text: string): Change => [
  'content/shop.yaml',
  '  large-60: { pieces: 2 }\n',
  `  large-60: { pieces: 2 }\n${text}`,
];
const fixings: Change = [
  partsFile,
  '  loom-a:',
  `  spacer-25: { kind: fixing, title: "Spacer, 25 mm, M6", form: spacer, thread: M6, length: 25 mm }
  spacer-m8: { kind: fixing, title: "Spacer, 27 mm, M8", form: spacer, thread: M8, length: 27 mm }
  washer-2: { kind: fixing, title: "Washer, 2 mm, M6", form: washer, thread: M6, thickness: 2 mm }
  washer-bare: { kind: fixing, title: "Washer, M6", form: washer, thread: M6 }
  pack-1: { kind: fixing, title: "Packing, 1 mm", form: packing, thickness: 1 mm }
  loom-a:`,
];
/** Two bolts M6 on spacers of 27 mm below a board of 18 mm sheet. */
const raised = (stock: string) =>
  smallPlan(
    withBoard(
      'a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a }',
      'a: { point: p1, fixing: bolt-a, spacer: 27 mm }, b: { point: p2, fixing: bolt-a, spacer: 27 mm }',
    ),
    inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
    fixings,
    onShelf(stock),
  );
const stacks = ({ plan }: ReturnType<typeof smallPlan>) =>
  byId(plan.boards, 'main').pieces.map(({ carries, layers, parts, makesM, packM }) => ({
    ...{ carries, layers, packM, makesMm: Math.round(makesM * 1e4) / 10 },
    parts: parts.map(({ part, count }) => `${count} ${part}`).join(' '),
  }));

describe('spacers that the shelf does not have in the height that is asked for', () => {
  test('are made up by washers of the same thread, and both are on the pick list', () => {
    const made = raised(
      '  spacer-25: { pieces: 9 }\n  washer-2: { pieces: 9 }\n  spacer-m8: { pieces: 9 }\n',
    );
    const each = { layers: 0, packM: 0, makesMm: 27, parts: '1 spacer-25 1 washer-2' };
    expect(stacks(made)).toEqual([
      { carries: 'a', ...each },
      { carries: 'b', ...each },
    ]);
    const rows = made.plan.pick.filter(({ part }) => /^(?:spacer|washer)/.test(part));
    expect(rows.map(({ part, quantity, short }) => [part, quantity, short])).toEqual([
      ['spacer-25', 2, 0],
      ['washer-2', 2, 0],
    ]);
    expect(JSON.stringify(risers.model(made.plan))).toContain('1 x Spacer, 25 mm, M6 + 1 x Washer, 2 mm, M6');
    expect(made.remarks.map(({ rule }) => rule)).not.toContain('height-not-in-stock');
  });

  test('are made up otherwise once one kind is used up', () => {
    const made = raised('  spacer-25: { pieces: 9 }\n  washer-2: { pieces: 1 }\n  pack-1: { pieces: 2 }\n');
    expect(stacks(made).map(({ parts }) => parts)).toEqual([
      '1 spacer-25 1 washer-2',
      '1 spacer-25 2 pack-1',
    ]);
  });

  test('are told where nothing makes them: washers without a thickness are no stock', () => {
    const made = raised('  spacer-25: { pieces: 9 }\n  washer-bare: { pieces: 99 }\n');
    expect(stacks(made)[0]).toMatchObject({ carries: 'a', layers: 1, packM: expect.closeTo(0.009, 9) });
    const told = made.remarks.filter(({ rule }) => rule === 'height-not-in-stock');
    expect(told.map(({ level, of }) => [level, of[0]])).toEqual([
      ['caution', 'a'],
      ['caution', 'b'],
    ]);
    expect(JSON.stringify(pickList.model(made.plan))).toContain('nothing in stock makes up');
  });
});
