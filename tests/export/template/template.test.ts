import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetFormats } from '../../../lib/draw/sheet/sheet-format.ts';
import { fullSizeView } from '../../../lib/export/machine/full-size.ts';
import { templateHtml } from '../../../lib/export/template/template-html.ts';
import { tilingOf } from '../../../lib/export/template/tiling.ts';
import { openBrowser } from '../../browser.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';
import { roundedBoard } from '../board-of.ts';
import { openPdf, type Stroke, strokesOf } from '../pdf-strokes.ts';

const origin = { issue: 'sample-job, revision B, issued 2026-03-14', mark: null };

function lengthOf({ x1, y1, x2, y2 }: Stroke): number {
  return Math.hypot(x2 - x1, y2 - y1);
}

describe.each(['Letter', 'A4'] as const)('the template on %s, printed by a browser', (paper) => {
  const board = roundedBoard();
  const { tiles, page } = tilingOf(fullSizeView(board.outline), paper);
  let pdf = new Uint8Array();
  let browser: Awaited<ReturnType<typeof openBrowser>>;

  beforeAll(async () => {
    browser = await openBrowser();
    const tab = await browser.newPage();
    await tab.setContent(templateHtml(board, paper, shippedMetrics, origin));
    pdf = new Uint8Array(await tab.pdf({ preferCSSPageSize: true, printBackground: true }));
  });
  afterAll(() => browser.close());

  it('has the map and one page a tile, none empty, of the very paper', async () => {
    const document = await openPdf(pdf);
    expect(document.numPages).toBe(tiles.length + 1);
    const [, , width = 0, height = 0] = (await document.getPage(2)).view;
    // Chromium rounds the page to whole points (0.35 mm).
    expect(Math.abs((width * 25.4) / 72 - page.widthMm)).toBeLessThan(0.4);
    expect(Math.abs((height * 25.4) / 72 - page.heightMm)).toBeLessThan(0.4);
  });

  it('has bars of 100 mm lying and standing, and of 4 in, right to 0.2 mm on every page', async () => {
    for (let number = 1; number <= tiles.length + 1; number += 1) {
      const strokes = await strokesOf(pdf, number);
      const near = (length: number, lying: boolean): Stroke[] =>
        strokes.filter(
          (stroke) =>
            Math.abs(lengthOf(stroke) - length) < 0.2 &&
            Math.abs(lying ? stroke.y1 - stroke.y2 : stroke.x1 - stroke.x2) < 0.01,
        );
      expect(near(100, true), `lying bar of page ${number}`).toHaveLength(1);
      expect(near(100, false), `standing bar of page ${number}`).toHaveLength(1);
      expect(near(101.6, true), `inch bar of page ${number}`).toHaveLength(1);
    }
  });

  it('has the marks of neighbours in the same places of the board', async () => {
    const first = tiles[0];
    const right = tiles.find(({ row, column }) => row === 0 && column === 1);
    if (!first || !right) throw new Error('one tile is no tiling');
    // The strokes across an upright join are 8 mm long; their middles in the places of the board, y down.
    const crossesOf = async (tile: typeof first) =>
      (await strokesOf(pdf, tiles.indexOf(tile) + 2))
        .filter((stroke) => Math.abs(lengthOf(stroke) - 8) < 0.02 && Math.abs(stroke.y1 - stroke.y2) < 0.01)
        .map(({ x1, x2, y1 }) => ({
          x: (x1 + x2) / 2 - page.leftMm + tile.xMm,
          y: page.heightMm - y1 - page.topMm + tile.yMm,
        }));
    const there = await crossesOf(right);
    const shared = (await crossesOf(first)).filter(({ x }) => x > right.xMm);
    expect(shared).toHaveLength(2);
    for (const cross of shared) {
      const away = there.map(({ x, y }) => Math.hypot(x - cross.x, y - cross.y));
      expect(Math.min(...away)).toBeLessThan(0.1);
    }
  });
});

describe('tilingOf', () => {
  it('covers the board, neighbours overlapping, on fewest pages upright or lying', () => {
    for (const size of [
      { widthMm: 600, heightMm: 400 },
      { widthMm: 100, heightMm: 50 },
      { widthMm: 1524, heightMm: 558.8 },
    ]) {
      const { tiles, page, overlapMm } = tilingOf(size, 'A4');
      const right = Math.max(...tiles.map(({ xMm }) => xMm + page.windowWidthMm));
      const bottom = Math.max(...tiles.map(({ yMm }) => yMm + page.windowHeightMm));
      expect(Math.min(...tiles.map(({ xMm }) => xMm))).toBeLessThanOrEqual(0);
      expect(Math.min(...tiles.map(({ yMm }) => yMm))).toBeLessThanOrEqual(0);
      expect(right).toBeGreaterThanOrEqual(size.widthMm);
      expect(bottom).toBeGreaterThanOrEqual(size.heightMm);
      for (const tile of tiles) {
        const next = tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1);
        if (next) expect(tile.xMm + page.windowWidthMm - next.xMm).toBeCloseTo(overlapMm, 6);
      }
      const { widthMm } = sheetFormats.A4;
      expect([widthMm, sheetFormats.A4.heightMm]).toContain(page.widthMm);
    }
  });
});
