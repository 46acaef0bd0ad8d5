import { expect, test } from 'vitest';
import { traced } from '../../lib/model/trace.ts';
import { once } from '../../lib/plan/once-each.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';
import { planProposals } from '../../lib/plan/proposals.ts';

const working = { rule: 'sum', citation: 'arithmetic' };

test('a book has the traces in the order of their paths, whichever was written first, and the last of each', () => {
  const book = new PlanBook();
  for (const path of ['c', 'a', 'd', 'b', 'e']) expect(book.trace(path, traced(1, 'V', working))).toBe(1);
  book.trace('a', traced(2, 'V', working));
  expect(Object.entries(book.traces()).map(([path, { value }]) => `${path} ${value}`)).toEqual([
    'a 2',
    'b 1',
    'c 1',
    'd 1',
    'e 1',
  ]);
});

test('work is done when it is first asked for, once, and answers alike ever after', () => {
  let done = 0;
  const work = once(() => {
    done += 1;
    return [done];
  });
  expect(done).toBe(0);
  expect(work()).toBe(work());
  expect(work()).toEqual([1]);
});

test('a proposal is told with its id, where it would stand and what it would say', () => {
  const proposal = { rule: 'supply', reason: 'it reaches', mark: 'cp' } as const;
  expect(
    planProposals({ proposals: [{ ...proposal, path: ['links', 'feed-amp'], value: { from: 'bat.POS' } }] }),
  ).toEqual([{ id: 'links.feed-amp', ...proposal, path: ['links', 'feed-amp'], says: '{"from":"bat.POS"}' }]);
});
