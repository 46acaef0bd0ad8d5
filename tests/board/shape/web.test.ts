import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineFaults } from '../../../lib/board/shape/outline-faults.ts';
import { holeRooms, narrowestWeb } from '../../../lib/board/shape/web.ts';
import { outsideCheck } from '../../outside-check.ts';
import { inWords } from '../in-words.ts';
import { mm, outlines, shapeOf } from '../shapes.ts';
import { usualWebs } from '../usual-board.ts';
import { mirrorLoop } from './mirror-loop.ts';

const byHand = outsideCheck('webs-by-trial');

const rectangle = { width: '600 mm', height: '400 mm' };

describe('the narrowest web', () => {
  it('of a plain rectangle is its smaller side', () => {
    expect(byHand.differs(narrowestWeb(shapeOf({ rectangle })).value, 0.4)).toBeCloseTo(0.4, 9);
  });

  it('is found between two openings, round or straight', () => {
    const cuts = [
      { cut: 'window', x: '100 mm', y: '100 mm', width: '100 mm', height: '100 mm' },
      { cut: 'slot', x: '300 mm', y: '150 mm', length: '160 mm', width: '30 mm' },
    ];
    const { web } = narrowestWeb(shapeOf({ rectangle, cuts }));
    expect(byHand.differs(web?.widthM ?? 0, 0.02)).toBeCloseTo(0.02, 5);
  });

  it('is found as a neck between two notches', () => {
    const cuts = [
      { cut: 'notch', edge: 'top', offset: '300 mm', width: '60 mm', depth: '200 mm' },
      { cut: 'notch', edge: 'bottom', offset: '330 mm', width: '60 mm', depth: '190 mm' },
    ];
    const { web } = narrowestWeb(shapeOf({ rectangle, cuts }));
    expect(web).toMatchObject({ widthM: expect.closeTo(0.01, 9), between: ['edge', 'edge'] });
  });

  it('does not take the mouth of a notch or the point of a corner for a web', () => {
    const cuts = [
      { cut: 'notch', edge: 'top', offset: '300 mm', width: '8 mm', depth: '100 mm' },
      { cut: 'corner', corner: 'lower-left', dx: '5 mm', dy: '5 mm' },
    ];
    // 300 mm left of the notch, 292 mm right of it, 300 mm below it.
    expect(byHand.differs(narrowestWeb(shapeOf({ rectangle, cuts })).value, 0.292)).toBeCloseTo(0.292, 6);
  });

  it('is the same mirrored', () => {
    fc.assert(
      fc.property(outlines, (outline) => {
        const shape = shapeOf(outline);
        const flip = (ring: readonly { xM: number; yM: number }[]) =>
          ring.map(({ xM, yM }) => ({ xM: -xM, yM })).reverse();
        const mirrored = {
          ...shape,
          outline: mirrorLoop(shape.outline, 0),
          cutouts: shape.cutouts.map((loop) => mirrorLoop(loop, 0)),
          region: shape.region.map(({ outer, openings }) => ({
            outer: flip(outer),
            openings: openings.map(flip),
          })),
        };
        expect(narrowestWeb(mirrored).value).toBeCloseTo(narrowestWeb(shape).value, 6);
      }),
      { numRuns: 25, seed: 4 },
    );
  });
});

describe('holes near edges and corners', () => {
  // A rim of 5 mm round a centre 2 mm from the edge stands 3 mm past it.
  it('past the edge leave no board, and no length below nothing is told', () => {
    const shape = shapeOf({
      rectangle,
      cuts: [{ cut: 'hole', x: '20 mm', y: '200 mm', diameter: '10 mm', purpose: 'wire' }],
    });
    const holes = shape.holes.map((hole) => ({ ...hole, xM: 0.002 }));
    const told = outlineFaults({ ...shape, holes }, usualWebs, null);
    expect(told.map(({ rule }) => rule)).toEqual(['narrow-web']);
    expect(inWords(told[0]?.message)).toMatch(/^no board is left between .* run into each other by 3\.0 mm/);
    expect(told.map(({ message }) => inWords(message)).join()).not.toMatch(/ -\d/);
  });

  it('are measured from the rim', () => {
    const cuts = [{ cut: 'hole', x: '30 mm', y: '40 mm', diameter: '20 mm', purpose: 'fixing' }];
    const shape = shapeOf({ rectangle, cuts });
    expect(holeRooms(shape)).toEqual([
      { hole: 'hole-1', toEdgeM: expect.closeTo(0.02, 9), toCornerM: expect.closeTo(0.04, 9) },
    ]);
  });

  it('are faults below the house distances, at 11.9 mm and not at 12 mm', () => {
    const at = (x: number) =>
      outlineFaults(
        shapeOf({
          rectangle,
          cuts: [{ cut: 'hole', x: mm(x), y: '200 mm', diameter: '10 mm', purpose: 'wire' }],
        }),
        { webGoodM: 0.012, webStopM: 0.012, holeToEdgeM: 0.012, holeToCornerM: 0.025 },
        null,
      ).map(({ rule, level }) => [rule, level]);
    expect(at(17)).toEqual([]);
    expect(at(16.9)).toEqual([
      ['narrow-web', 'stop'],
      ['hole-near-edge', 'caution'],
    ]);
  });
});
