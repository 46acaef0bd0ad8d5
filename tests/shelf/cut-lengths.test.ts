import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutLengths } from '../../lib/shelf/cut-lengths.ts';

const ft = 0.3048;
const reels = (...lengths: readonly number[]) => lengths.map((freeM) => ({ offCut: null, freeM }));
const offCut = (name: string, freeM: number) => ({ offCut: name, freeM });
const cutsOf = ({ lengths }: ReturnType<typeof cutLengths>) => lengths.map(({ cutsM }) => cutsM);

describe('cuts from the lengths on the shelf', () => {
  test('two ends of 8 ft are not 14 ft', () => {
    expect(cutLengths(reels(8 * ft, 8 * ft), [14 * ft]).uncut).toEqual([14 * ft]);
    // The shortest reel that still gives a cut gives it, so that long ones stay long.
    expect(cutsOf(cutLengths(reels(30 * ft, 9 * ft), [8 * ft]))).toEqual([[], [8 * ft]]);
    expect(cutLengths(reels(8 * ft, 8 * ft), [7 * ft, 7 * ft]).uncut).toEqual([]);
    expect(cutLengths(reels(14 * ft), [7 * ft, 7 * ft]).uncut).toEqual([]);
  });

  test('a short cut comes from a short end, so that the long reel is left for the long cut', () => {
    expect(cutLengths(reels(20 * ft, 5 * ft), [4 * ft, 20 * ft]).uncut).toEqual([]);
  });

  test('an off-cut goes before a reel where it reaches, a longer one than the end of a reel too', () => {
    const shelf = [offCut('c1', 10 * ft), ...reels(8 * ft, 30 * ft)];
    expect(cutsOf(cutLengths(shelf, [7 * ft]))).toEqual([[7 * ft], [], []]);
    expect(cutsOf(cutLengths(shelf, [10 * ft]))).toEqual([[10 * ft], [], []]);
    expect(cutsOf(cutLengths(shelf, [10.1 * ft]))).toEqual([[], [], [10.1 * ft]]);
    expect(cutsOf(cutLengths([offCut('c1', 10 * ft), offCut('c2', 7.5 * ft)], [7 * ft]))).toEqual([
      [],
      [7 * ft],
    ]);
  });

  test('what is left uncut has no length that would still give it, and nothing is cut twice', () => {
    const some = fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 6 });
    fc.assert(
      fc.property(some, some, some, (offCuts, ends, cuts) => {
        const shelf = [...offCuts.map((freeM, at) => offCut(`c${at}`, freeM)), ...reels(...ends)];
        const { lengths, uncut } = cutLengths(shelf, cuts);
        const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0);
        for (const { from, cutsM } of lengths) {
          expect(sum(cutsM)).toBeLessThanOrEqual(from.freeM);
          for (const cut of uncut) expect(from.freeM - sum(cutsM)).toBeLessThan(cut);
        }
        expect([...lengths.flatMap(({ cutsM }) => cutsM), ...uncut].sort()).toEqual([...cuts].sort());
        expect(cutLengths([...shelf, ...reels(...uncut)], cuts).uncut).toEqual([]);
      }),
    );
  });
});
