import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type NestPiece, type NestRules, nestPieces, type StockSheet } from '../../lib/board/nesting.ts';

const rules: NestRules = { kerfM: 0.003, trimM: 0.01, offCutM: 0.1 };
const sheet: StockSheet = { id: 'whole', sheet: 'ply', widthM: 2.44, heightM: 1.22, quantity: null };

const sizes = fc.record({
  widthM: fc.integer({ min: 30, max: 1200 }).map((mm) => mm / 1000),
  heightM: fc.integer({ min: 30, max: 1180 }).map((mm) => mm / 1000),
  count: fc.integer({ min: 1, max: 4 }),
  lies: fc.constantFrom('as-written', 'turned', 'either'),
});
const lists = fc
  .array(sizes, { minLength: 1, maxLength: 12 })
  .map((all) => all.map((size, index): NestPiece => ({ id: `piece-${index}`, sheet: 'ply', ...size })));

interface Box {
  readonly xM: number;
  readonly yM: number;
  readonly widthM: number;
  readonly heightM: number;
}

/** A rectangle in the other geometry library. */
function boxOf({ xM, yM, widthM, heightM }: Box): Flatten.Box {
  return new Flatten.Box(xM, yM, xM + widthM, yM + heightM);
}

/** Least gap along x or y between two rectangles that do not share one; below zero where they overlap. */
function gapM(a: Box, b: Box): number {
  const [one, other] = [boxOf(a), boxOf(b)];
  return Math.max(one.xmin - other.xmax, other.xmin - one.xmax, one.ymin - other.ymax, other.ymin - one.ymax);
}

describe('nestPieces', () => {
  it('keeps a kerf between pieces and the trim to the edge, and loses none', () => {
    fc.assert(
      fc.property(lists, (pieces) => {
        const { sheets, unplaced } = nestPieces(pieces, [sheet], rules);
        expect(unplaced).toEqual([]);
        const asked = pieces.flatMap(({ id, count = 1 }) =>
          Array.from({ length: count }, (_, at) => `${id} ${at + 1}`),
        );
        const laid = sheets.flatMap((one) => one.pieces.map(({ id, copy }) => `${id} ${copy}`));
        expect(laid.toSorted()).toEqual(asked.toSorted());
        for (const one of sheets) {
          for (const [at, piece] of one.pieces.entries()) {
            expect(Math.min(piece.xM, piece.yM)).toBeGreaterThanOrEqual(rules.trimM - 1e-9);
            expect(piece.xM + piece.widthM).toBeLessThanOrEqual(2.44 - rules.trimM + 1e-9);
            expect(piece.yM + piece.heightM).toBeLessThanOrEqual(1.22 - rules.trimM + 1e-9);
            for (const other of one.pieces.slice(at + 1))
              expect(gapM(piece, other)).toBeGreaterThanOrEqual(rules.kerfM - 1e-7);
            const asWritten = pieces.find(({ id }) => id === piece.id);
            if (asWritten?.lies !== 'either') expect(piece.turned).toBe(asWritten?.lies === 'turned');
            expect([piece.widthM, piece.heightM]).toEqual(
              piece.turned
                ? [asWritten?.heightM, asWritten?.widthM]
                : [asWritten?.widthM, asWritten?.heightM],
            );
          }
        }
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('keeps off-cuts clear of pieces and of each other, and none too small to keep', () => {
    fc.assert(
      fc.property(lists, (pieces) => {
        for (const { pieces: laid, offCuts } of nestPieces(pieces, [sheet], rules).sheets) {
          for (const [at, offCut] of offCuts.entries()) {
            expect(Math.min(offCut.widthM, offCut.heightM)).toBeGreaterThanOrEqual(rules.offCutM);
            expect(offCut.xM + offCut.widthM).toBeLessThanOrEqual(2.44 - rules.trimM + 1e-7);
            for (const other of [...laid, ...offCuts.slice(at + 1)])
              expect(gapM(offCut, other)).toBeGreaterThanOrEqual(rules.kerfM - 1e-7);
          }
        }
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  it('gives the same sheets in whatever order the pieces are written', () => {
    fc.assert(
      fc.property(lists, (pieces) => {
        expect(nestPieces(pieces.toReversed(), [sheet], rules)).toEqual(nestPieces(pieces, [sheet], rules));
      }),
      { numRuns: 50, seed: 13 },
    );
  });

  it('fills a sheet to the last millimetre: eight pieces of a quarter by a half', () => {
    const tight: StockSheet = { ...sheet, widthM: 4 * 0.2 + 3 * 0.003, heightM: 2 * 0.3 + 0.003 };
    const pieces = [
      { id: 'a', sheet: 'ply', widthM: 0.2, heightM: 0.3, count: 8, lies: 'as-written' as const },
    ];
    const { sheets, unplaced } = nestPieces(pieces, [tight], { ...rules, trimM: 0 });
    expect(unplaced).toEqual([]);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]?.offCuts).toEqual([]);
  });

  it('cuts from an off-cut of the shelf before it opens a sheet, and not from one that is used up', () => {
    const offCut: StockSheet = { id: 'off-cut', sheet: 'ply', widthM: 0.5, heightM: 0.5, quantity: 1 };
    const pieces = [{ id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.4, count: 2 }];
    const used = nestPieces(pieces, [sheet, offCut], rules).sheets.map(({ stock }) => stock.id);
    expect(used.toSorted()).toEqual(['off-cut', 'whole']);
  });

  it('tells what fits nowhere and lays the rest', () => {
    const pieces = [
      { id: 'too-long', sheet: 'ply', widthM: 3, heightM: 0.1 },
      { id: 'other', sheet: 'steel', widthM: 0.1, heightM: 0.1 },
      { id: 'good', sheet: 'ply', widthM: 0.1, heightM: 0.1 },
    ];
    const { sheets, unplaced } = nestPieces(pieces, [sheet], rules);
    expect(unplaced.map(({ id }) => id).toSorted()).toEqual(['other', 'too-long']);
    expect(sheets.flatMap((one) => one.pieces.map(({ id }) => id))).toEqual(['good']);
  });
});
