import { describe, expect, test } from 'vitest';
import { readContent } from '../../../lib/read/read-content.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';
import { addParts, inShop, inVehicle } from '../../plan/shop-changes.ts';
import { withBoard } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';

const sheet = (mm: number) =>
  `ply-${mm}: { kind: board-sheet, title: P, material: birch-plywood, thickness: ${mm} mm, width: 1500 mm, height: 1500 mm, density: 680 kg/m3, modulus: 9 GPa }`;

/** A board over two points of M6 with 19 mm free behind, before a rib that stands out 15 mm; bolts of 30 and 60 mm. */
function held(lines: string, ...more: readonly Change[]): readonly Change[] {
  return [
    withBoard(
      '    sheet: ply-a\n    outline: { rectangle: { width: 500 mm, height: 300 mm } }\n    fixings: { a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }',
      `${lines}    at: { x: 0 mm, y: 0 mm }\n    outline: { rectangle: { width: 500 mm, height: 300 mm } }`,
    ),
    addParts(
      sheet(12),
      sheet(24),
      'bolt-60: { kind: fixing, title: B, form: bolt, thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 40 kg }',
      'stand-10: { kind: fixing, title: S, form: spacer, thread: M6, length: 10 mm }',
      'ring: { kind: fixing, title: W, form: washer, thread: M6, thickness: 1 mm }',
    ),
    inShop(
      'stock:\n',
      'stock:\n  ply-a: { pieces: 1 }\n  ply-12: { pieces: 1 }\n  ply-24: { pieces: 1 }\n  stand-10: { pieces: 8 }\n  ring: { pieces: 20 }\n',
    ),
    inVehicle('p1: { x: 50 mm,', 'p1: { free-depth: 19 mm, x: 50 mm,'),
    inVehicle('p2: { x: 450 mm,', 'p2: { free-depth: 19 mm, x: 450 mm,'),
    inVehicle(
      '    sound-points:\n      p1:',
      '    obstacles:\n      rib: { what: rib, x: 0 mm, y: 200 mm, width: 800 mm, height: 20 mm, stands-out: 15 mm }\n    sound-points:\n      p1:',
    ),
    ...more,
  ];
}

const problemsOf = (...changes: readonly Change[]) =>
  readContent(smallShop(...changes)).problems.map(({ message, remedy }) => ({ message, remedy }));

// A bolt passes the stack by its diameter, 6 mm for M6, and a board keeps 6 mm off what stands out: both common practice, no source.
describe('a board that no bolt holds', () => {
  test('tells the stack, what each bolt lacks, and what of the shelf does at all of its points', () => {
    const [only, ...others] = problemsOf(...held('    sheet: ply-12\n    spacer: 24 mm\n'));
    expect(others).toEqual([]);
    // 12 and 24 are 36 mm: 42 to 55 mm. Of 60 mm with 18 mm of sheet, 23 mm of spacer are the least for 19 mm behind.
    expect(only?.message).toBe(
      'no bolt of the catalogue holds main at p1 and p2: through ply-12, 12.0 mm, and a spacer of 24.0 mm it has to be 42 mm to 55 mm long, with 19 mm free behind; bolt-60 comes out 24.0 mm behind, 5 mm too far; bolt-a does not come through, 12 mm too short',
    );
    expect(only?.remedy).toBe(
      'write spacer: 30 mm with sheet: ply-12, and bolt-60 holds at all of its points; write sheet: ply-24 with spacer: 24 mm, and bolt-60 holds at all of its points; put a bolt M6 42 mm to 55 mm long into the catalogue; or write fixings: yourself',
    );
  });

  test.each([['    sheet: ply-12\n    spacer: 30 mm\n'], ['    sheet: ply-24\n    spacer: 24 mm\n']])(
    'reads without a fault with what it was told: %s',
    (lines) => {
      const job = jobOf(smallShop(...held(lines)));
      const fixings = Object.values(job.boards[0]?.given.fixings ?? {});
      expect(fixings.map(({ fixing }) => fixing)).toEqual(['bolt-60', 'bolt-60']);
    },
  );

  test('is told to write its own or to buy a bolt where nothing of the shelf does', () => {
    const [only] = problemsOf(
      ...held('    sheet: ply-12\n    spacer: 24 mm\n', inVehicle('depth: 200 mm', 'depth: 40 mm')),
    );
    expect(only?.remedy).toMatch(/^no sheet and spacer of the shelf do with a bolt of the catalogue; put /);
  });
});

describe('a board that writes no spacer', () => {
  const spacersOf = (lines: string, ...more: readonly Change[]) => {
    const { boards } = jobOf(smallShop(...held(lines, ...more)));
    return Object.values(boards[0]?.given.fixings ?? {}).map(({ fixing, spacer }) => [fixing, spacer]);
  };

  test('is proposed the least of the shelf that lifts it clear and that a bolt holds with', () => {
    // 15 and 6 mm are 21; with 18 mm of sheet a bolt of 60 mm asks for 23 mm at least.
    expect(spacersOf('    sheet: ply-a\n')).toEqual([
      ['bolt-60', 0.023],
      ['bolt-60', 0.023],
    ]);
  });

  test('is proposed none where it holds and stands clear on its panel', () => {
    const low = inVehicle('stands-out: 15 mm', 'stands-out: 0.1 mm');
    const clear = inVehicle('y: 200 mm, width: 800 mm', 'y: 400 mm, width: 800 mm');
    expect(spacersOf('    sheet: ply-a\n', clear)).toEqual([
      ['bolt-a', undefined],
      ['bolt-a', undefined],
    ]);
    expect(spacersOf('    sheet: ply-a\n', low)[0]?.[1]).toBeGreaterThan(0);
  });

  test('and no sheet is proposed what holds through the most sheets of the shelf', () => {
    // A bolt of 60 mm asks for 29 mm below 12 mm of sheet, which these spacers and four rings do not make, and takes 30 below 24.
    const [[bolt, spacer] = []] = spacersOf('');
    expect(bolt).toBe('bolt-60');
    expect(spacer).toBe(0.03);
  });
});
