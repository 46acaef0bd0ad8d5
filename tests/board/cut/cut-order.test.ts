import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutOrderOf, type SawCut } from '../../../lib/board/cut/cut-order.ts';
import type { Rectangle } from '../../../lib/board/cut/free-rectangles.ts';
import { nestPieces } from '../../../lib/board/cut/nesting.ts';

const rules = { kerfM: 0.003, trimM: 0.01, offCutM: 0.2 };
const rectangle = (xM: number, yM: number, widthM: number, heightM: number): Rectangle => ({
  xM,
  yM,
  widthM,
  heightM,
});
const piece = (id: string, place: Rectangle) => ({ id, copy: 1, turned: false, ...place });
const stock = (widthM: number, heightM: number) => ({ id: 's', sheet: 's', widthM, heightM, quantity: 1 });

/** The parts that are left when the cuts are made in their order, each along the whole of one part that is there. */
function sawn(sheet: Rectangle, cuts: readonly SawCut[], kerfM: number): Rectangle[] {
  const parts = [sheet];
  for (const { part, runs, atM, lost } of cuts) {
    const at = parts.findIndex((one) => same(one, part));
    expect(at, 'the part is there to be cut').toBeGreaterThanOrEqual(0);
    const [whole] = parts.splice(at, 1);
    if (!whole) continue;
    const lengthM = runs === 'upright' ? whole.widthM : whole.heightM;
    expect(atM).toBeGreaterThan(0);
    expect(atM).toBeLessThan(lengthM);
    const [firstM, secondM] = lost === 'after' ? [atM, atM + kerfM] : [atM - kerfM, atM];
    const upright = (fromM: number, toM: number) => ({ ...whole, xM: whole.xM + fromM, widthM: toM - fromM });
    const level = (fromM: number, toM: number) => ({ ...whole, yM: whole.yM + fromM, heightM: toM - fromM });
    const cut = runs === 'upright' ? upright : level;
    parts.push(
      ...[cut(0, firstM), cut(secondM, lengthM)].filter((one) => Math.min(one.widthM, one.heightM) > 0),
    );
  }
  return parts;
}

function same(a: Rectangle, b: Rectangle): boolean {
  return (
    Math.abs(a.xM - b.xM) < 2e-4 &&
    Math.abs(a.yM - b.yM) < 2e-4 &&
    Math.abs(a.widthM - b.widthM) < 2e-4 &&
    Math.abs(a.heightM - b.heightM) < 2e-4
  );
}

/** True where some order of straight cuts frees all rectangles: every cut line is tried, and each way on from it. */
function canBeParted(members: readonly Rectangle[], kerfM: number): boolean {
  if (members.length < 2) return true;
  const lines = members.flatMap(({ xM, yM, widthM, heightM }) => [
    { along: 'x' as const, at: xM + widthM },
    { along: 'y' as const, at: yM + heightM },
  ]);
  return lines.some(({ along, at }) => {
    const from = (one: Rectangle): number => (along === 'x' ? one.xM : one.yM);
    const to = (one: Rectangle): number => from(one) + (along === 'x' ? one.widthM : one.heightM);
    const before = members.filter((one) => to(one) <= at + 1e-4);
    const after = members.filter((one) => from(one) >= at + kerfM - 1e-4);
    if (after.length === 0 || before.length + after.length < members.length) return false;
    return canBeParted(before, kerfM) && canBeParted(after, kerfM);
  });
}

describe('the order of saw cuts of a sheet', () => {
  test('trims the rim, then cuts the shorter way: by hand, one board with an off-cut above and one beside it', () => {
    const board = rectangle(0.01, 0.01, 0.4, 0.9);
    const above = rectangle(0.01, 0.913, 0.4, 0.277);
    const beside = rectangle(0.413, 0.01, 1.977, 1.18);
    const order = cutOrderOf(
      { stock: stock(2.4, 1.2), pieces: [piece('board', board)], offCuts: [beside, above] },
      rules,
    );
    expect(order.together).toEqual([]);
    expect(order.cuts.map(({ runs, lost, atM }) => [runs, lost, Number(atM.toFixed(4))])).toEqual([
      ['upright', 'before', 0.01],
      ['level', 'before', 0.01],
      ['upright', 'after', 2.38],
      ['level', 'after', 1.18],
      ['upright', 'after', 0.4],
      ['level', 'after', 0.9],
    ]);
  });

  test('leaves four boards together that lie round a middle: no straight cut parts them', () => {
    const round = [
      rectangle(0, 0, 0.6, 0.3),
      rectangle(0.603, 0, 0.3, 0.6),
      rectangle(0.303, 0.603, 0.6, 0.3),
      rectangle(0, 0.303, 0.3, 0.6),
    ];
    const pieces = round.map((place, nth) => piece(`p${nth}`, place));
    const order = cutOrderOf({ stock: stock(0.903, 0.903), pieces, offCuts: [] }, rules);
    expect(order.together.map((members) => members.length)).toEqual([4]);
    expect(order.cuts).toEqual([]);
    // One of them shorter by the width of the saw cut is not enough; one taken out is.
    const three = cutOrderOf({ stock: stock(0.903, 0.903), pieces: pieces.slice(1), offCuts: [] }, rules);
    expect(three.together).toEqual([]);
  });

  test('needs the whole width of the saw cut between two pieces, and no more', () => {
    const beside = (gapM: number) =>
      cutOrderOf(
        {
          stock: stock(0.8 + gapM, 0.5),
          pieces: [piece('a', rectangle(0, 0, 0.4, 0.5)), piece('b', rectangle(0.4 + gapM, 0, 0.4, 0.5))],
          offCuts: [],
        },
        rules,
      ).together.length;
    expect(beside(0.003)).toBe(0);
    expect(beside(0.0027)).toBe(1);
  });

  test('frees all pieces and off-cuts whole, or tells those that no order frees, of any nesting', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 1000);
    const pieces = fc.array(
      fc.record({ widthM: mm(60, 900), heightM: mm(60, 700), count: fc.integer({ min: 1, max: 3 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(pieces, (asked) => {
        const made = asked.map((one, nth) => ({ id: `p${nth}`, sheet: 's', ...one }));
        const { sheets } = nestPieces(made, [{ ...stock(2.44, 1.22), quantity: null }], rules);
        for (const sheet of sheets) {
          const { cuts, together } = cutOrderOf(sheet, rules);
          const whole = { xM: 0, yM: 0, widthM: sheet.stock.widthM, heightM: sheet.stock.heightM };
          const parts = sawn(whole, cuts, rules.kerfM);
          const kept = together.flat();
          for (const member of [...sheet.pieces, ...sheet.offCuts].filter((one) => !kept.includes(one)))
            expect(parts.some((part) => same(part, member))).toBe(true);
          for (const members of together) expect(canBeParted(members, rules.kerfM)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });
});
