import { describe, expect, test } from 'vitest';
import type { JobStanding, ReleasedTakes, ShelfTakes } from '../../lib/model/content/promised.ts';
import { inTurn, promisedBefore, promiseOf, sheetSubject } from '../../lib/shelf/promising.ts';
import { cuts, takes } from './takes.ts';

const released = (revision: string, said: Partial<ShelfTakes> = {}): ReleasedTakes => {
  return { revision, issuedOn: '2026-02-09', takes: takes(said) };
};
const standing = (status: string | null, revision: string, ...installed: readonly string[]): JobStanding => ({
  status,
  revision,
  revisions: ['A', 'B', 'C'].map((one) => ({ revision: one, isInstalled: installed.includes(one) })),
});

describe('a job is promised', () => {
  const [a, b] = [released('A', { pieces: { lug: 4 } }), released('B', { pieces: { lug: 6 } })];

  test.each<[string, readonly ReleasedTakes[], JobStanding, string | null]>([
    ['nothing before a release', [], standing('draft', 'A'), null],
    ['what it takes once it is released', [a], standing('released', 'A'), 'A'],
    ['that still while the next is drawn', [a], standing('draft', 'B'), 'A'],
    ['what the next takes in its place, once that is released', [a, b], standing('released', 'B'), 'B'],
    ['nothing once it is built in', [a], standing('installed', 'A'), null],
    ['nothing once it is built in, while the next is drawn', [a], standing('draft', 'B', 'A'), null],
    ['nothing once a later one is built in without a release', [a], standing('draft', 'C', 'B'), null],
    ['nothing where another job took its place', [a], standing('superseded', 'A'), null],
    ['what it takes where its file can not be read', [a], { ...standing(null, 'A'), revisions: [] }, 'A'],
  ])('%s', (_, own, where, expected) => {
    expect(promiseOf('job', own, where)?.revision ?? null).toBe(expected);
  });

  test('of a revision on one that is built in, what goes beyond that', () => {
    const built = released('A', {
      pieces: { lug: 4, amp: 1, ply: 1 },
      known: [
        { of: 'end feed 0', part: 'lug', count: 1, as: 'red 3' },
        { of: 'end feed 1', part: 'lug', count: 1, as: 'red 3' },
        { of: 'item amp', part: 'amp', count: 1, as: '' },
        { of: sheetSubject('ply'), part: 'ply', count: 1, as: 'cut so' },
      ],
      cuts: cuts('red', { feed: 3, ground: 1, sense: 2 }),
      sheets: [{ sheet: 'ply', offCut: 'b1', quantity: 1 }],
    });
    const next = (as: string) =>
      released('B', {
        pieces: { lug: 4, amp: 1, ply: 1, relay: 1 },
        known: [
          { of: 'end feed 0', part: 'lug', count: 1, as: 'red 3' },
          { of: 'end feed 1', part: 'lug', count: 1, as: 'red 3.5' },
          { of: 'item amp', part: 'amp', count: 1, as: '' },
          { of: sheetSubject('ply'), part: 'ply', count: 1, as },
        ],
        // A shorter one is there; a longer one is cut anew, and so is one of another wire.
        cuts: [...cuts('red', { feed: 2.9, ground: 1.1 }), ...cuts('blue', { sense: 2 })],
        sheets: [{ sheet: 'ply', offCut: 'b1', quantity: 1 }],
      });
    const promise = promiseOf('job', [built, next('cut so')], standing('released', 'B', 'A'));
    expect(promise).toMatchObject({
      revision: 'B',
      pieces: { lug: 3, relay: 1 },
      cuts: [
        { of: 'ground', lengthM: 1.1 },
        { of: 'sense', part: 'blue' },
      ],
      sheets: [],
    });
    const anew = promiseOf('job', [built, next('cut otherwise')], standing('released', 'B', 'A'));
    expect(anew?.pieces).toEqual({ lug: 3, ply: 1, relay: 1 });
    expect(anew?.sheets).toHaveLength(1);
  });
});

describe('before a job stand', () => {
  const at = (job: string, issuedOn: string) => ({ job, revision: 'A', issuedOn, ...takes({}) });
  const all = inTurn([at('c', '2026-02-09'), at('a', '2026-03-01'), at('b', '2026-02-09')]);
  const names = (...from: Parameters<typeof promisedBefore>) => promisedBefore(...from).map(({ job }) => job);

  test('the promises of all others, in their turn, and never its own', () => {
    expect(names(all, 'z', null)).toEqual(['b', 'c', 'a']);
    expect(names(all, 'b', null)).toEqual(['c', 'a']);
  });

  test('of a released one, those that had their turn before it', () => {
    expect(names(all, 'c', '2026-02-09')).toEqual(['b']);
    expect(names(all, 'a', '2026-03-01')).toEqual(['b', 'c']);
    expect(names(all, 'b', '2026-02-09')).toEqual([]);
  });
});
