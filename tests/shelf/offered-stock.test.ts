import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offeredStock } from '../../lib/shelf/offered-stock.ts';
import { piecesOf, shelfLengths } from '../../lib/shelf/shelf-lengths.ts';
import { cuts, ft, metres, promisedTo, reelStock } from './takes.ts';

const lengthsOf = (stock: ReturnType<typeof offeredStock>['stock'], part = 'red') =>
  shelfLengths(stock[part]).map(({ offCut, freeM }) => [offCut, Number((freeM / ft).toFixed(4))]);

describe('what a shelf offers beside what is promised', () => {
  test('pieces less those that released jobs take, with to whom', () => {
    const { stock, promised } = offeredStock({ lug: { pieces: 5, 'off-cuts': {} } }, [
      promisedTo('one', { pieces: { lug: 2 } }),
      promisedTo('two', { pieces: { lug: 1, other: 1 } }),
    ]);
    expect(piecesOf(stock.lug)).toBe(2);
    expect(promised.lug).toMatchObject({
      unit: 'piece',
      over: 0,
      pieces: 3,
      to: [
        { job: 'one', revision: 'A', quantity: 2 },
        { job: 'two', revision: 'A', quantity: 1 },
      ],
    });
    expect(promised.other).toMatchObject({ over: 1, pieces: 0 });
    expect(stock.other).toBeUndefined();
  });

  test.each([
    [3, 0, 0],
    [2, 0, 1],
    [4, 1, 0],
  ])('of %i pieces, 3 promised: %i offered, %i too many', (pieces, offered, over) => {
    const { stock, promised } = offeredStock({ lug: { pieces, 'off-cuts': {} } }, [
      promisedTo('one', { pieces: { lug: 3 } }),
    ]);
    expect(piecesOf(stock.lug)).toBe(offered);
    expect(promised.lug?.over).toBe(over);
  });

  test('a length of the reel that the pick list of its job names, though another would do', () => {
    const one = promisedTo('one', {
      cuts: cuts('red', { a: 6 * ft, b: 4 * ft }),
      lengths: [{ part: 'red', offCut: null, lengthM: 42 * ft, cutsM: [6 * ft, 4 * ft] }],
    });
    expect(lengthsOf(offeredStock({ red: reelStock([10 * ft, 42 * ft]) }, [one]).stock)).toEqual([
      [null, 10],
      [null, 32],
    ]);
    // Counted anew since: shared out as a pick list would.
    const recounted = offeredStock({ red: reelStock([10 * ft, 41 * ft]) }, [one]);
    expect(lengthsOf(recounted.stock)).toEqual([
      [null, 0],
      [null, 41],
    ]);
    expect(recounted.promised.red?.over).toBe(0);
  });

  test.each([
    [42 * ft, 42],
    // 42 ft are 12.8016 m, which a pick list tells as 12.802 m; a millimetre more is another reel.
    [12.802, 42],
    [12.8023, 10],
  ])('a reel that a pick list tells as %d m is cut where it is that of 42 ft', (lengthM, cutFt) => {
    const one = promisedTo('one', {
      cuts: cuts('red', { a: 6 * ft }),
      lengths: [{ part: 'red', offCut: null, lengthM, cutsM: [6 * ft] }],
    });
    expect(lengthsOf(offeredStock({ red: reelStock([10 * ft, 42 * ft]) }, [one]).stock)).toEqual(
      [10, 42].map((reel) => [null, reel === cutFt ? reel - 6 : reel]),
    );
  });

  test('one reel twice where two jobs are to cut from it, and what is more than it has is told', () => {
    const from = (job: string, lengthM: number) =>
      promisedTo(job, {
        cuts: cuts('red', { a: lengthM }),
        lengths: [{ part: 'red', offCut: null, lengthM: 20 * ft, cutsM: [lengthM] }],
      });
    const enough = offeredStock({ red: reelStock([20 * ft]) }, [from('one', 12 * ft), from('two', 8 * ft)]);
    expect(lengthsOf(enough.stock)).toEqual([[null, 0]]);
    expect(enough.promised.red?.over).toBe(0);
    const short = offeredStock({ red: reelStock([20 * ft]) }, [from('one', 12 * ft), from('two', 8.1 * ft)]);
    expect(lengthsOf(short.stock)).toEqual([[null, 8]]);
    expect(short.promised.red?.over).toBeCloseTo(8.1 * ft, 5);
  });

  test('off-cuts of a reel by their names, before the reel', () => {
    const { stock, promised } = offeredStock({ red: reelStock([30 * ft], { c1: 9 * ft }) }, [
      promisedTo('one', { cuts: cuts('red', { a: 7 * ft }) }),
    ]);
    expect(lengthsOf(stock)).toEqual([
      ['c1', 2],
      [null, 30],
    ]);
    expect(promised.red?.offCutsM.c1).toBeCloseTo(7 * ft, 5);
  });

  test('off-cuts of a sheet by their names; one that is not there any more is a whole sheet', () => {
    const offCut = { width: metres(0.4), height: metres(0.3), pieces: 1 };
    const one = promisedTo('one', { sheets: [{ sheet: 'ply', offCut: 'b1', quantity: 1 }] });
    const there = offeredStock({ ply: { pieces: 2, 'off-cuts': { b1: offCut } } }, [one]);
    expect(there.stock.ply).toEqual({ pieces: 2, 'off-cuts': { b1: { ...offCut, pieces: 0 } } });
    const gone = offeredStock({ ply: { pieces: 2, 'off-cuts': {} } }, [one]);
    expect(piecesOf(gone.stock.ply)).toBe(1);
  });

  test('what is offered and what is promised are what is there, and nothing is offered twice', () => {
    const feet = fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 5 });
    fc.assert(
      fc.property(feet, fc.array(feet, { maxLength: 4 }), (reels, jobs) => {
        const promises = jobs.map((own, at) =>
          promisedTo(`job-${at}`, {
            cuts: cuts('red', Object.fromEntries(own.map((one, n) => [`w${n}`, one]))),
          }),
        );
        const { stock, promised } = offeredStock({ red: reelStock(reels) }, promises);
        const { reelsM = [], over = 0 } = promised.red ?? {};
        const left = shelfLengths(stock.red).map(({ freeM }) => freeM);
        for (const [at, one] of reels.entries()) {
          expect(left[at]).toBeGreaterThanOrEqual(0);
          expect((left[at] ?? 0) + (reelsM[at] ?? 0)).toBeCloseTo(one, 5);
        }
        const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0);
        expect(sum(reelsM) + over).toBeCloseTo(sum(jobs.flat()), 5);
      }),
    );
  });

  test('an empty promise leaves the shelf as it is', () => {
    const stock = { red: reelStock([3]), lug: { pieces: 4, 'off-cuts': {} } };
    expect(offeredStock(stock, [])).toEqual({ stock, promised: {} });
  });
});
