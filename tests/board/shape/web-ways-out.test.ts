import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Side } from '../../../lib/board/layout/item.ts';
import { outlineFaults } from '../../../lib/board/shape/outline-faults.ts';
import type { WebGround } from '../../../lib/board/shape/web-ways-out.ts';
import { inWords } from '../in-words.ts';
import { mm, shapeOf } from '../shapes.ts';

const rules = { webGoodM: 0.025, webStopM: 0.012, holeToEdgeM: 0, holeToCornerM: 0 };
const round = (x: number, y: number, diameter: number) => {
  return { cut: 'hole', x: mm(x), y: mm(y), diameter: mm(diameter), purpose: 'wire' };
};
const rectangle = (width: number, height: number) => ({ width: mm(width), height: mm(height) });

/** What is told of the narrowest web of a rectangle with holes, in millimetres. */
function told(
  size: readonly [number, number],
  cuts: readonly object[],
  ground: WebGround | null = null,
  webs = rules,
) {
  const [fault] = outlineFaults(shapeOf({ rectangle: rectangle(...size), cuts }), webs, ground);
  const text = (words: string) => words.replaceAll(/ \([^)]*in\)/g, '').replaceAll('.0 mm', ' mm');
  return { message: text(inWords(fault?.message)), remedy: text(inWords(fault?.remedy)) };
}

// All by plane geometry: a web is as wide as the middles stand apart, less the radii.
describe('the way out of a narrow web', () => {
  it('moves a hole away from the edge that it is told with, by what the good width lacks', () => {
    expect(told([600, 400], [round(16, 200, 10)])).toEqual({
      message: 'only 11 mm of board is left between hole-1 and the left edge; 12 mm is needed',
      remedy: 'move hole-1 14 mm to the right',
    });
    expect(told([600, 400], [round(300, 375, 10)]).remedy).toBe('move hole-1 5 mm down');
  });

  it('makes a hole smaller where that leaves a hole, and does not move it where another edge is as near', () => {
    expect(told([600, 64], [round(300, 32, 20)]).remedy).toBe('make hole-1 at most 14 mm wide');
  });

  it('moves one of two holes from the other, across both axes where they stand askew', () => {
    // 3-4-5: 50 mm apart, webs of 10 mm: 15 mm more are 9 across and 12 up.
    expect(told([600, 400], [round(300, 200, 40), round(330, 240, 40)]).remedy).toBe(
      'move hole-1 9 mm to the left and 12 mm down; or move hole-2 9 mm to the right and 12 mm up',
    );
  });

  it('tells that nothing helps by itself where neither does', () => {
    expect(told([600, 24], [round(300, 12, 10)]).remedy).toMatch(/^neither of the two mends it by itself/);
  });

  it('cuts a neck between two cuts less deep', () => {
    const notch = (edge: string, depth: number) => {
      return { cut: 'notch', edge, offset: mm(300), width: mm(60), depth: mm(depth) };
    };
    expect(told([600, 400], [notch('top', 200), notch('bottom', 190)])).toEqual({
      message: 'only 10 mm of board is left between two stretches of the edge; 12 mm is needed',
      remedy: 'cut 15 mm less deep at this neck',
    });
  });
});

// What is told is done as it is told, by the reader of it: no web of the hole is then narrower than the good width.
it('leaves nothing to be told of a hole that is moved as told, wherever it stands', () => {
  const at = fc.integer({ min: 8, max: 50 });
  const strict = { ...rules, webStopM: rules.webGoodM };
  let tried = 0;
  fc.assert(
    fc.property(at, at, fc.boolean(), (x, y, second) => {
      const others = second ? [round(x + 30, y + 10, 6)] : [];
      const { remedy } = told([600, 400], [round(x, y, 10), ...others], null, strict);
      const move = /^move hole-1 ([^;]*)/.exec(remedy)?.[1];
      if (move === undefined) return;
      tried += 1;
      const by = (toward: string, back: string) =>
        Number(new RegExp(`([\\d.]+) mm ${toward}`).exec(move)?.[1] ?? 0) -
        Number(new RegExp(`([\\d.]+) mm ${back}`).exec(move)?.[1] ?? 0);
      const moved = round(x + by('to the right', 'to the left'), y + by('up', 'down'), 10);
      const after = told([600, 400], [moved, ...others], null, strict);
      expect(after.message, remedy).not.toContain('hole-1');
    }),
    { numRuns: 60, seed: 7 },
  );
  expect(tried).toBeGreaterThan(20);
});

describe('the way out of a narrow web beside a fixing', () => {
  const ground = (
    toSpaceEdgeM: number,
    free: { moved: boolean; grown: readonly Side[]; spacer?: string },
  ): WebGround => ({
    ...{ board: 'main', space: 'well' },
    points: new Map([['hole-1', { point: 'p1', toSpaceEdgeM }]]),
    isFreeMoved: ({ xM, yM }) => free.moved && xM < 0 && yM === 0,
    isFreeGrown: (growth) => growth.every(({ side }) => free.grown.includes(side)),
    spacerToGrow: () => free.spacer ?? null,
  });
  const near = (of: WebGround) => told([600, 400], [round(20, 200, 10)], of);

  it('moves the board to the other side, or makes it larger there, as its space lets it', () => {
    const free = ground(0.1, { moved: true, grown: ['left'] });
    expect(near(free)).toEqual({
      message:
        'only 15 mm of board is left between the fixing hole-1 at p1 and the left edge; 25 mm is needed',
      remedy:
        'move main in well 10 mm to the left; or make main 10 mm larger at its left edge; or use another sound point than p1 for hole-1, or leave hole-1 out',
    });
    const wall = ground(0.1, { moved: false, grown: ['right', 'top', 'bottom'] });
    expect(near(wall).remedy).toBe('use another sound point than p1 for hole-1, or leave hole-1 out');
  });

  it('makes it larger on a spacer that passes over what is in the way, where it is not free as it stands', () => {
    const lifted = ground(0.1, { moved: false, grown: [], spacer: '26 mm' });
    expect(near(lifted).remedy).toBe(
      'make main 10 mm larger at its left edge, with spacer: 26 mm to pass over what is in the way; or use another sound point than p1 for hole-1, or leave hole-1 out',
    );
  });

  // 20 mm to the left edge and 22 mm to the lower one, less the radius of 5 mm: 10 mm and 8 mm are lacking.
  it('tells each edge that is too near at once, and no way that mends but one of them', () => {
    const corner = (free: { moved: boolean; grown: readonly Side[] }) =>
      told([600, 400], [round(20, 22, 10)], {
        ...ground(0.1, free),
        isFreeMoved: ({ xM, yM }) => free.moved && xM < 0 && yM < 0,
      });
    expect(corner({ moved: true, grown: ['left', 'bottom'] })).toEqual({
      message:
        'only 15 mm of board is left between the fixing hole-1 at p1 and the left edge, 17 mm between it and the bottom edge; 25 mm is needed',
      remedy:
        'move main in well 10 mm to the left and 8 mm down; or make main 10 mm larger at its left edge and 8 mm at its bottom edge; or use another sound point than p1 for hole-1, or leave hole-1 out',
    });
    const one = 'use another sound point than p1 for hole-1, or leave hole-1 out';
    expect(corner({ moved: false, grown: ['left'] }).remedy).toBe(one);
  });

  it('tells the good width too where only one of the edges stands under the least', () => {
    expect(told([600, 400], [round(16, 22, 10)])).toEqual({
      message:
        'only 11 mm of board is left between hole-1 and the left edge, 17 mm between it and the bottom edge; 12 mm is needed, and 25 mm is good',
      remedy: 'move hole-1 14 mm to the right and 8 mm up',
    });
  });

  it('tells a way out of one hole while another one stands as near to its own edge', () => {
    const free = ground(0.1, { moved: false, grown: ['left'] });
    expect(told([600, 400], [round(20, 200, 10), round(300, 22, 10)], free).remedy).toMatch(
      /^make main 10 mm larger at its left edge; or use another/,
    );
  });

  // A hole of 10 mm whose middle is 29.9 mm from the edge of its space leaves 24.9 mm at most, whatever the board.
  it('tells where the point itself stands too near for any board, and only there', () => {
    const none = { moved: false, grown: [] };
    expect(near(ground(0.0299, none)).remedy).toMatch(
      /no larger board mends it, since p1 itself is 29\.9 mm from the edge of well$/,
    );
    expect(near(ground(0.0301, none)).remedy).not.toMatch(/no larger board/);
  });
});
