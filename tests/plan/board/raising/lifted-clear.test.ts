import { describe, expect, test } from 'vitest';
import { withBoard } from '../../../read/problem-case.ts';
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
const told = (standsOut: string, shelf: string, board = onBoard) => {
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

  test('is told none that the shelf does not make, and that would lift it against the front of its space', () => {
    expect(JSON.stringify(told('6.4 mm', spacers)?.remedy)).not.toContain('13 mm');
    expect(JSON.stringify(told('190 mm', spacers + rings)?.remedy)).not.toContain('write spacer');
  });

  test('is told nothing where it stands clear', () => {
    expect(told('6 mm', spacers + rings)).toBeUndefined();
  });
});
