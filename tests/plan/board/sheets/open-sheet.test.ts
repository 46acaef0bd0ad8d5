import { describe, expect, test } from 'vitest';
import type { JoinedRemark } from '../../../../lib/model/remark.ts';
import { judge } from '../../../../lib/rules/index.ts';
import { partsFile, vehicleFile } from '../../../read/problem-case.ts';
import { type Change, smallShop } from '../../../read/small-shop.ts';
import { planKept } from '../../plan-kept.ts';
import { byId, jobOf, smallPlan } from '../../plan-small-shop.ts';
import { onFourPoints, type ShopSheet, stocked } from '../../power/four-points.ts';

function planned(sheets: readonly ShopSheet[], lines: readonly string[], ...more: readonly Change[]) {
  const made = smallPlan(...stocked(...sheets), ...onFourPoints(lines), ...more);
  return { ...made, board: byId(made.plan.boards, 'main') };
}
const told = (remarks: readonly JoinedRemark[], rule: string) => remarks.find((one) => one.rule === rule);
/** 6 mm is too soft for the amplifier of 1 kg in the middle; see the first test of each. */
const shelf: readonly ShopSheet[] = [
  { id: 'ply-21', mm: 21, pieces: 1 },
  { id: 'ply-6', mm: 6, pieces: 1 },
  { id: 'ply-12', mm: 12, pieces: 1 },
  { id: 'ply-10', mm: 10 },
];

/** Bolts of 70 and 80 mm beside those of 60 mm; of the shorter ones too few are on the shelf. */
const longerBolts: readonly Change[] = [
  [
    partsFile,
    '  bolt-60:',
    `${[70, 80].map((mm) => `  bolt-${mm}: { kind: fixing, title: Bolt, form: bolt, thread: M6, length: ${mm} mm, clearance: 6.4 mm, holds: 400 kg }\n`).join('')}  bolt-60:`,
  ],
  ['content/shop.yaml', '  screw-25: {', '  bolt-70: { pieces: 3 }\n  bolt-80: { pieces: 4 }\n  screw-25: {'],
];

describe('a board that leaves its sheet open', () => {
  const { plan, board, remarks } = planned(shelf, ['title: Main']);

  test('is cut from the lightest in stock that is stiff enough', () => {
    expect(board).toMatchObject({ sheet: 'ply-12', sheetChosen: 'computed', thicknessM: 0.012 });
    expect(board.firstModeHz).toBeGreaterThan(30);
    expect(planned(shelf, ['sheet: ply-6']).board.firstModeHz).toBeLessThan(30);
    expect(told(remarks, 'no-sheet-for-board')).toBeUndefined();
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'ply-12', quantity: 1, short: 0 }));
  });

  test('is planned as if the job had written that sheet', () => {
    const written = planned(shelf, ['title: Main', 'sheet: ply-12']);
    expect({ ...board, sheetChosen: 'given' }).toEqual(written.board);
    expect(plan.wires).toEqual(written.plan.wires);
    expect(plan.steps).toEqual(written.plan.steps);
  });

  test('says what each sheet came to', () => {
    const trace = plan.traces['boards.main.sheet'];
    expect(trace).toMatchObject({ origin: 'computed', value: 'ply-12', rule: 'board-sheet', mark: 'cp' });
    const said = Object.fromEntries(trace?.inputs.map(({ name, value }) => [name, value]) ?? []);
    expect(said['ply-6']).toMatch(/^first mode 2\d Hz$/);
    expect(said['ply-12']).toMatch(/^first mode \d+ Hz$/);
    expect(Object.keys(said)).not.toContain('ply-10');
  });

  test('passes over a sheet that it does not come out of, and one that swells in the wet', () => {
    const narrow = shelf.map((one) => (one.id === 'ply-12' ? { ...one, width: 250 } : one));
    expect(planned(narrow, ['title: Main']).board.sheet).toBe('ply-21');
    const swells = shelf.map((one) => (one.id === 'ply-12' ? { ...one, material: 'fibreboard' } : one));
    expect(planned(swells, ['title: Main']).board.sheet).toBe('ply-12');
    const wet: Change = [vehicleFile, '    depth: 200 mm', '    depth: 200 mm\n    wet: true'];
    expect(planned(swells, ['title: Main'], wet).board.sheet).toBe('ply-21');
  });

  test('may be cut from an off-cut that is large enough, where no whole sheet is left', () => {
    const offCut = (widthMm: number): Change => [
      'content/shop.yaml',
      'ply-12: { pieces: 1 }',
      `ply-12: { pieces: 0, off-cuts: { c1: { width: ${widthMm} mm, height: 600 mm } } }`,
    ];
    expect(planned(shelf, ['title: Main'], offCut(400)).board.sheet).toBe('ply-12');
    expect(planned(shelf, ['title: Main'], offCut(250)).board.sheet).toBe('ply-21');
  });

  test('counts the ribs that it has', () => {
    const beside: Change = [
      vehicleFile,
      '    depth: 200 mm',
      '    depth: 200 mm\n    beside-subwoofer: true',
    ];
    expect(planned(shelf, ['title: Main'], beside).board.sheet).toBe('ply-21');
    const rib =
      'ribs: { r1: { edge: bottom, distance: 150 mm, height: 18 mm, width: 100 mm, sheet: ply-18 } }';
    const ribbed = planned([...shelf, { id: 'ply-18', mm: 18 }], ['title: Main', rib], beside).board;
    expect(ribbed.sheet).toBe('ply-12');
    expect(ribbed.firstModeHz).toBeGreaterThan(80);
  });
});

describe('a board that no sheet in stock does for', () => {
  test('stops the job, says what each lacks, and is planned all the same', () => {
    const { board, remarks, plan } = planned([{ id: 'ply-6', mm: 6, pieces: 1 }], ['title: Main']);
    expect(told(remarks, 'no-sheet-for-board')).toMatchObject({
      level: 'stop',
      of: ['main'],
      message: expect.stringMatching(/ply-6 .*2\d Hz/),
    });
    expect(board.sheet).toBe('ply-6');
    expect(plan.wires.length).toBeGreaterThan(0);
    expect(plan.steps.length).toBeGreaterThan(0);
  });

  test('because its bolts of 60 mm do not reach through spacers of 25 mm and 40 mm of sheet', () => {
    const { remarks } = planned([{ id: 'ply-40', mm: 40, pieces: 1 }], ['title: Main']);
    expect(told(remarks, 'no-sheet-for-board')?.message).toMatch(
      /ply-40 would, but leaves a and b .* too little thread behind it/,
    );
  });

  test('for its bolts alone: is planned with the sheet that it would get with others, and one finding names the bolt to take', () => {
    const job = jobOf(
      smallShop(...stocked(...shelf), ...longerBolts, ...onFourPoints(['title: Main'], '50 mm')),
    );
    const { plan, remarks } = planKept(job);
    expect(byId(plan.boards, 'main').sheet).toBe('ply-12');
    const stops = judge(job, plan, remarks).filter(({ rule }) => /^(fixing|no-sheet|first-mode)/.test(rule));
    expect(stops.map(({ rule, level }) => `${level} ${rule}`)).toEqual(['stop fixing-too-short']);
    const [stop] = stops;
    expect(stop?.related).toEqual(['a', 'b', 'c', 'd', 'p1', 'p2', 'p3', 'p4', 'main']);
    expect(stop?.message).toMatch(
      /the fixings a, b, c and d of main, bolt-60 60 mm .* do not reach p1, p2, p3 and p4 through 12 mm .* of the sheet ply-12 and 50 mm .* of spacer/,
    );
    expect(stop?.remedy).toMatch(/^write fixing: bolt-80 \(4 in stock\) for a, b, c and d,/);
    expect(stop?.follows?.map(({ rule }) => rule)).toEqual(['no-sheet-for-board']);
  });

  test('for more than its bolts: a finding of its own beside theirs', () => {
    const job = jobOf(
      smallShop(...stocked({ id: 'ply-6', mm: 6, pieces: 1 }), ...onFourPoints(['title: Main'], '56 mm')),
    );
    const { plan, remarks } = planKept(job);
    const tops = judge(job, plan, remarks).map(({ rule }) => rule);
    expect(tops).toEqual(expect.arrayContaining(['fixing-too-short', 'no-sheet-for-board']));
  });

  test('of two thicknesses either side of a thread of 0.8 diameters in M6, the thicker one is refused', () => {
    // 60 mm less a spacer of 25 mm less 30.1 or 30.3 mm: 4.9 and 4.7 mm are left, 4.8 mm is the least.
    const lacks = (mm: number) =>
      told(planned([{ id: 'ply', mm, pieces: 1 }], ['title: Main']).remarks, 'no-sheet-for-board')?.message;
    expect(lacks(30.3)).toMatch(/too little thread/);
    expect(lacks(30.1) ?? '').not.toMatch(/too little thread/);
  });

  test('and none at all on the shelf: says so', () => {
    const { remarks } = planned([], ['title: Main']);
    expect(told(remarks, 'no-sheet-for-board')?.message).toMatch(/no board sheet is in stock/);
  });
});

describe('the way out of a soft board', () => {
  const on = (spacer: string, lines: readonly string[]) =>
    smallPlan(...stocked(...shelf), ...onFourPoints(lines, spacer));

  test('is the rib behind it where that is lighter than another sheet, with the lines to write', () => {
    const remedy = told(on('35 mm', ['sheet: ply-6']).remarks, 'first-mode-low')?.remedy ?? '';
    const [, ribs = ''] = /write ribs: (\{ .* \}) \(first mode \d+ Hz/.exec(remedy) ?? [];
    expect(remedy).toMatch(/or write sheet: ply-12 \(/);
    const mended = on('35 mm', ['sheet: ply-6', `ribs: ${ribs}`]);
    expect(byId(mended.plan.boards, 'main').ribs.length).toBeGreaterThan(0);
    expect(told(mended.remarks, 'first-mode-low')).toBeUndefined();
    expect(mended.remarks.filter(({ rule }) => rule.startsWith('rib'))).toEqual([]);
    const thicker = on('35 mm', ['sheet: ply-12']);
    expect(byId(mended.plan.boards, 'main').massKg).toBeLessThan(byId(thicker.plan.boards, 'main').massKg);
  });

  test('is no rib where the board stands near its panel', () => {
    const { remarks } = on('10 mm', ['sheet: ply-6']);
    expect(told(remarks, 'first-mode-low')?.remedy).toMatch(/^write sheet: ply-12/);
  });
});
