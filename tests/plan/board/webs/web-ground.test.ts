import { describe, expect, test } from 'vitest';
import { whyNotFixed } from '../../../../lib/propose/laying/fixings.ts';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { onFourPoints, stocked } from '../../power/four-points.ts';
import { inVehicle } from '../../shop-changes.ts';
import { oneBoard } from '../one-board.ts';

/** What is told of the narrowest web, the point of the first fixing being so far from the left edge of its space. */
function toldAt(x: string, ...more: readonly Change[]): string {
  const shop = [...stocked({ id: 'ply-12', mm: 12, pieces: 1 }), ...onFourPoints(['sheet: ply-12'])];
  const { remarks } = smallPlan(...shop, inVehicle('p1: { x: 50 mm', `p1: { x: ${x}`), ...more);
  const remedies = remarks.filter(({ rule }) => rule === 'narrow-web');
  return remedies.map(({ remedy }) => remedy.replaceAll(/ \([^)]*in\)/g, '')).join();
}

// The board lies 10 mm from the left edge of its space, its bolt is 6.4 mm wide, a web of 25 mm is good.
describe('a fixing too near to the edge of its board', () => {
  test('is told with how far the board moves and grows, as its space lets it', () => {
    // 36 mm less 10 mm less 3.2 mm are 22.8 mm.
    expect(toldAt('36 mm')).toBe(
      'move main in well 2.2 mm to the left; or make main 2.2 mm larger at its left edge; or use another sound point than p1 for a, or leave a out',
    );
    expect(toldAt('38.2 mm')).toBe('');
  });

  test('is told with the least where the space has no room for what is good', () => {
    // 24 mm less 10 mm less 3.2 mm are 10.8 mm: 25 mm are beyond the edge of the space, and 12 mm are not.
    expect(toldAt('24 mm')).toMatch(/^move main in well 1\.2 mm to the left; or make main 1\.2 mm larger/);
  });

  test('is told the spacer on which its board grows over what stands out beside it', () => {
    const beside = (standsOut: string) =>
      inVehicle(
        '    sound-points:\n',
        `    obstacles:\n      rib: { what: rib, x: 0 mm, y: 100 mm, width: 3 mm, height: 20 mm, stands-out: ${standsOut} }\n    sound-points:\n`,
      );
    // The rib is 7 mm off the board and 4.8 off the larger one, where 6 mm are asked for; three layers of the sheet pass over it.
    expect(toldAt('36 mm', beside('20 mm'))).toMatch(
      /^make main 2\.2 mm larger at its left edge, with spacer: 36 mm to pass over what is in the way; or use/,
    );
    expect(toldAt('36 mm', beside('190 mm'))).toMatch(/^use another sound point/);
  });

  test('that stands too near to the edge of its space is told as what no larger board mends', () => {
    expect(toldAt('14 mm')).toBe(
      'use another sound point than p1 for a, or leave a out; no larger board mends it, since p1 itself is 14 mm from the edge of well',
    );
  });
});

// A bolt of M6 goes through a hole of 6.4 mm: its rim is 12 mm from the edge where its middle is 15.2 mm.
test('a fixing is proposed where the hole of its bolt, not its thread, is far enough from the edge', () => {
  const why = (x: string) => {
    const { job, board } = oneBoard(undefined, inVehicle('p1: { x: 50 mm', `p1: { x: ${x}`));
    const point = board.space['sound-points'].p1;
    return point && whyNotFixed(job, board.given, point);
  };
  expect(why('25.15 mm')).toBe('edge');
  expect(why('25.25 mm')).toBeNull();
});
