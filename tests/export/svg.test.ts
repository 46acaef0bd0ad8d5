import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exporters } from '../../lib/export/index.ts';
import { letterStock } from '../../lib/export/labels/label-stock.ts';
import { openBrowser } from '../browser.ts';
import { shippedMetrics } from '../draw/shipped-metrics.ts';
import { samplePlan } from '../publish/sample-plan.ts';
import { roundedBoard } from './board-of.ts';

const choices = { unit: 'mm', paper: 'Letter', labelStock: letterStock } as const;
const plan = samplePlan({ boards: [roundedBoard()] });
const files = [exporters.svg, exporters.labels, exporters.nest].flatMap((exporter) =>
  exporter.files({ plan, metrics: shippedMetrics, choices }).filter(({ name }) => name.endsWith('.svg')),
);

/** Grey levels that edges may differ by, for each renderer smooths in its own way. */
const levels = 96;
/** Share of the inked pixels that may differ by more. */
const share = 0.02;

describe('exported SVG', () => {
  let browser: Awaited<ReturnType<typeof openBrowser>>;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it.each(files.map(({ name, content }) => [name, String(content)] as const))(
    '%s needs nothing else and looks the same in Chromium and librsvg',
    async (_, exported) => {
      const svg = inPixels(exported);
      expect(svg).not.toMatch(/<text|var\(|<style|font-family|href=/);
      const ours = await grey(
        await sharp(Buffer.from(svg), { density: 72 }).flatten({ background: '#fff' }).png().toBuffer(),
      );
      const page = await browser.newPage({ viewport: { width: ours.width, height: ours.height } });
      await page.setContent(`<body style="margin:0">${svg}</body>`);
      const theirs = await grey(await page.screenshot());
      await page.close();
      expect([theirs.width, theirs.height]).toEqual([ours.width, ours.height]);
      const inked = ours.data.filter((value) => value < 128).length;
      expect(inked).toBeGreaterThan(500);
      const differing = ours.data.filter(
        (value, index) => Math.abs(value - (theirs.data[index] ?? 0)) > levels,
      );
      expect(differing.length / inked).toBeLessThan(share);
    },
  );

  it('is the same bytes when it is made again', () => {
    const again = exporters.svg.files({ plan, metrics: shippedMetrics, choices });
    expect(again).toEqual(exporters.svg.files({ plan, metrics: shippedMetrics, choices }));
  });
});

/** The same with its size in pixels of CSS, for sharp does not take millimetres at their true size. */
function inPixels(svg: string): string {
  return svg.replace(/ (width|height)="([\d.]+)mm"/g, (_, side: string, millimetres: string) => {
    return ` ${side}="${(Number(millimetres) * 96) / 25.4}"`;
  });
}

interface Picture {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** A picture in grey, blurred by a pixel, so that smoothing of edges counts little and a missing line much. */
async function grey(png: Buffer): Promise<Picture> {
  const { data, info } = await sharp(png).greyscale().blur(0.8).raw().toBuffer({ resolveWithObject: true });
  return { data: new Uint8Array(data), width: info.width, height: info.height };
}
