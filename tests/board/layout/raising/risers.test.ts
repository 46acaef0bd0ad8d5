import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RiserBoard, riserPieces } from '../../../../lib/board/layout/raising/risers.ts';

const board: RiserBoard = {
  id: 'board',
  ...{ thicknessM: 0.018, toleranceM: 0.0005, railWidthM: 0.038, padM: 0.05 },
  placements: [
    { item: 'amp', widthM: 0.3, depthM: 0.2, raisedM: 0.036 },
    { item: 'dsp', widthM: 0.2, depthM: 0.15, raisedM: 0.025 },
    { item: 'dist', widthM: 0.1, depthM: 0.1, raisedM: 0 },
  ],
  fixings: [
    { id: 'f1', spacerM: 0.0254 },
    { id: 'f2', spacerM: 0.018 },
    { id: 'f3', spacerM: 0.006 },
  ],
  holes: [{ of: 'f1', diameterM: 0.0066 }],
};

describe('riserPieces', () => {
  it('lays rails flat where whole layers make the height: 36 mm is two layers of 18 mm', () => {
    const amp = riserPieces(board).find(({ carries }) => carries === 'amp');
    expect(amp).toMatchObject({ form: 'rail', count: 4, layers: 2, lengthM: 0.2, packM: 0 });
  });

  it('stands a strip on its edge where they do not: 25 mm', () => {
    const dsp = riserPieces(board).find(({ carries }) => carries === 'dsp');
    expect(dsp).toMatchObject({ form: 'edge-rail', count: 2, widthM: 0.025, makesM: 0.025, packM: 0 });
  });

  it('tells what a pad leaves to pack: 25.4 mm less 18 mm is 7.4 mm', () => {
    const pads = riserPieces(board).filter(({ form }) => form === 'pad');
    expect(pads.map(({ carries, count }) => [carries, count])).toEqual([
      ['f1', 1],
      ['f2', 1],
      ['f3', 0],
    ]);
    expect(pads[0]?.packM).toBeCloseTo(0.0074, 9);
    expect(pads[0]?.holeM).toBe(0.0066);
    expect(pads[1]?.packM).toBe(0);
    expect(pads[2]?.packM).toBeCloseTo(0.006, 9);
  });

  it('makes with packing the very height that is asked for, within half a millimetre', () => {
    const height = fc.double({ min: 0.001, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(height, fc.constantFrom(0.009, 0.012, 0.018, 0.01905), (raisedM, thicknessM) => {
        const placements = [{ item: 'amp', widthM: 0.3, depthM: 0.2, raisedM }];
        const fixings = [{ id: 'f1', spacerM: raisedM }];
        for (const piece of riserPieces({ ...board, thicknessM, placements, fixings })) {
          expect(Math.abs(piece.makesM + piece.packM - raisedM)).toBeLessThanOrEqual(0.0005 + 1e-9);
          expect(piece.packM).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
});
