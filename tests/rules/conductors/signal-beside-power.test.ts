import { describe, expect, test } from 'vitest';
import type { PlanBoard } from '../../../lib/model/plan/index.ts';
import { about } from '../case.ts';
import { board, space } from '../changes.ts';
import { found } from '../found.ts';
import { route } from '../plan-board.ts';

type Chosen = PlanBoard['placements'][number]['chosen'];

/** What is told to do of a signal 50 mm beside power, on a board of 500 by 300 mm whose parts stand as they were chosen. */
const remedies = (...chosen: readonly Chosen[]) => remediesWith(null, ...chosen);

/** The same, with or without a brace that stands out of the wall of its space. */
const remediesWith = (
  brace: readonly [x: string, y: string, width: string, height: string] | 'narrow' | null,
  ...chosen: readonly Chosen[]
) =>
  found(
    'power-near-signal-on-board',
    about({
      content: (content) => {
        if (!brace) return;
        if (brace === 'narrow') {
          space(content).outline = [
            ['0 mm', '0 mm'],
            ['512 mm', '0 mm'],
            ['512 mm', '308 mm'],
            ['0 mm', '308 mm'],
          ];
          return;
        }
        const [x, y, width, height] = brace;
        space(content).obstacles = { brace: { x, y, width, height, 'stands-out': '50 mm', what: 'brace' } };
      },
      plan: (plan) => {
        const own = board(plan);
        own.placements = chosen.map((one) => ({
          item: 'amp',
          xM: 0.1,
          yM: 0.1,
          turnDeg: 0,
          widthM: 0.2,
          depthM: 0.1,
          heightM: 0.05,
          raisedM: 0,
          keepClear: [],
          chosen: one,
        }));
        own.routes = [
          route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
          route('signal-1', 'signal', [0.1, 0.15], [0.4, 0.15]),
        ];
      },
    }),
  ).map(({ remedy }) => remedy);

describe('signal beside power on a board', () => {
  test('is told to have the places proposed where one is written', () => {
    expect(remedies('given', 'computed')).toEqual([
      expect.stringMatching(/^leave at: and turn: of the parts out/),
    ]);
  });

  // The space is 800 mm by 500 mm with a gap of 6 mm, and the board lies in its corner: 31.26 in by 19.45 in are left.
  test('is told to give the board more room where they are proposed already, with the size that there is', () => {
    const [remedy] = remedies('computed', 'computed');
    expect(remedy).toMatch(
      /^its places are proposed, and on 500 mm .* by 300 mm .*: make main larger, up to at: /,
    );
    expect(remedy).toContain(
      'at: { x: 0 in, y: 0 in } with outline: { rectangle: { width: 31 1/4 in, height: 19 3/8 in } }',
    );
  });

  // A brace beside it, past the gap of 6 mm: nothing is gained across, and 500 mm less the gap upwards.
  test('is told of the room that is left beside what stands out of the wall', () => {
    const [remedy] = remediesWith(['506 mm', '0 mm', '200 mm', '500 mm'], 'computed');
    expect(remedy).toContain('width: 19 5/8 in, height: 19 3/8 in');
  });

  test('is told that no larger board fits where none does', () => {
    const [none] = remediesWith('narrow', 'computed');
    expect(none).toContain(
      'no larger board fits where it lies in well; have the signal leave over another edge',
    );
  });

  test('is not told to make the board larger where something in its space may be in the way', () => {
    const [remedy] = remediesWith(['0 mm', '0 mm', '40 mm', '60 mm'], 'computed');
    expect(remedy).toMatch(/leads them apart: have the signal leave over another edge/);
    expect(remedy).not.toContain('larger');
  });
});
