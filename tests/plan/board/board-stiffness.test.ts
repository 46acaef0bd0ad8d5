import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../../lib/model/quantity/quantity.ts';
import type { JoinedRemark } from '../../../lib/model/remark.ts';
import { inJob, partsFile, vehicleFile, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { onTheBoard } from '../power/four-points.ts';

interface Stocked {
  readonly id: string;
  readonly mm: number;
  readonly gpa: number;
  readonly material?: string;
  readonly width?: number;
  readonly pieces?: number;
}

const sheetsOf = (sheets: readonly Stocked[]): readonly Change[] => [
  [
    partsFile,
    '  ply-a:\n',
    `${sheets
      .map(
        ({ id, mm, gpa, material = 'birch-plywood', width = 1500 }) =>
          `  ${id}: { kind: board-sheet, title: Sheet, material: ${material}, thickness: ${mm} mm, width: ${width} mm, height: 1500 mm, density: 680 kg/m3, modulus: ${gpa} GPa }\n`,
      )
      .join('')}  ply-a:\n`,
  ],
  [
    'content/shop.yaml',
    '  large-60:',
    `${sheets
      .filter(({ pieces }) => pieces)
      .map(({ id, pieces }) => `  ${id}: { pieces: ${pieces} }\n`)
      .join('')}  large-60:`,
  ],
];

/** A board of a sheet on four points, the amplifier in its middle. */
const boardOf = (sheet: string): readonly Change[] => [
  withBoard(
    'sheet: ply-a\n    outline: { rectangle: { width: 500 mm, height: 300 mm } }\n    fixings: { ',
    `sheet: ${sheet}\n    at: { x: 10 mm, y: 10 mm }\n    outline: { rectangle: { width: 500 mm, height: 300 mm } }\n    fixings: { c: { point: p3, fixing: bolt-a }, d: { point: p4, fixing: bolt-a }, `,
  ),
  ...onTheBoard,
];

const softOf = (remarks: readonly JoinedRemark[]): JoinedRemark | undefined =>
  remarks.find(({ rule }) => rule === 'first-mode-low');
const named = (remark: JoinedRemark | undefined): string | undefined =>
  /write sheet: ([\w-]+)/.exec(remark?.remedy ?? '')?.[1];

const thin = { id: 'thin', mm: 3, gpa: 9 };

describe('a board that is too soft', () => {
  const shelf = [
    thin,
    { id: 'ply-30', mm: 30, gpa: 9, pieces: 1 },
    { id: 'ply-15', mm: 15, gpa: 9, pieces: 1 },
    { id: 'ply-13', mm: 13, gpa: 9 },
    { id: 'narrow-12', mm: 12, gpa: 9, width: 200, pieces: 1 },
    { id: 'metal-6', mm: 6, gpa: 70, material: 'aluminium', pieces: 1 },
  ];

  test('is told the thinnest sheet of its material in stock that is stiff enough, and what it reaches', () => {
    const { plan, remarks } = smallPlan(...sheetsOf(shelf), ...boardOf('thin'));
    const remark = softOf(remarks);
    expect(remark).toMatchObject({ level: 'stop', of: ['main'], limit: 30 });
    expect(byId(plan.boards, 'main').firstModeHz).toBeLessThan(30);
    expect(named(remark)).toBe('ply-15');
    const changed = smallPlan(...sheetsOf(shelf), ...boardOf('ply-15'));
    expect(softOf(changed.remarks)).toBeUndefined();
    const hz = Math.floor(byId(changed.plan.boards, 'main').firstModeHz ?? 0);
    expect(remark?.remedy).toContain(`first mode ${hz} Hz`);
  });

  test('takes another material from stock before one of its own that has to be bought', () => {
    const rest = shelf.filter(({ id }) => id !== 'ply-15' && id !== 'ply-30');
    expect(named(softOf(smallPlan(...sheetsOf(rest), ...boardOf('thin')).remarks))).toBe('metal-6');
    const bought = rest.filter(({ id }) => id !== 'metal-6');
    const remark = softOf(smallPlan(...sheetsOf(bought), ...boardOf('thin')).remarks);
    expect(named(remark)).toBe('ply-13');
    expect(remark?.remedy).toMatch(/has to be bought/);
  });

  test('whatever sheets there are: what is named makes the finding go', () => {
    const sheet = fc.record({
      mm: fc.integer({ min: 2, max: 25 }),
      gpa: fc.integer({ min: 1, max: 12 }),
      pieces: fc.integer({ min: 0, max: 1 }),
    });
    fc.assert(
      fc.property(fc.array(sheet, { minLength: 1, maxLength: 3 }), (drawn) => {
        const sheets = [thin, ...drawn.map((one, at) => ({ ...one, id: `sheet-${at}` }))];
        const softWith = (id: string) => softOf(smallPlan(...sheetsOf(sheets), ...boardOf(id)).remarks);
        const way = named(softWith('thin'));
        expect(way).toBeDefined();
        if (way) expect(softWith(way)).toBeUndefined();
      }),
      { numRuns: 4, seed: 3 },
    );
  });
});

describe('a board that nothing of the shop makes stiff enough', () => {
  const shelf = [thin, { id: 'ply-4', mm: 4, gpa: 9, pieces: 1 }];
  const high: Change = ['content/shop.yaml', 'stock:\n', 'rules: { first-mode: 900 Hz }\nstock:\n'];
  const planned = (...changes: readonly Change[]) =>
    smallPlan(...sheetsOf(shelf), ...boardOf('thin'), high, ...changes);
  const hertz = (text = '') => Number(/first mode ([\d.]+) Hz/.exec(text)?.[1]);
  const { plan, remarks } = planned();
  const remedy = softOf(remarks)?.remedy ?? '';

  test('is told where one more fixing does most, off every part, and what it then comes to', () => {
    const told = /one more fixing does(?: most)? at x: ([\d./ ]+) in, y: ([\d./ ]+) in of the space/.exec(
      remedy,
    );
    expect(told, remedy).not.toBeNull();
    const [x = 0, y = 0] = [told?.[1], told?.[2]]
      .map((text = '') => parseQuantity(`${text} in`, 'length'))
      .map(Number);
    const [before] = plan.boards;
    for (const { xM, yM, widthM, depthM } of before?.placements ?? []) {
      const [dx, dy] = [x - 0.01 - xM, y - 0.01 - yM];
      expect(dx > 0 && dx < widthM && dy > 0 && dy < depthM).toBe(false);
    }
    // Written, the board comes to what was told, rounded down.
    const { plan: held } = planned(
      [
        vehicleFile,
        '    sound-points:\n',
        `    sound-points:\n      more: { x: ${x * 1000} mm, y: ${y * 1000} mm, stud: M6, what: rivet nut, behind: nothing }\n`,
      ],
      inJob('fixings: { c:', 'fixings: { more: { point: more, fixing: bolt-a }, c:'),
    );
    const modeHz = held.boards[0]?.firstModeHz ?? 0;
    expect(modeHz).toBeGreaterThan((before?.firstModeHz ?? 0) + 2);
    expect(Math.floor(modeHz)).toBe(hertz(remedy));
  });

  const placeIn = (text = ''): readonly [xM: number, yM: number] | null => {
    const told = /one more fixing does(?: most)? at x: ([\d./ ]+) in, y: ([\d./ ]+) in of the space/.exec(
      text,
    );
    const [x = 0, y = 0] = [told?.[1], told?.[2]].map((one) => Number(parseQuantity(`${one} in`, 'length')));
    return told && [x, y];
  };
  const size = 'rectangle: { width: 500 mm, height: 300 mm }';
  // House rules, common practice, no source: a good web is 25 mm. The bolts go through holes of 6.4 mm.
  const [webM, holeM] = [0.025, 0.0064];
  /** The place that is told once something is cut out of the board 10 mm from the datum of its space either way. */
  const placeBeside = (cut: string) => {
    const soft = softOf(planned(inJob(size, `${size}, cuts: [${cut}]`)).remarks);
    expect(soft).toBeDefined();
    return placeIn(soft?.remedy);
  };

  test('is told no place for it in a large hole of the board, nor at its edge', () => {
    const [x, y] = placeIn(remedy) ?? [0, 0];
    // Its middle is 40 mm from the place.
    const [holeX, holeY] = [x + 0.04, y];
    const next = placeBeside(
      `{ cut: hole, x: ${holeX * 1000 - 10} mm, y: ${holeY * 1000 - 10} mm, diameter: 100 mm, purpose: access }`,
    );
    const leastM = 0.05 + webM + holeM / 2;
    expect(next === null || Math.hypot(next[0] - holeX, next[1] - holeY) >= leastM - 1e-9).toBe(true);
  });

  test('is told none at the round end of an opening, which reaches past the straight line between its ends', () => {
    const [x, y] = placeIn(remedy) ?? [0, 0];
    // The end of the slot is a half circle of 40 mm about a point 50 mm above the place.
    const next = placeBeside(
      `{ cut: slot, x: ${x * 1000 - 10} mm, y: ${y * 1000 - 10 + 60} mm, length: 100 mm, width: 80 mm, turn: 90 deg }`,
    );
    const [dx, dy] = next ? [next[0] - x, next[1] - (y + 0.05)] : [1, 1];
    const fromEndM = Math.hypot(dx, Math.min(0, dy)) - 0.04;
    expect(next === null || fromEndM >= webM + holeM / 2 - 1e-9).toBe(true);
  });

  test('is told one off the ribs of the board, and what it comes to with them', () => {
    const [x, y] = placeIn(remedy) ?? [0, 0];
    const rib = (sheet: string) =>
      inJob(
        `sheet: ${sheet}\n`,
        `sheet: ${sheet}\n    ribs: { r: { from: [${x * 1000 - 60} mm, ${y * 1000 - 10} mm], to: [${x * 1000 + 90} mm, ${y * 1000 - 10} mm], height: 15 mm, width: 9 mm, face: mounting } }\n`,
      );
    const ribbed = planned(rib('thin'));
    const told = softOf(ribbed.remarks)?.remedy ?? '';
    const [nextX, nextY] = placeIn(told) ?? [0, 0];
    // Half the rib, half the head of a fixing with a tool on it, beyond its ends too.
    const pastM = Math.max(x - 0.05 - nextX, nextX - (x + 0.1), 0);
    const asideM = Math.max(Math.abs(nextY - y) - 0.0045, 0);
    expect(Math.hypot(pastM, asideM)).toBeGreaterThan(0.015);
    const held = planned(
      rib('thin'),
      [
        vehicleFile,
        '    sound-points:\n',
        `    sound-points:\n      more: { x: ${nextX * 1000} mm, y: ${nextY * 1000} mm, stud: M6, what: rivet nut, behind: nothing }\n`,
      ],
      inJob('fixings: { c:', 'fixings: { more: { point: more, fixing: bolt-a }, c:'),
    );
    expect(Math.floor(held.plan.boards[0]?.firstModeHz ?? 0)).toBe(hertz(told));
  });

  test('is told the sheet in stock that does most', () => {
    const told = /sheet: ply-4 does most (\(.*?\))/.exec(remedy)?.[1];
    const { plan: thicker } = smallPlan(...sheetsOf(shelf), ...boardOf('ply-4'));
    expect(Math.floor(thicker.boards[0]?.firstModeHz ?? 0)).toBe(hertz(told));
  });
});
