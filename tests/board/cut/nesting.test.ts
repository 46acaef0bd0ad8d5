import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type NestPiece,
  type NestRules,
  nestPieces,
  type StockSheet,
} from '../../../lib/board/cut/nesting.ts';

const rules: NestRules = { kerfM: 0.003, trimM: 0.01, offCutM: 0.1 };
const sheet: StockSheet = { id: 'whole', sheet: 'ply', widthM: 2.44, heightM: 1.22, quantity: null };

const shelf = (name: string, widthM: number, heightM: number): StockSheet => ({
  ...{ id: `ply-off-cut-${name}`, offCut: name, sheet: 'ply', widthM, heightM, quantity: 1 },
});

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
    const offCut: StockSheet = { ...shelf('off-cut', 0.5, 0.5), quantity: 1 };
    const pieces = [{ id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.4, count: 2 }];
    const used = nestPieces(pieces, [sheet, offCut], rules).sheets.map(({ stock }) => stock.id);
    expect(used.toSorted()).toEqual(['ply-off-cut-off-cut', 'whole']);
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

describe('off-cuts from the shelf', () => {
  const side = (min: number, max: number) => fc.integer({ min, max }).map((mm) => mm / 1000);
  const shelves = fc
    .array(fc.tuple(side(60, 1200), side(60, 900), fc.integer({ min: 0, max: 3 })), { maxLength: 5 })
    .map((all) =>
      all.map(([wide, high, quantity], at): StockSheet => ({ ...shelf(`${at}`, wide, high), quantity })),
    );
  const wholeSheets = (stock: readonly StockSheet[], pieces: readonly NestPiece[]): number =>
    nestPieces(pieces, stock, rules).sheets.filter((one) => one.stock.offCut === undefined).length;

  it('never lose a piece, never need a sheet more, and are used no more often than they are there', () => {
    let cutFromOffCuts = 0;
    fc.assert(
      fc.property(lists, shelves, (pieces, offCuts) => {
        const { sheets, unplaced } = nestPieces(pieces, [sheet, ...offCuts], rules);
        expect(unplaced).toEqual([]);
        expect(wholeSheets([sheet, ...offCuts], pieces)).toBeLessThanOrEqual(wholeSheets([sheet], pieces));
        for (const one of offCuts) {
          const opened = sheets.filter(({ stock }) => stock.id === one.id);
          expect(opened.length).toBeLessThanOrEqual(one.quantity ?? 0);
          cutFromOffCuts += opened.length;
        }
        for (const { stock, pieces: laid, offCuts: left } of sheets) {
          const trimM = stock.offCut === undefined ? rules.trimM : 0;
          expect(laid.length).toBeGreaterThan(0);
          for (const [at, piece] of [...laid, ...left].entries()) {
            expect(Math.min(piece.xM, piece.yM)).toBeGreaterThanOrEqual(trimM - 1e-9);
            expect(piece.xM + piece.widthM).toBeLessThanOrEqual(stock.widthM - trimM + 1e-7);
            expect(piece.yM + piece.heightM).toBeLessThanOrEqual(stock.heightM - trimM + 1e-7);
            for (const other of [...laid, ...left].slice(at + 1))
              expect(gapM(piece, other)).toBeGreaterThanOrEqual(rules.kerfM - 1e-7);
          }
        }
      }),
      { numRuns: 80 },
    );
    expect(cutFromOffCuts).toBeGreaterThan(0);
  });

  it('the smallest that takes the piece is cut, and no sheet is opened', () => {
    const pieces = [{ id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.3 }];
    const stock = [sheet, shelf('large', 0.9, 0.6), shelf('small', 0.29, 0.8), shelf('middle', 0.31, 0.42)];
    expect(nestPieces(pieces, stock, rules).sheets.map((one) => one.stock.offCut)).toEqual(['middle']);
  });

  it('one that takes all pieces is better than two that share them', () => {
    const pieces = [
      { id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.3, count: 2, lies: 'as-written' as const },
    ];
    const stock = [sheet, shelf('one', 0.41, 0.5), shelf('two', 0.42, 0.5), shelf('both', 0.41, 0.61)];
    expect(nestPieces(pieces, stock, rules).sheets.map((one) => one.stock.offCut)).toEqual(['both']);
  });

  it('is cut to its edge: what is good of it is its size', () => {
    const pieces = [{ id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.3 }];
    const [only] = nestPieces(pieces, [sheet, shelf('exact', 0.4, 0.3)], rules).sheets;
    expect(only?.stock.offCut).toBe('exact');
    expect(only?.offCuts).toEqual([]);
  });

  it('of another sheet, or used up, leaves the piece to a whole sheet', () => {
    const pieces = [{ id: 'a', sheet: 'ply', widthM: 0.4, heightM: 0.3 }];
    const none = [
      { ...shelf('other', 0.5, 0.5), sheet: 'steel' },
      { ...shelf('gone', 0.5, 0.5), quantity: 0 },
    ];
    expect(nestPieces(pieces, [sheet, ...none], rules).sheets.map((one) => one.stock.id)).toEqual(['whole']);
  });
});
