import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exporters } from '../../../lib/export/index.ts';
import { letterStock } from '../../../lib/export/labels/label-stock.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { openBrowser } from '../../browser.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';
import { casesOf } from '../../long-run.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { roundedBoard } from '../board-of.ts';

const choices = { unit: 'mm', paper: 'Letter', labelStock: letterStock } as const;
const plan = samplePlan({ boards: [roundedBoard()] });
const sample = [exporters.svg, exporters.labels, exporters.nest].flatMap((exporter) =>
  exporter.files({ plan, metrics: shippedMetrics, choices }),
);
/** Every drawing of a whole job as well: hatches, symbols, ticks and turned texts as they come. */
const whole = exporters.svg.files({ plan: fixedPlan('under-seat-five'), metrics: shippedMetrics, choices });
const files = [...sample, ...whole.map((file) => ({ ...file, name: `whole/${file.name}` }))].filter(
  ({ name }) => name.endsWith('.svg'),
);

/** What is drawn, by the first word of its name: `whole/drawing-wiring`. */
const kindOf = (name: string): string => /^(?:whole\/)?(?:drawing-)?[a-z]+/.exec(name)?.[0] ?? name;

/** The first of each kind, of the sample and of the whole job, in the short run. */
const looked = casesOf(
  files,
  ({ name }, index) => files.findIndex((one) => kindOf(one.name) === kindOf(name)) === index,
);

/** Grey levels that edges may differ by, for each renderer smooths in its own way. */
const levels = 96;
/** Share of the inked pixels that may differ by more. */
const share = 0.001;

describe('exported SVG', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it.each(looked.map(({ name, content }) => [name, String(content)] as const))(
    '%s needs nothing else and looks the same in Chromium and librsvg',
    async (_, exported) => {
      const svg = inPixels(exported);
      expect(svg).not.toMatch(/<text|var\(|<style|font-family|href=/);
      const ours = await byLibrsvg(svg);
      const theirs = await byChromium(browser, svg, ours);
      expect([theirs.width, theirs.height]).toEqual([ours.width, ours.height]);
      expect(ours.data.filter((value) => value < 128).length).toBeGreaterThan(500);
      expect(differingShare(ours, theirs)).toBeLessThan(share);
    },
  );

  it('would not pass for the same where one of them left out the dashes, or drew a millimetre aside', async () => {
    const power = files.find(({ name }) => name === 'whole/drawing-power.svg');
    const svg = inPixels(String(power?.content));
    const ours = await byLibrsvg(svg);
    const solid = svg.replaceAll(/ stroke-dasharray="[^"]*"/g, '');
    expect(solid).not.toBe(svg);
    expect(differingShare(ours, await byChromium(browser, solid, ours))).toBeGreaterThan(share);
    const aside = svg.replace(/viewBox="0 0 /, 'viewBox="1 0 ');
    expect(differingShare(ours, await byChromium(browser, aside, ours))).toBeGreaterThan(share);
  });

  it('is the same bytes when it is made again', () => {
    const again = exporters.svg.files({ plan, metrics: shippedMetrics, choices });
    expect(again).toEqual(exporters.svg.files({ plan, metrics: shippedMetrics, choices }));
  });
});

async function byLibrsvg(svg: string): Promise<Picture> {
  return grey(
    await sharp(Buffer.from(svg), { density: 72 }).flatten({ background: '#fff' }).png().toBuffer(),
  );
}

async function byChromium(browser: Browser, svg: string, { width, height }: Picture): Promise<Picture> {
  const page = await browser.newPage({ viewport: { width, height } });
  await page.setContent(`<body style="margin:0">${svg}</body>`);
  const picture = await grey(await page.screenshot());
  await page.close();
  return picture;
}

/** Pixels that differ, as a share of those that are inked. */
function differingShare(ours: Picture, theirs: Picture): number {
  const inked = ours.data.filter((value) => value < 128).length;
  const differing = ours.data.filter((value, index) => Math.abs(value - (theirs.data[index] ?? 0)) > levels);
  return differing.length / inked;
}

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
