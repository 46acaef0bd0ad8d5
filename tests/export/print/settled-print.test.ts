import { describe, expect, it } from 'vitest';
import type { AnchorPages } from '../../../lib/export/print/anchor-pages.ts';
import { settledPrint } from '../../../lib/export/print/settled-print.ts';

/** Prints by the book: the pages of each print in turn, the last of them from then on. */
function printing(turns: readonly AnchorPages[]) {
  const given: AnchorPages[] = [];
  const print = async (pages: AnchorPages) => {
    given.push(pages);
    return Uint8Array.of(given.length);
  };
  const read = async ([turn = 1]: Uint8Array) => turns[Math.min(turn, turns.length) - 1] ?? new Map();
  return { given, print, read };
}

const three: AnchorPages = new Map([['pick-list', 3]]);
const four: AnchorPages = new Map([['pick-list', 4]]);

describe('settledPrint', () => {
  it('prints twice where the numbers hold, the second time with them', async () => {
    const { given, print, read } = printing([three]);
    expect(await settledPrint(print, read)).toEqual(Uint8Array.of(2));
    expect(given).toEqual([new Map(), three]);
  });

  it('prints a third time where the numbers moved a page', async () => {
    const { given, print, read } = printing([three, four]);
    expect(await settledPrint(print, read)).toEqual(Uint8Array.of(3));
    expect(given).toEqual([new Map(), three, four]);
  });

  it('gives up rather than print a wrong number', async () => {
    const { given, print, read } = printing([three, four, three, four]);
    expect(await settledPrint(print, read)).toBeNull();
    expect(given).toHaveLength(3);
  });

  it('tells a sheet that is gone from one that is in its place', async () => {
    const { print, read } = printing([new Map([...three, ['labels', 5]]), three]);
    expect(await settledPrint(print, read)).toEqual(Uint8Array.of(3));
  });
});
