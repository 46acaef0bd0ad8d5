import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stockCsv } from '../../../lib/export/csv/stock-csv.ts';
import { readCsv } from '../../../lib/read/csv-rows.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { stockEdits } from '../../../lib/read/stock/stock-edits.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

const path = 'content/shop.yaml';
const parts = {
  path: 'content/parts/some.yaml',
  text: `rackleaf: 1
parts:
  red: { kind: wire, title: Red, size: 4 AWG, colour: RD, for: [power] }
  loom: { kind: covering, title: Loom, form: loom, bore: 13 mm, withstands: 85 C }
  fuse: { kind: fuse, title: Fuse, form: mini-blade, rating: 5 A }
  ply: { kind: board-sheet, title: Ply, material: birch-plywood, thickness: 12 mm, width: 1200 mm, height: 600 mm, density: 680 kg/m3, modulus: 9 GPa }
`,
};

function shopOf(text: string) {
  const { shop, parts: read, problems } = readContent([{ path, text }, parts]);
  expect(problems).toEqual([]);
  if (!shop) throw new Error('The shop can not be read.');
  return { shop, parts: read };
}

/** The shop file with what a table says. */
function imported(text: string, table: string): { readonly text: string; readonly changes: number } {
  const [csv, doc] = [readCsv('stock.csv', table), readYaml(path, text).value];
  if ('where' in csv || !doc) throw new Error('The table can not be read.');
  const { edits, changes, problems } = stockEdits('stock.csv', csv, doc, shopOf(text));
  expect(problems).toEqual([]);
  const after = splice(text, edits);
  if (typeof after !== 'string') throw new Error(after.fault);
  return { text: after, changes: changes.length };
}

const length = fc.oneof(
  fc.integer({ min: 1, max: 500 }).map((feet) => `${feet} ft`),
  fc.integer({ min: 10, max: 9000 }).map((mm) => `${mm} mm`),
  fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 15 }))
    .map(([inch, part]) => (inch === 0 ? `${part}/16 in` : `${inch} ${part}/16 in`)),
);
const names = fc.uniqueArray(fc.constantFrom('a1', 'b-2', 'long-one'), { maxLength: 3 });
const sum = fc.tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 4 }));
const sumText = sum.map(([digits, decimals]) => (digits / 10 ** decimals).toFixed(decimals));
const onReel = fc.record({
  reels: fc.array(length, { maxLength: 4 }),
  offCuts: names.chain((all) => fc.tuple(fc.constant(all), fc.array(length, { minLength: 3, maxLength: 3 }))),
});
const side = fc.integer({ min: 20, max: 600 }).map((mm) => `${mm} mm`);
const offCut = fc.tuple(side, side, fc.integer({ min: 0, max: 4 }));

/** Shop files with stock and prices, in the block and the flow of YAML. */
const shops = fc
  .record({
    red: fc.option(onReel),
    loom: fc.option(onReel),
    fuse: fc.option(fc.integer({ min: 0, max: 900 })),
    ply: fc.option(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.array(offCut, { maxLength: 3 }))),
    prices: fc.record(
      {
        red: fc.tuple(sumText, fc.constantFrom('per ft', 'per m', 'per 50 ft', 'per 100m')),
        fuse: fc.tuple(sumText, fc.constantFrom('each', 'per 10', 'per 100')),
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ red, loom, fuse, ply, prices }) => {
    const reelText = (own: typeof red) =>
      own &&
      `{ reels: [${own.reels.join(', ')}], off-cuts: {${own.offCuts[0].map((name, at) => ` ${name}: ${own.offCuts[1][at]}`).join(',')} } }`;
    const cuts =
      ply?.[1].map(
        ([width, height, pieces], at) =>
          `      s${at}: { width: ${width}, height: ${height}, pieces: ${pieces} }\n`,
      ) ?? [];
    const stock = [
      red && `  red: ${reelText(red)} # on the wall\n`,
      loom && `  loom: ${reelText(loom)}\n`,
      fuse !== null && `  fuse:\n    pieces: ${fuse} # counted\n`,
      ply && `  ply:\n    pieces: ${ply[0]}\n${cuts.length > 0 ? `    off-cuts:\n${cuts.join('')}` : ''}`,
    ].filter((line) => typeof line === 'string');
    const priced = Object.entries(prices).flatMap(([part, own]) =>
      own && Number(own[0]) > 0 ? [`  ${part}: ${own[0]} ${own[1]}\n`] : [],
    );
    return `rackleaf: 1\nname: Bench\ncurrency: EUR\n${priced.length > 0 ? `prices:\n${priced.join('')}` : ''}${stock.length > 0 ? `stock:\n${stock.join('')}` : ''}`;
  });

describe('a table of stock and prices', () => {
  test('that was exported changes nothing of the shop that it is of', () => {
    fc.assert(
      fc.property(shops, (text) => {
        const { shop, parts: read } = shopOf(text);
        expect(imported(text, stockCsv(shop, read))).toEqual({ text, changes: 0 });
      }),
      { numRuns: 60 },
    );
  });

  test('of one shop, imported into another, makes it say the same, and leaves its comments', () => {
    fc.assert(
      fc.property(shops, shops, (text, other) => {
        const { shop, parts: read } = shopOf(text);
        const after = imported(other, stockCsv(shop, read));
        const made = shopOf(after.text).shop;
        for (const [id, stock] of Object.entries(shop.stock)) {
          const own = made.stock[id];
          expect(countOf(own)).toEqual(countOf(stock));
          if (Object.keys(stock['off-cuts']).length > 0)
            expect(Object.keys(own?.['off-cuts'] ?? {})).toEqual(Object.keys(stock['off-cuts']));
        }
        expect(made.prices).toMatchObject(shop.prices);
        expect(commentsOf(after.text)).toEqual(commentsOf(other));
        expect(imported(after.text, stockCsv(shop, read)).changes).toBe(0);
      }),
      { numRuns: 60 },
    );
  });
});

function countOf(stock: ReturnType<typeof shopOf>['shop']['stock'][string] | undefined): unknown {
  if (!stock) return null;
  return 'pieces' in stock ? stock.pieces : stock.reels.map((one) => one.toFixed(6));
}

function commentsOf(text: string): readonly string[] {
  return text.match(/#.*$/gm) ?? [];
}
