import { describe, expect, it } from 'vitest';
import { NameTable } from '../../../lib/power/network/name-table.ts';

describe('a name table', () => {
  it('numbers names in the order in which they are met, each once', () => {
    const table = new NameTable();
    table.begin();
    expect(['a', 'b', 'a', 'c'].map((name) => table.numberOf(name))).toEqual([0, 1, 0, 2]);
    expect(table.count).toBe(3);
  });

  it('forgets the numbers of the network before, also of names that both have', () => {
    const table = new NameTable();
    table.begin();
    for (const name of ['a', 'b', 'c']) table.numberOf(name);
    table.begin();
    expect(table.find('c')).toBe(-1);
    expect(['c', 'd', 'a'].map((name) => table.numberOf(name))).toEqual([0, 1, 2]);
    expect([table.find('a'), table.find('b'), table.find('never met')]).toEqual([2, -1, -1]);
  });

  it('numbers as before once it has held so many names that it was emptied', () => {
    const table = new NameTable();
    const many = Array.from({ length: 70_000 }, (_, k) => `node ${k}`);
    for (const round of [1, 2, 3]) {
      table.begin();
      expect(
        many.every((name, k) => table.numberOf(name) === k),
        `round ${round}`,
      ).toBe(true);
      table.begin();
      expect([table.numberOf('node 5'), table.numberOf('node 4')]).toEqual([0, 1]);
    }
  });
});
