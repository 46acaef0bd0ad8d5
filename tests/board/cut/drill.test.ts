import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drillFaults, drillTable, type HoleToDrill, holesToDrill } from '../../../lib/board/cut/drill.ts';
import { shapeOf } from '../shapes.ts';

const hole = (id: string, xM: number, yM: number): HoleToDrill => ({
  id,
  xM,
  yM,
  diameterM: 0.004,
  depthM: null,
  pilotFor: null,
  purpose: 'mounting',
  of: id,
  behind: null,
});

describe('the drill table', () => {
  it('numbers by position, whatever order the holes come in', () => {
    const holes = fc.uniqueArray(
      fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 400 })),
      { minLength: 2, maxLength: 12, selector: ([x, y]) => `${x},${y}` },
    );
    fc.assert(
      fc.property(holes, fc.integer(), (places, seed) => {
        const list = places.map(([x, y], at) => hole(`h${at}`, x / 1000, y / 1000));
        const mixed = list.toSorted((a, b) => ((a.xM * 7919 + seed) % 1) - ((b.xM * 7919 + seed) % 1));
        expect(drillTable(mixed)).toEqual(drillTable(list));
        const table = drillTable(list);
        for (const [at, line] of table.entries()) {
          expect(line.n).toBe(at + 1);
          const next = table[at + 1];
          if (next) expect(line.yM < next.yM || (line.yM === next.yM && line.xM < next.xM)).toBe(true);
        }
      }),
      { numRuns: 100, seed: 6 },
    );
  });

  it('takes holes of the outline, of fixings and of turned items', () => {
    const shape = shapeOf({
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [{ cut: 'hole', id: 'loom', x: '50 mm', y: '60 mm', diameter: '30 mm', purpose: 'wire' }],
    });
    const item = {
      id: 'amp',
      widthM: 0.3,
      depthM: 0.2,
      heightM: 0.06,
      massKg: 4,
      rooms: {},
      terminals: [],
      mountingHoles: [{ id: 'amp.hole-1', xM: 0.01, yM: 0.02, diameterM: 0.005 }],
    };
    const placements = [{ item: 'amp', xM: 0.2, yM: 0.05, turnDeg: 90 as const, heightM: 0 }];
    const fixings = [{ id: 'f1', xM: 0.58, yM: 0.38, diameterM: 0.0065, behind: 'nothing' }];
    const screw = { part: 'screw-8', pilotM: 0.0032, lengthM: 0.012 };
    const drilled = { items: [item], placements, fixings, thicknessM: 0.018, screwFor: () => screw };
    const table = drillTable(holesToDrill(shape, drilled));
    const through = { depthM: null, pilotFor: null, behind: null };
    expect(table).toEqual([
      { n: 1, id: 'loom', xM: 0.05, yM: 0.06, diameterM: 0.03, ...through, purpose: 'wire', of: 'loom' },
      // A quarter turn: 0.2 deep becomes 0.2 wide; 20 mm up from the lower edge is 20 mm in from the right.
      {
        n: 2,
        id: 'amp.hole-1',
        xM: expect.closeTo(0.38, 9),
        yM: expect.closeTo(0.06, 9),
        diameterM: 0.0032,
        depthM: 0.012,
        pilotFor: 'screw-8',
        purpose: 'mounting',
        of: 'amp',
        behind: null,
      },
      {
        n: 3,
        id: 'f1',
        xM: 0.58,
        yM: 0.38,
        diameterM: 0.0065,
        ...through,
        purpose: 'fixing',
        of: 'f1',
        behind: 'nothing',
      },
    ]);
    // A screw as long as the board is thick comes out at its back.
    const long = { ...drilled, screwFor: () => ({ ...screw, lengthM: 0.018 }) };
    expect(holesToDrill(shape, long).find(({ of }) => of === 'amp')?.depthM).toBeNull();
  });

  it('names holes that run into each other', () => {
    expect(drillFaults([hole('a', 0.1, 0.1), hole('b', 0.103, 0.1), hole('c', 0.107, 0.1)])).toEqual([
      expect.objectContaining({
        rule: 'holes-run-together',
        of: ['a', 'b'],
        value: expect.closeTo(0.001, 9),
      }),
    ]);
  });
});
