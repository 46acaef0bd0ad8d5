import { expect, test } from 'vitest';
import { boardLengths } from '../../../lib/plan/board/remark-words.ts';
import { oneBoard } from './one-board.ts';

test('a length in what is remarked of a board is told as the board, its space, or the part that it names has it', () => {
  const { job } = oneBoard();
  const told = (board: string, lengthM: number, ...named: readonly string[]) =>
    boardLengths(job, board, { path: '/nowhere' }, named)('told', lengthM);
  expect(told('main', 0.5)).toMatch(/^500 mm \(/);
  expect(told('main', 0.8)).toMatch(/^800 mm \(/);
  expect(told('main', 0.123)).toMatch(/^123 mm \(/);
  // Of no board the shop's own inches are left, but for what a part says that is named.
  expect(told('other', 0.123)).toMatch(/^\d.* in \(123 mm\)$/);
  expect(told('other', 0.1, 'amp')).toMatch(/^100 mm \(/);
});
