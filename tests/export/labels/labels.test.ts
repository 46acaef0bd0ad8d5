import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetFormats } from '../../../lib/draw/sheet/sheet-format.ts';
import { a4Stock, letterStock, readLabelStock, stockFault } from '../../../lib/export/labels/label-stock.ts';
import { labelRows } from '../../../lib/export/labels/labels-of-both-ends.ts';
import { labelSheets } from '../../../lib/export/labels/labels-on-stock.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';

describe('labelRows', () => {
  it('gives each end of each laid wire two labels that name where it goes', () => {
    const wires = samplePlan().wires.filter(({ origin }) => origin === 'job');
    const rows = labelRows(samplePlan());
    for (const { id, ends } of wires) {
      const own = rows.filter(({ wire }) => wire === id);
      expect(own.map(({ end, copy }) => `${end}${copy}`)).toEqual(['A1', 'A2', 'B1', 'B2']);
      expect(own.map(({ here }) => here)).toEqual(
        [ends[0], ends[0], ends[1], ends[1]].map((end) => end.terminal),
      );
    }
    expect(rows).toHaveLength(4 * wires.length);
  });
});

describe('labelSheets', () => {
  it('keeps every text in its label, on any stock that goes onto the paper', () => {
    const stocks = fc
      .record({
        columns: fc.integer({ min: 1, max: 6 }),
        rows: fc.integer({ min: 1, max: 25 }),
        widthMm: fc.integer({ min: 15, max: 60 }),
        heightMm: fc.integer({ min: 8, max: 40 }),
        leftMm: fc.integer({ min: 0, max: 20 }),
        topMm: fc.integer({ min: 0, max: 20 }),
      })
      .map((stock) => ({ ...stock, pitchXMm: stock.widthMm + 2, pitchYMm: stock.heightMm + 1 }))
      .filter((stock) => stockFault(stock, sheetFormats.A4) === null);
    fc.assert(
      fc.property(stocks, (stock) => {
        const labels = labelRows(samplePlan());
        const sheets = labelSheets({
          labels,
          stock,
          paper: sheetFormats.A4,
          metrics: shippedMetrics,
          origin: '',
        });
        const perSheet = stock.columns * stock.rows;
        expect(sheets).toHaveLength(Math.ceil(labels.length / perSheet));
        for (const sheet of sheets)
          for (const [index, group] of [...sheet.matchAll(/<g data-wire[\s\S]*?<\/g>/g)].entries()) {
            const leftMm = stock.leftMm + (index % stock.columns) * stock.pitchXMm;
            const topMm = stock.topMm + Math.floor(index / stock.columns) * stock.pitchYMm;
            for (const { x, y, rightMm } of textsOf(group[0])) {
              expect(x).toBeGreaterThanOrEqual(leftMm);
              expect(rightMm).toBeLessThanOrEqual(leftMm + stock.widthMm);
              expect(y).toBeGreaterThan(topMm);
              expect(y).toBeLessThan(topMm + stock.heightMm);
            }
          }
      }),
      { numRuns: 30, seed: 5 },
    );
  });
});

/** Where the outlines of each text begin, and how far their points reach to the right. */
function textsOf(markup: string): { x: number; y: number; rightMm: number }[] {
  const found = markup.matchAll(
    /transform="translate\(([-\d.]+) ([-\d.]+)\) scale\(([\d.]+) [\d.]+\)" d="([^"]*)"/g,
  );
  return [...found].map(([, x = '', y = '', scale = '', d = '']) => {
    const points = [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, pointX = '']) => Number(pointX));
    return { x: Number(x), y: Number(y), rightMm: Number(x) + Number(scale) * Math.max(0, ...points) };
  });
}

describe('readLabelStock', () => {
  it('reads sizes with their units and leaves the rest as it was', () => {
    const read = readLabelStock('columns=3, width=2 5/8 in, pitch-x=70 mm', letterStock);
    expect(read).toEqual({ ...letterStock, columns: 3, widthMm: 66.675, pitchXMm: 70 });
  });

  it.each([
    ['columns=0', 'columns takes a whole number'],
    ['width=44', 'has no unit'],
    ['height=0 mm', 'height must be above zero'],
    ['girth=1 in', '"girth" is not a size'],
    ['width', 'is not a length'],
  ])('refuses %s', (words, reason) => {
    expect(readLabelStock(words, letterStock)).toContain(reason);
  });

  it('knows stock that goes onto its paper, and tells by how much another does not', () => {
    expect(stockFault(letterStock, sheetFormats.Letter)).toBeNull();
    expect(stockFault(a4Stock, sheetFormats.A4)).toBeNull();
    expect(stockFault({ ...a4Stock, columns: 6 }, sheetFormats.A4)).toMatch(/35\.8 mm past the paper/);
    expect(stockFault({ ...a4Stock, pitchXMm: 20 }, sheetFormats.A4)).toContain('over each other');
  });
});
