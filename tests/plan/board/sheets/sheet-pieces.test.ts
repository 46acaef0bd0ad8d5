import { describe, expect, test } from 'vitest';
import { chooseSheets } from '../../../../lib/plan/board/sheets/choose-sheets.ts';
import { offCutsFor } from '../../../../lib/plan/board/sheets/off-cuts-on-shelf.ts';
import { railSupply, railsComeOut } from '../../../../lib/plan/board/sheets/rail-stock.ts';
import { buildOf, plateSheet } from '../../../../lib/plan/board/sheets/sheet-build.ts';
import { isOnShelf, trySheet } from '../../../../lib/plan/board/sheets/sheet-lacks.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../../shop-changes.ts';
import { bentCoarsely, laidOut, oneBoard, oneBoardOn } from '../one-board.ts';

/** A sheet as the catalogue has it, stiff both ways. */
const sheet = (id: string, mm: number, more = 'material: birch-plywood') =>
  `${id}: { kind: board-sheet, title: Sheet, ${more}, thickness: ${mm} mm, width: 1500 mm, height: 1500 mm, grain: height, density: 680 kg/m3, modulus: 9 GPa, modulus-across: 9 GPa, shear-modulus: 3.4 GPa }`;
const onShelf = (...lines: readonly string[]) =>
  inShop('  ply-12: { pieces: 1 }\n', lines.map((line) => `  ${line}\n`).join(''));

describe('what of the stiffness of a sheet nobody stated', () => {
  const assumed = (figures: string, more: readonly Change[] = []) => {
    const ply = 'modulus: 9 GPa, modulus-across: 9 GPa, shear-modulus: 3.4 GPa';
    const found = oneBoard(undefined, inParts(ply, `modulus: 9 GPa${figures}`), ...more);
    return buildOf(found.job, laidOut(found), []).assumed;
  };

  test('is told with each that its part leaves out', () => {
    expect(assumed(', modulus-across: 9 GPa, shear-modulus: 3.4 GPa')).toEqual([]);
    expect(assumed(', shear-modulus: 3.4 GPa')).toEqual(['its modulus across the grain']);
    expect(assumed(', modulus-across: 9 GPa')).toEqual(['its shear modulus']);
    expect(assumed('')).toEqual(['its modulus across the grain', 'its shear modulus']);
  });

  test('comes from the house rules, for plywood as for what is alike both ways', () => {
    const { job, board } = oneBoard();
    const { 'modulus-across': _across, 'shear-modulus': _shear, ...bare } = board.sheet;
    const ply = plateSheet(bare, job.rules);
    expect(ply.modulusYPa).toBeCloseTo(9e9 * job.rules['plywood-across'].value, 0);
    expect(ply.shearPa).toBe(job.rules['plywood-shear'].value);
    const even = plateSheet({ ...bare, material: 'fibreboard' }, job.rules);
    expect(even.modulusYPa).toBe(9e9);
    expect(even.shearPa).toBeCloseTo(9e9 / (2 * (1 + job.rules['sheet-poisson'].value)), 0);
  });
});

describe('a sheet that is tried on a board', () => {
  const lacksOf = (id: string, spacer: string, ...more: readonly Change[]) => {
    const found = oneBoardOn(spacer, undefined, ...more);
    const part = found.job.parts[id];
    if (part?.kind !== 'board-sheet') throw new Error(`${id} is no sheet.`);
    return trySheet(found.job, laidOut(found), { id, part }, bentCoarsely);
  };
  const wet = inVehicle('    depth: 200 mm', '    depth: 200 mm\n    wet: true');

  test('swells in the wet where it is fibreboard that nobody sealed', () => {
    const boards = addParts(
      sheet('mdf', 18, 'material: fibreboard'),
      sheet('mdf-sealed', 18, 'material: fibreboard, sealed: true'),
    );
    expect(lacksOf('mdf', '25 mm', boards, wet).lacks).toEqual(['swells in well, which gets wet']);
    expect(lacksOf('mdf', '25 mm', boards).lacks).toEqual([]);
    expect(lacksOf('mdf-sealed', '25 mm', boards, wet).lacks).toEqual([]);
    expect(lacksOf('ply-12', '25 mm', wet).lacks).toEqual([]);
  });

  test('must be large enough, and leave the parts their depth', () => {
    const small = addParts(
      sheet('small', 12).replace('width: 1500 mm, height: 1500 mm', 'width: 400 mm, height: 400 mm'),
    );
    expect(lacksOf('small', '25 mm', small).lacks).toEqual(['is too small for it']);
    // The amplifier is 40 mm high: 200 mm less 25 mm and 140 mm leave 35 mm.
    expect(lacksOf('thick', '25 mm', addParts(sheet('thick', 140))).lacks).toEqual([
      'leaves the parts too little depth in the space',
    ]);
  });

  test('that is there in off-cuts alone must come out of one', () => {
    const offCut = (width: number) =>
      onShelf(`ply-12: { pieces: 0, off-cuts: { a: { width: ${width} mm, height: 600 mm } } }`);
    expect(lacksOf('ply-12', '25 mm', offCut(400)).lacks).toEqual([]);
    expect(lacksOf('ply-12', '25 mm', offCut(250)).lacks).toEqual(['is on the shelf in smaller off-cuts']);
    expect(isOnShelf(oneBoard(undefined, offCut(250)).job, 'ply-12')).toBe(true);
    expect(isOnShelf(oneBoard(undefined, onShelf('ply-12: { pieces: 0 }')).job, 'ply-12')).toBe(false);
  });

  test('must let the screws of its parts bite: as deep as they are long, or it is thick', () => {
    const holes = inParts(
      'kind: amplifier\n    title: Amplifier\n    ',
      'kind: amplifier\n    title: Amplifier\n    mounting-holes: [{ x: 10 mm, y: 10 mm, diameter: 5 mm }]\n    ',
    );
    const thin = addParts(sheet('thin', 3));
    expect(lacksOf('thin', '25 mm', holes, thin).lacks).toEqual([
      expect.stringMatching(/^gives the screws of its parts .* to bite in$/),
    ]);
    expect(lacksOf('thin', '25 mm', thin).lacks).toEqual([]);
    expect(lacksOf('ply-12', '25 mm', holes).lacks).toEqual([]);
  });

  test('is reached through by its fixings: thread enough behind it, and no more than is free', () => {
    // Bolts of 60 mm: 25 mm of spacer and 12 mm of sheet leave 23 mm; 0.8 diameters of M6 are 4.8 mm.
    expect(lacksOf('ply-12', '25 mm').fixings).toEqual({ short: [], long: [] });
    expect(lacksOf('ply-12', '43 mm').fixings.short).toEqual([]);
    expect(lacksOf('ply-12', '44 mm').fixings.short).toEqual(['a', 'b', 'c', 'd']);
    const free = (mm: number) =>
      inVehicle('p1: { x: 50 mm, y: 50 mm,', `p1: { x: 50 mm, y: 50 mm, free-depth: ${mm} mm,`);
    expect(lacksOf('ply-12', '25 mm', free(22)).fixings.long).toEqual(['a']);
    expect(lacksOf('ply-12', '25 mm', free(23)).fixings.long).toEqual([]);
  });

  test('by a wood screw holds with any of its length', () => {
    const screws = inParts(
      'form: bolt, thread: M6, length: 60 mm',
      'form: wood-screw, length: 60 mm, pilot: 5 mm',
    );
    expect(lacksOf('ply-12', '47 mm', screws).fixings.short).toEqual([]);
    expect(lacksOf('ply-12', '48 mm', screws).fixings.short).toEqual(['a', 'b', 'c', 'd']);
  });

  test('is as stiff as the softest of the layouts that the board may come to', () => {
    const found = oneBoard(undefined, inJob('\n    at: { x: 200 mm, y: 110 mm }', ''));
    const laid = laidOut(found);
    const [proposal] = laid.proposals;
    const [amp] = proposal?.placements ?? [];
    if (!proposal || !amp) throw new Error('A place is proposed.');
    const at = (xM: number, yM: number) => ({ ...proposal, placements: [{ ...amp, xM, yM }] });
    const hz = (...proposals: readonly ReturnType<typeof at>[]) => {
      const placements = proposals[0]?.placements ?? [];
      const tried = { ...laid, placements, proposals };
      const { stiffness } = trySheet(
        found.job,
        tried,
        { id: 'ply-12', part: found.board.sheet },
        bentCoarsely,
      );
      return stiffness?.firstModeHz.value ?? 0;
    };
    const [middle, corner] = [hz(at(0.2, 0.11)), hz(at(0.02, 0.02))];
    expect(corner).toBeGreaterThan(middle);
    expect(hz(at(0.2, 0.11), at(0.02, 0.02))).toBe(middle);
    expect(hz(at(0.02, 0.02), at(0.2, 0.11))).toBe(middle);
  });
});

describe('a board that leaves its sheet open', () => {
  const chosen = (parts: readonly string[], shelf: readonly string[], ...more: readonly Change[]) => {
    const found = oneBoard(['title: Main'], addParts(...parts), onShelf(...shelf), ...more);
    const book = new PlanBook();
    const [board] = chooseSheets(found.job, () => new Map(), book, bentCoarsely).boards;
    const told = book.remarks().map(({ remark }) => remark);
    return { id: board?.sheetId, told, trace: book.traces()['boards.main.sheet'] };
  };
  const light = [sheet('ply-15', 15), sheet('ply-18', 18), sheet('ply-5', 5)];

  test('gets the lightest in stock that is stiff enough, the first by name of those alike', () => {
    const pieces = ['ply-18: { pieces: 1 }', 'ply-5: { pieces: 1 }', 'ply-15: { pieces: 1 }'];
    const found = chosen(light, pieces);
    expect(found.id).toBe('ply-15');
    expect(found.told).toEqual([]);
    expect(found.trace?.inputs.map(({ name }) => name)).toEqual(['first mode asked for', 'ply-5', 'ply-15']);
    const twins = [sheet('ply-15b', 15), sheet('ply-15a', 15)];
    expect(chosen(twins, ['ply-15b: { pieces: 1 }', 'ply-15a: { pieces: 1 }']).id).toBe('ply-15a');
    const both = ['ply-15a: { pieces: 1 }', 'ply-15b: { pieces: 1 }'];
    expect(chosen([sheet('ply-15a', 15), sheet('ply-15b', 15)], both).id).toBe('ply-15a');
  });

  test('is never cut from what is no sheet, or is not on the shelf', () => {
    expect(chosen(light, ['ply-18: { pieces: 1 }', 'ply-15: { pieces: 0 }']).id).toBe('ply-18');
  });

  test('stops where none is stiff enough, and is planned with the stiffest', () => {
    const found = chosen(
      [sheet('ply-3', 3), sheet('ply-5', 5), sheet('ply-4', 4)],
      ['ply-5: { pieces: 1 }', 'ply-3: { pieces: 1 }', 'ply-4: { pieces: 1 }'],
    );
    expect(found.id).toBe('ply-5');
    expect(found.told).toEqual([
      expect.objectContaining({
        rule: 'no-sheet-for-board',
        level: 'stop',
        message: expect.stringContaining('ply-3 reaches first mode'),
      }),
    ]);
  });

  test('of those that lack something takes that which lacks least, however stiff another is', () => {
    const narrow = sheet('ply-21', 21)
      .replace('width: 1500 mm', 'width: 200 mm')
      .replace('height: 1500 mm', 'height: 200 mm');
    const found = chosen([narrow, sheet('ply-5', 5)], ['ply-21: { pieces: 1 }', 'ply-5: { pieces: 1 }']);
    expect(found.id).toBe('ply-5');
    expect(found.told[0]?.message).toMatch(/ply-21 is too small for it/);
  });

  test('beside a subwoofer is content with what keeps the least mode, if none keeps the one that is wanted', () => {
    const beside = inVehicle('    depth: 200 mm', '    depth: 200 mm\n    beside-subwoofer: true');
    const pieces = ['ply-12: { pieces: 1 }', 'ply-9: { pieces: 1 }', 'ply-5: { pieces: 1 }'];
    const found = chosen([sheet('ply-9', 9), sheet('ply-5', 5)], pieces, beside);
    expect(found.told).toEqual([]);
    expect(['ply-9', 'ply-12']).toContain(found.id);
  });

  test('without any sheet on the shelf stops too, and stays with one of the catalogue', () => {
    const found = chosen(light, []);
    expect(found.told).toEqual([
      expect.objectContaining({ message: 'main leaves its sheet open, and no board sheet is in stock' }),
    ]);
  });

  test('that names its sheet keeps it', () => {
    const { job } = oneBoard();
    expect(chooseSheets(job, () => new Map(), new PlanBook(), bentCoarsely)).toBe(job);
  });
});

describe('what rails are cut from', () => {
  const raised = [{ item: 'amp', xM: 0.2, yM: 0.11, turnDeg: 0 as const, heightM: 0.036 }];
  const comesOut = (...more: readonly Change[]) => {
    const found = oneBoard(undefined, ...more);
    const supply = railSupply(found.job, found.board, laidOut(found).shape);
    return supply && railsComeOut(supply, raised);
  };
  const tight = inParts(
    'thickness: 12 mm, width: 1500 mm, height: 1500 mm',
    'thickness: 12 mm, width: 525 mm, height: 325 mm',
  );

  test('is what the board leaves of a sheet, or an off-cut beside it', () => {
    expect(comesOut()).toBe(true);
    expect(comesOut(tight)).toBe(false);
    const offCut = 'ply-12: { pieces: 1, off-cuts: { a: { width: 300 mm, height: 240 mm } } }';
    expect(comesOut(tight, onShelf(offCut))).toBe(true);
    expect(comesOut(tight, onShelf('ply-12: { pieces: 2 }'))).toBe(true);
  });

  test('of a sheet that is no stock is bought with the board', () => {
    expect(comesOut(onShelf())).toBeNull();
  });
});

test('the off-cuts of a job are those of its sheets, by name, none that is used up', () => {
  const { job } = oneBoard(
    undefined,
    onShelf(
      'ply-12: { pieces: 1, off-cuts: { b: { width: 300 mm, height: 200 mm }, used: { width: 1 m, height: 1 m, pieces: 0 } } }',
    ),
  );
  const [board] = samplePlan().boards;
  if (!board) throw new Error('The sample plan has a board.');
  const own = { ...board, sheet: 'ply-12', ribs: [] };
  expect(offCutsFor(job, [own, { ...own, id: 'other' }])).toEqual([
    { name: 'b', sheet: 'ply-12', widthM: 0.3, heightM: 0.2, quantity: 1 },
  ]);
  expect(offCutsFor(job, [{ ...own, sheet: 'ply-a' }])).toEqual([]);
});
