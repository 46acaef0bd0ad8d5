import { describe, expect, test } from 'vitest';
import type { PlanBoard } from '../../../lib/model/plan/index.ts';
import { about } from '../case.ts';
import { board, space } from '../changes.ts';
import { found } from '../found.ts';
import { route } from '../plan-board.ts';

type Chosen = PlanBoard['placements'][number]['chosen'];

/** What is told to do of a signal 50 mm beside power, on a board of 500 by 300 mm whose parts stand as they were chosen. */
const remedies = (...chosen: readonly Chosen[]) => remediesWith(false, ...chosen);

/** The same, with or without a brace that stands out of the wall of its space. */
const remediesWith = (braced: boolean, ...chosen: readonly Chosen[]) =>
  found(
    'power-near-signal-on-board',
    about({
      content: (content) => {
        if (braced)
          space(content).obstacles = {
            brace: {
              x: '0 mm',
              y: '0 mm',
              width: '40 mm',
              height: '60 mm',
              'stands-out': '50 mm',
              what: 'brace',
            },
          };
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

  test('is told to give the board more room where they are proposed already', () => {
    expect(remedies('computed', 'computed')).toEqual([
      expect.stringMatching(/^its places are proposed, and on 500 mm .* by 300 mm .* make main larger/),
    ]);
  });

  test('is not told to make the board larger where something in its space may be in the way', () => {
    const [remedy] = remediesWith(true, 'computed');
    expect(remedy).toMatch(/leads them apart: have the signal leave over another edge/);
    expect(remedy).not.toContain('larger');
  });
});
