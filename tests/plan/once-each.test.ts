import { expect, test } from 'vitest';
import { onceEach } from '../../lib/plan/once-each.ts';

test('work is done once for each key, also where nothing comes of it, and anew for another', () => {
  const asked: string[] = [];
  const answer = onceEach(
    (word: string, times: number) => {
      asked.push(word);
      return times > 0 ? word.repeat(times) : undefined;
    },
    (word, times) => `${word}\n${times}`,
  );
  expect([answer('a', 2), answer('a', 2), answer('a', 3), answer('b', 0), answer('b', 0)]).toEqual([
    'aa',
    'aa',
    'aaa',
    undefined,
    undefined,
  ]);
  expect(asked).toEqual(['a', 'a', 'b']);
});
