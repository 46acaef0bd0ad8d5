import { expect, test } from 'vitest';
import { webOf } from '../../../lib/rules/folding/bonds.ts';
import { boardToBeMoved, liftedByCause } from '../../../lib/rules/folding/bonds-of-places.ts';
import { about } from '../case.ts';
import { aFinding } from './a-finding.ts';

const web = (...findings: ReturnType<typeof aFinding>[]) => webOf(about(), findings);
const advised = (path: string) => ({ advice: [[{ file: 'job.yaml', path, text: '13 mm' }]] });

test('what stands in the way of a board follows from its place only where another one is told', () => {
  const before = aFinding('obstacle-in-the-way', ['amp', 'rib', 'main']);
  const unheld = (path: string) => aFinding('held-by-trim', ['main'], advised(path));
  expect(boardToBeMoved(unheld('/boards/main/at'), before, web())).toBe(true);
  expect(boardToBeMoved(aFinding('held-by-trim', ['main']), before, web())).toBe(false);
  expect(boardToBeMoved(unheld('/boards/other/at'), before, web())).toBe(false);
  expect(
    boardToBeMoved(unheld('/boards/main/at'), aFinding('obstacle-in-the-way', ['b', 'rib', 'other']), web()),
  ).toBe(false);
});

test('a part before the same thing as its board is lifted with it, and never the graver by the milder', () => {
  const board = aFinding('obstacle-in-the-way', ['main', 'rib', 'main'], advised('/boards/main/spacer'));
  const amp = aFinding('obstacle-in-the-way', ['amp', 'rib', 'main'], advised('/boards/main/spacer'));
  const jack = aFinding('obstacle-in-the-way', ['amp', 'jack', 'main']);
  expect(liftedByCause(board, amp, web(board, amp))).toBe(true);
  expect(liftedByCause(amp, board, web(board, amp))).toBe(false);
  expect(liftedByCause(board, jack, web(board, jack))).toBe(false);
  const mild = { ...board, level: 'caution' } as const;
  expect(liftedByCause(mild, amp, web(mild, amp))).toBe(false);
  const untold = { ...board, advice: [] };
  expect(liftedByCause(untold, amp, web(untold, amp))).toBe(false);
});
