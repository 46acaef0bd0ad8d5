import { describe, expect, test } from 'vitest';
import type { Item } from '../../../lib/board/layout/item.ts';
import { place } from '../../../lib/board/layout/placed.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { scoreLayout } from '../../../lib/board/layout/score/score-ledger.ts';
import { scoreBoard, searchLayouts, usualHouse, usualScore } from '../usual-board.ts';
import { plainShape } from './two-items.ts';

/** A part with a terminal on its left and one on its right. */
const part: Item = {
  id: 'amp',
  widthM: 0.1,
  depthM: 0.1,
  heightM: 0.05,
  massKg: 0,
  rooms: {},
  terminals: [
    { id: 'IN', side: 'left', alongM: 0.05, layer: 'power' },
    { id: 'OUT', side: 'right', alongM: 0.05, layer: 'power' },
  ],
};
const leaving = (terminal: 'IN' | 'OUT', diameterM?: number): Link => ({
  id: `to-${terminal}`,
  from: { item: 'amp', terminal },
  to: { exit: terminal === 'IN' ? 'left' : 'right' },
  layer: 'power',
  ...(diameterM !== undefined && { diameterM }),
});

const lengthOf = (link: Link): number => {
  const stands = place(part, { item: 'amp', xM: 0.3, yM: 0.2, turnDeg: 0, heightM: 0 }, usualScore.partGapM);
  return scoreLayout(scoreBoard(plainShape), [stands], [link], usualScore).parts.length;
};

describe('a wire counts for the more of its length the thicker it is', () => {
  const { thickM } = usualHouse;

  // The part stands 300 mm from the left edge: a wire straight out of it is as long.
  test.each([
    ['of no known diameter', undefined, 0.3],
    ['thinner than the house rule', 0.5 * thickM, 0.3],
    ['as thick', thickM, 0.3],
    ['twice as thick', 2 * thickM, 0.6],
    ['three times as thick', 3 * thickM, 0.9],
  ])('%s', (_, diameterM, countsM) => {
    expect(lengthOf(leaving('IN', diameterM))).toBeCloseTo(countsM, 9);
  });

  test('so that a part stands where its thick wire is short, whichever that is', () => {
    const xOf = (links: readonly Link[]): number => {
      const { proposals } = searchLayouts({ board: { shape: plainShape }, items: [part], given: [], links });
      return proposals[0]?.placements[0]?.xM ?? Number.NaN;
    };
    const right = xOf([leaving('IN'), leaving('OUT', 3 * thickM)]);
    const left = xOf([leaving('IN', 3 * thickM), leaving('OUT')]);
    expect(left).toBeLessThan(0.1);
    expect(right).toBeGreaterThan(0.6);
  });
});
