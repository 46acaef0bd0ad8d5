import { describe, expect, test } from 'vitest';
import { boardFixings } from '../../../lib/plan/board/board-shape.ts';
import { onFixings, stiffnessStep } from '../../../lib/plan/board/board-steps.ts';
import { countedRibs, planRibs, traceRibs } from '../../../lib/plan/board/ribs/plan-ribs.ts';
import { ribGlue, ribScrew, screwPoints } from '../../../lib/plan/board/ribs/rib-fastening.ts';
import { proposeRibs } from '../../../lib/plan/board/ribs/rib-proposals.ts';
import { buildOf } from '../../../lib/plan/board/sheets/sheet-build.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import type { Change } from '../../read/small-shop.ts';
import { addParts, inParts, inShop } from '../shop-changes.ts';
import { bentCoarsely, laidOut, oneBoard, oneBoardOn } from './one-board.ts';

const screw = (id: string, mm: number, more = 'clearance: 4.4 mm, pilot: 3 mm') =>
  `${id}: { kind: fixing, title: S, form: wood-screw, length: ${mm} mm, ${more} }`;
const shelf = (...lines: readonly string[]) =>
  inShop('  screw-25: { pieces: 50 }\n', lines.map((line) => `  ${line}\n`).join(''));

describe('the screw of a rib', () => {
  const { board } = oneBoard();
  const screwOf = (heightM: number, ...changes: readonly Change[]) =>
    ribScrew(oneBoard(undefined, ...changes).job, 0.012, { heightM }, board.sheet)?.id;
  const { rules } = oneBoard().job;
  // A screw of 25 mm through 12 mm bites 13 mm.
  const leastM = 0.013 + rules['rib-screw-skin'].value;

  test('bites as deep as the house rule asks, and leaves a skin of the rib', () => {
    expect(rules['rib-screw-bite'].value).toBeLessThanOrEqual(0.013);
    expect(screwOf(leastM)).toBe('screw-25');
    expect(screwOf(leastM - 1e-6)).toBeUndefined();
    const shallow = Math.round(1000 * (0.012 + rules['rib-screw-bite'].value)) - 1;
    expect(screwOf(0.05, addParts(screw('screw-0', shallow)), shelf('screw-0: { pieces: 9 }'))).toBe(
      'screw-25',
    );
    const enough = addParts(screw('screw-0', shallow + 1));
    expect(screwOf(0.05, enough, shelf('screw-0: { pieces: 9 }'))).toBe('screw-0');
  });

  test('is one that is in stock, of these the shortest, then the first by name', () => {
    const longer = addParts(screw('screw-30', 30), screw('screw-30a', 30), screw('screw-26', 26));
    const only = (...lines: readonly string[]) => screwOf(0.05, longer, shelf(...lines));
    expect(only('screw-30: { pieces: 9 }', 'screw-30a: { pieces: 9 }')).toBe('screw-30');
    expect(only('screw-30a: { pieces: 9 }')).toBe('screw-30a');
    expect(only('screw-30: { pieces: 9 }', 'screw-26: { pieces: 1 }')).toBe('screw-26');
    expect(only('screw-30: { pieces: 0 }')).toBe('screw-25');
  });

  test('is none whose clearance nobody tells, and none in metal or acrylic', () => {
    const bare = inParts('length: 25 mm, clearance: 4.4 mm, pilot: 3 mm', 'length: 25 mm, pilot: 3 mm');
    expect(screwOf(0.05, bare)).toBeUndefined();
    const { job } = oneBoard();
    for (const material of ['aluminium', 'acrylic'] as const)
      expect(ribScrew(job, 0.012, { heightM: 0.05 }, { ...board.sheet, material })).toBeNull();
  });
});

test('a rib is glued with what is in stock, else with the first that is to be had', () => {
  const more = addParts(
    'glue-0: { kind: fixing, title: Glue, form: adhesive }',
    'glue-b: { kind: fixing, title: Glue, form: adhesive }',
  );
  expect(ribGlue(oneBoard(undefined, more).job)).toBe('glue-a');
  const none = inShop('  glue-a: { pieces: 1 }\n', '');
  expect(ribGlue(oneBoard(undefined, more, none).job)).toBe('glue-0');
  const other = inShop('  glue-a: { pieces: 1 }\n', '  glue-b: { pieces: 1 }\n');
  expect(ribGlue(oneBoard(undefined, more, other).job)).toBe('glue-b');
});

describe('where the screws of a rib go', () => {
  const { rules } = oneBoard().job;
  const rib = (lengthM: number, widthM = 0.012) => ({
    ...{ id: 'r', face: 'rear' as const, widthM, heightM: 0.02 },
    ...{ from: { xM: 0, yM: 0.1 }, to: { xM: lengthM, yM: 0.1 } },
  });
  const endM = rules['rib-screw-end'].value;
  const points = (
    ...given: readonly [Parameters<typeof screwPoints>[0], Parameters<typeof screwPoints>[2]]
  ) =>
    screwPoints(given[0], 0.0044, given[1], rules).map(({ xM, yM }) => [
      Number(xM.toFixed(6)),
      Number(yM.toFixed(6)),
    ]);

  test('is inside its ends by the house rule, and apart by no more than it, in like spans', () => {
    const lengthM = 2 * endM + 2 * rules['rib-screw-spacing'].value;
    const xs = points(rib(lengthM), []).map(([x]) => x);
    expect(xs).toEqual([endM, lengthM / 2, lengthM - endM].map((x) => Number(x.toFixed(6))));
    expect(points(rib(lengthM + 0.001), [])).toHaveLength(4);
    for (const [, y] of points(rib(lengthM), [])) expect(y).toBe(0.1);
  });

  test('is in two rows where it is wide', () => {
    const wideM = rules['rib-two-rows'].value;
    const ys = new Set(points(rib(0.2, wideM), []).map(([, y]) => y));
    expect(ys.size).toBe(2);
    expect(new Set(points(rib(0.2, wideM - 1e-6), []).map(([, y]) => y)).size).toBe(1);
  });

  test('is moved along where it would meet another hole, by no more than half a span, and left out beyond', () => {
    const lengthM = 2 * endM + rules['rib-screw-spacing'].value;
    const hole = (xM: number, diameterM: number) => ({ xM, yM: 0.1, diameterM });
    const [first, last] = points(rib(lengthM), [hole(endM, 0.004)]);
    expect(first?.[0]).not.toBe(Number(endM.toFixed(6)));
    expect(Math.abs((first?.[0] ?? 0) - endM)).toBeGreaterThanOrEqual(0.0042 + 0.004 - 1e-6);
    expect(first?.[0]).toBeLessThanOrEqual(lengthM - endM / 2);
    expect(first?.[0]).toBeGreaterThanOrEqual(endM / 2);
    expect(last?.[0]).toBeCloseTo(lengthM - endM, 6);
    const huge = points(rib(lengthM), [hole(endM, 0.5)]);
    expect(huge).toEqual([]);
  });

  test('never comes nearer to its end than half of that', () => {
    // What is drilled in the middle sends both outwards.
    const lengthM = 4 * endM;
    const all = points(rib(lengthM), [
      { xM: lengthM / 2, yM: 0.1, diameterM: 2 * (lengthM / 2 - endM) + 0.01 },
    ]);
    for (const [x = 0] of all) {
      expect(x).toBeGreaterThanOrEqual(endM / 2 - 1e-6);
      expect(x).toBeLessThanOrEqual(lengthM - endM / 2 + 1e-6);
    }
  });
});

describe('the ribs of a board', () => {
  const ribbed = (rib: string, ...more: readonly Change[]) => {
    const found = oneBoard(['sheet: ply-12', `ribs: { ${rib} }`], ...more);
    const laid = laidOut(found);
    const book = new PlanBook();
    const planned = planRibs(found.job, laid, []);
    traceRibs('main', planned, book);
    return { ...found, laid, planned, rib: planned.ribs[0], traces: book.traces() };
  };

  test('run where the job starts them, for so long; from its edge for as far as they are free', () => {
    const at = (more: string) => ribbed(`r1: { edge: bottom, distance: 150 mm, height: 20 mm${more} }`).rib;
    expect(at('')).toMatchObject({ from: { xM: expect.closeTo(0.006, 6) }, ends: 'computed' });
    expect(at(', start: 100 mm, length: 200 mm')).toMatchObject({
      ...{ from: { xM: expect.closeTo(0.1, 9), yM: expect.closeTo(0.15, 9) }, ends: 'given' },
      ...{ to: { xM: expect.closeTo(0.3, 9) }, lengthM: expect.closeTo(0.2, 9) },
    });
    expect(
      ribbed('r1: { from: [50 mm, 150 mm], to: [450 mm, 150 mm], height: 20 mm }').rib?.lengthM,
    ).toBeCloseTo(0.4, 9);
  });

  test('weigh length by width by height by density, and say so', () => {
    const { rib, traces } = ribbed('r1: { from: [50 mm, 150 mm], to: [450 mm, 150 mm], height: 20 mm }');
    expect(rib?.massKg).toBeCloseTo(0.4 * 0.012 * 0.02 * 680, 9);
    expect(traces['boards.main.ribs.r1.massKg']).toMatchObject({ rule: 'rib-mass', unit: 'kg' });
    expect(traces['boards.main.ribs.r1.massKg']?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['length', expect.closeTo(0.4, 9)],
      ['width', 0.012],
      ['height', 0.02],
      ['sheet', 'ply-12'],
    ]);
  });

  test('have screws, and glue where they are glued', () => {
    const line = 'r1: { edge: bottom, distance: 150 mm, height: 20 mm';
    expect(ribbed(`${line} }`).rib).toMatchObject({
      screw: { part: 'screw-25' },
      glue: null,
      joint: 'screwed',
    });
    expect(ribbed(`${line}, joint: glued }`).rib).toMatchObject({ glue: 'glue-a', joint: 'glued' });
    const hole = { n: 1, xM: 0.25, yM: 0.15, diameterM: 0.9, depthM: 0.01, purpose: 'mounting' as const };
    const { job, laid } = ribbed(`${line} }`);
    const drilled = planRibs(job, laid, [{ ...hole, of: 'amp', pilotFor: null, behind: null }]);
    expect(drilled.ribs.map((one) => one.screw)).toEqual([null]);
    // 13 mm of bite do not go into 14 mm with a skin.
    expect(ribbed('r1: { edge: bottom, distance: 150 mm, height: 14 mm }').rib?.screw).toBeNull();
  });

  test('count in its stiffness as they can be built, one that hits its panel not', () => {
    const counted = (height: string) => {
      const { job, board, planned } = ribbed(`r1: { edge: bottom, distance: 150 mm, height: ${height} }`);
      return countedRibs(job, board, planned).map(({ id }) => id);
    };
    expect(counted('20 mm')).toEqual(['r1']);
    expect(counted('26 mm')).toEqual([]);
  });
});

describe('ribs that are proposed', () => {
  const proposed = (wantedHz: number, spacer = '40 mm', ...more: readonly Change[]) => {
    const found = oneBoardOn(spacer, ['sheet: ply-12'], ...more);
    const laid = laidOut(found);
    const fixings = boardFixings(found.board, found.job.parts);
    return proposeRibs({ job: found.job, laid, fixings, holes: [], wantedHz, keep: bentCoarsely });
  };

  test('are the lightest that keep the limit, cut from the sheet of the board or another on the shelf', () => {
    const found = proposed(60);
    expect(found?.stiffness.firstModeHz.value).toBeGreaterThanOrEqual(60);
    expect(found?.text).toMatch(
      /^\{ rib-1: \{ edge: (bottom|left), distance: .* in, height: \d+ mm.* \} \}$/,
    );
  });

  test.each([40, 60, 75])(
    'written as they are told make the board as stiff as is told: %s Hz',
    (wantedHz) => {
      const found = proposed(wantedHz);
      if (!found) throw new Error('There is a rib that does.');
      const written = oneBoardOn('40 mm', ['sheet: ply-12', `ribs: ${found.text}`]);
      const laid = laidOut(written);
      const ribs = countedRibs(written.job, written.board, planRibs(written.job, laid, []));
      expect(ribs.length).toBeGreaterThan(0);
      const bent = bentCoarsely(stiffnessStep, {
        board: onFixings(laid, boardFixings(written.board, written.job.parts)),
        build: buildOf(written.job, laid, ribs),
        aim: { wantedHz },
      });
      expect(bent?.firstModeHz.value).toBeCloseTo(found.stiffness.firstModeHz.value, 6);
      expect(bent?.massKg).toBeCloseTo(found.stiffness.massKg, 9);
    },
  );

  // Screwed alone, of the sheet of the board, a rib of 15 mm takes no screw. Across the longer way of the board it helps most.
  test.each([
    [60, 20],
    [75, 25],
    [80, 30],
  ])('run where one helps most, no higher than it takes: for %s Hz %s mm', (wantedHz, heightMm) => {
    const screwed = [
      inParts('  glue-a: { kind: fixing, title: Glue, form: adhesive }\n', ''),
      inShop('  glue-a: { pieces: 1 }\n', ''),
    ];
    const found = proposed(wantedHz, '40 mm', ...screwed);
    expect(found?.text).toBe(`{ rib-1: { edge: bottom, distance: 5 7/8 in, height: ${heightMm} mm } }`);
    const hzOf = (mm: number) => {
      const rib = `ribs: { r: { edge: bottom, distance: 150 mm, height: ${mm} mm } }`;
      const { job, board, ...more } = oneBoardOn('40 mm', ['sheet: ply-12', rib], ...screwed);
      const laid = laidOut({ job, board, ...more });
      const ribs = countedRibs(job, board, planRibs(job, laid, []));
      const bent = bentCoarsely(stiffnessStep, {
        board: onFixings(laid, boardFixings(board, job.parts)),
        build: buildOf(job, laid, ribs),
        aim: { wantedHz },
      });
      return bent?.firstModeHz.value ?? Number.NaN;
    };
    expect(hzOf(heightMm)).toBeGreaterThanOrEqual(wantedHz);
    if (heightMm > 20) expect(hzOf(heightMm - 5)).toBeLessThan(wantedHz);
  });

  test('are none where no rib has room, or none does', () => {
    expect(proposed(60, '10 mm')).toBeNull();
    expect(proposed(5000)).toBeNull();
  });
});
