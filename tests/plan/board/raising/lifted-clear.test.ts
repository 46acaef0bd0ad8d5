import { describe, expect, test } from 'vitest';
import { withBoard } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { addParts, inShop, inVehicle } from '../../shop-changes.ts';

const fixings = '{ a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }';
const onBoard = withBoard('fixings:', 'spacer: 12 mm\n    fixings:');
const atFixings = withBoard(fixings, '\n      a, b: { point: [p1, p2], fixing: bolt-a, spacer: 12 mm }');
const atOne = withBoard(
  `fixings: ${fixings}`,
  'spacer: 12 mm\n    fixings: { a: { point: p1, fixing: bolt-a, spacer: 12 mm }, b: { point: p2, fixing: bolt-a } }',
);

/** A board before a rib of the floor that stands out so far, with this on the shelf to stand it on. */
const told = (standsOut: string, shelf: string, board = onBoard, ...more: readonly Change[]) => {
  const { remarks } = smallPlan(
    board,
    addParts(
      'stand-12: { kind: fixing, title: S, form: spacer, thread: M6, length: 12 mm }',
      'ring: { kind: fixing, title: W, form: washer, thread: M6, thickness: 1 mm }',
    ),
    inShop('stock:\n', `stock:\n${shelf}`),
    inVehicle(
      '    sound-points:\n      p1:',
      `    obstacles:\n      rib: { what: rib, x: 0 mm, y: 200 mm, width: 800 mm, height: 20 mm, stands-out: ${standsOut} }\n    sound-points:\n      p1:`,
    ),
    ...more,
  );
  return remarks.find(({ rule }) => rule === 'obstacle-in-the-way');
};
const spacers = '  stand-12: { pieces: 8 }\n';
const rings = '  ring: { pieces: 20 }\n';

// The house rule for the room in a space is common practice, no source: 6 mm. A rib of 6.4 mm asks for 12.4.
describe('a board too near to an obstacle behind it', () => {
  test('is told the spacer that lifts it clear, made of what the shelf has', () => {
    const fault = told('6.4 mm', spacers + rings);
    expect(JSON.stringify(fault?.remedy)).toContain('write spacer: 13 mm at main, which lifts it clear');
    expect(fault?.advice).toEqual([[{ path: '/boards/main/spacer', value: '13 mm' }]]);
  });

  test('is told it where the spacer that governs is written: at the fixings that say their own', () => {
    const own = told('6.4 mm', spacers + rings, atFixings);
    expect(JSON.stringify(own?.remedy)).toContain(
      'write spacer: 13 mm at the fixings a and b of main, which',
    );
    expect(own?.advice).toEqual([
      [
        { path: '/boards/main/fixings/a/spacer', value: '13 mm' },
        { path: '/boards/main/fixings/b/spacer', value: '13 mm' },
      ],
    ]);
    const mixed = told('6.4 mm', spacers + rings, atOne);
    expect(JSON.stringify(mixed?.remedy)).toContain('at main and the fixing a of main, which');
    expect(mixed?.advice?.[0]?.map(({ path }) => path)).toEqual([
      '/boards/main/spacer',
      '/boards/main/fixings/a/spacer',
    ]);
  });

  // 18 mm of sheet and 13 of spacer: a bolt of M6 passes them by its diameter, so 37 mm, and by no more than is free.
  test('is told the bolts that hold it there, and only what bolts hold', () => {
    const bolt = (mm: number) =>
      `bolt-${mm}: { kind: fixing, title: B, form: bolt, thread: M6, length: ${mm} mm, clearance: 6.4 mm, holds: 40 kg }`;
    const sheet =
      'ply-12: { kind: board-sheet, title: P, material: birch-plywood, thickness: 12 mm, width: 1500 mm, height: 1500 mm, density: 680 kg/m3, modulus: 9 GPa }';
    const lifted = (lengthsMm: readonly number[], shelf = '') =>
      told(
        '6.4 mm',
        `${spacers}${rings}${shelf}`,
        withBoard(
          fixings,
          '{ a: { point: p1, fixing: bolt-36, spacer: 12 mm }, b: { point: p2, fixing: bolt-36, spacer: 12 mm } }',
        ),
        addParts(...[36, ...lengthsMm].map(bolt), sheet),
        inVehicle('p1: { x: 50 mm,', 'p1: { free-depth: 8 mm, x: 50 mm,'),
        inVehicle('p2: { x: 450 mm,', 'p2: { free-depth: 8 mm, x: 450 mm,'),
      );
    const longer = lifted([38]);
    expect(JSON.stringify(longer?.remedy)).toContain('with bolt-38 at its fixings a and b');
    expect(longer?.advice?.[0]?.map(({ path, value }) => [path, value])).toEqual([
      ['/boards/main/fixings/a/spacer', '13 mm'],
      ['/boards/main/fixings/b/spacer', '13 mm'],
      ['/boards/main/fixings/a/fixing', 'bolt-38'],
      ['/boards/main/fixings/b/fixing', 'bolt-38'],
    ]);
    // 33 mm come 2 past 18 and 13; past 12 and 13 they come 8.
    expect(lifted([33], '  ply-12: { pieces: 1 }\n  ply-a: { pieces: 1 }\n')?.advice?.[0]).toContainEqual({
      path: '/boards/main/sheet',
      value: 'ply-12',
    });
    expect(JSON.stringify(lifted([], '  ply-a: { pieces: 1 }\n')?.remedy)).not.toContain('write spacer');
  });

  test('is told none that the shelf does not make, and that would lift it against the front of its space', () => {
    expect(JSON.stringify(told('6.4 mm', spacers)?.remedy)).not.toContain('13 mm');
    expect(JSON.stringify(told('190 mm', spacers + rings)?.remedy)).not.toContain('write spacer');
  });

  test('is told nothing where it stands clear', () => {
    expect(told('6 mm', spacers + rings)).toBeUndefined();
  });
});
