import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { letteredHoles } from '../../../lib/board/cut/hole-letters.ts';

const hole = (n: number, diameterM: number, depthM: number | null, pilotFor: string | null = null) => ({
  n,
  diameterM,
  depthM,
  pilotFor,
});

describe('the letters of holes', () => {
  test('are one for each set-up of the drill: the widest first, those right through before blind ones, the deeper first', () => {
    const holes = [
      hole(1, 0.0032, 0.012, 'screw'),
      hole(2, 0.0066, null),
      hole(3, 0.0032, null, 'screw'),
      hole(4, 0.0032, 0.02, 'screw'),
      hole(5, 0.0066, null),
      hole(6, 0.0032, 0.012, 'other'),
    ];
    expect(letteredHoles(holes).map(({ letter, holes: own }) => [letter, own.map(({ n }) => n)])).toEqual([
      ['A', [2, 5]],
      ['B', [3]],
      ['C', [4]],
      ['D', [6]],
      ['E', [1]],
    ]);
  });

  test('tell apart what differs by a hundredth of a millimetre, and not what inches leave behind', () => {
    expect(letteredHoles([hole(1, 0.00635, null), hole(2, 0.00636, null)])).toHaveLength(2);
    expect(letteredHoles([hole(1, 0.25 * 0.0254, null), hole(2, 0.0063500001, null)])).toHaveLength(1);
  });

  test('leave out I, O and Q, go on after Z, and are never two alike', () => {
    const many = letteredHoles(Array.from({ length: 60 }, (_, at) => hole(at, 0.001 * (at + 1), null)));
    const letters = many.map(({ letter }) => letter);
    expect(new Set(letters).size).toBe(60);
    expect(letters.join('')).not.toMatch(/[IOQ]/);
    expect(letters.slice(22, 25)).toEqual(['Z', 'A2', 'B2']);
  });

  test('are the same in whatever order the holes are written, and each hole has one', () => {
    const holes = fc.array(
      fc.record({
        diameterM: fc.constantFrom(0.003, 0.006, 0.009),
        depthM: fc.constantFrom(null, 0.01),
        pilotFor: fc.constantFrom(null, 'screw'),
      }),
      { minLength: 1, maxLength: 20 },
    );
    fc.assert(
      fc.property(holes, (made) => {
        const numbered = made.map((one, n) => ({ ...one, n }));
        const named = (list: typeof numbered) =>
          letteredHoles(list)
            .flatMap(({ letter, holes: own }) => own.map(({ n }) => `${n}${letter}`))
            .toSorted();
        expect(named(numbered.toReversed())).toEqual(named(numbered));
        expect(named(numbered)).toHaveLength(made.length);
      }),
    );
  });
});
