import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { responses } from '../../../lib/draw/drawings/responses.ts';
import { type NumberedPage, numberPage } from '../../../lib/draw/page.ts';
import { centreOf, type PaperPoint } from '../../../lib/draw/paper.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { expectGolden } from '../../golden.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';
import { xmlFault } from '../well-formed.ts';

function drawn(plan: BuildPlan): NumberedPage[] {
  return responses.pages(plan, shippedMetrics).map((page) => numberPage(page, { drawing: 1, drawings: 1 }));
}

function svgOf({ drawing }: NumberedPage): string {
  return drawingText(drawing, { colours: 'resolved' });
}

function withAudio(plan: BuildPlan, audio: Partial<BuildPlan['audio']>): BuildPlan {
  return { ...plan, audio: { ...plan.audio, ...audio } };
}

/** The curve that is drawn for a channel, as points on paper. */
function curveOf(page: NumberedPage, channel: string): PaperPoint[] {
  const { document } = parseHTML(svgOf(page));
  const d = document.querySelector(`[data-of="${channel}"] path`)?.getAttribute('d') ?? '';
  return [...d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => ({ xMm: Number(x), yMm: Number(y) }));
}

/** Where a figure of an axis stands, as a reader finds it. */
function figureAt({ drawing }: NumberedPage, text: string): PaperPoint {
  const found = drawing.texts.find((each) => each.text === text);
  if (!found) throw new Error(`no figure ${text} at the axes`);
  return centreOf(found.box);
}

/** Reads the level of a curve at a frequency off the sheet, by the figures 50 and 5 k, and -24 and -6. */
function readOff(page: NumberedPage, channel: string, frequencyHz: number): number {
  const [fromX, toX] = [figureAt(page, '50').xMm, figureAt(page, '5 k').xMm];
  const [lowY, highY] = [figureAt(page, '-24').yMm, figureAt(page, '-6').yMm];
  const xMm = fromX + ((toX - fromX) * Math.log10(frequencyHz / 50)) / 2;
  const points = curveOf(page, channel);
  const next = points.findIndex((point) => point.xMm >= xMm);
  const [a, b] = [points[next - 1], points[next]];
  if (!a || !b) throw new Error(`${channel} is not drawn at ${frequencyHz} Hz`);
  const yMm = a.yMm + ((b.yMm - a.yMm) * (xMm - a.xMm)) / (b.xMm - a.xMm);
  return -24 + (18 * (yMm - lowY)) / (highY - lowY);
}

describe.each(fixedJobs)('responses of %s', (job) => {
  it('lets no text meet another or a line, and finds room for all', () => {
    const pages = drawn(fixedPlan(job));
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      expect(overlapsOn(page)).toEqual([]);
      expect(page.unplaced).toEqual([]);
      expect(xmlFault(svgOf(page))).toBeNull();
    }
  });

  it('shows each filtered channel, names its speakers, and marks each handover', () => {
    const { audio } = fixedPlan(job);
    const pages = drawn(fixedPlan(job));
    const svgs = pages.map(svgOf).join('');
    const written = pages.flatMap(({ drawing }) => drawing.texts.map(({ text }) => text)).join(' ');
    for (const { id, levelsDb, speakers } of audio.channels) {
      if (levelsDb.length === 0 || speakers.length === 0) continue;
      expect(svgs).toContain(`data-of="${id}"`);
      for (const speaker of speakers) expect(written).toContain(speaker);
    }
    const told = audio.curves.sums.flatMap(({ handovers }) => handovers);
    expect(told.length).toBeGreaterThan(0);
    const figures = [...written.matchAll(/([\d.]+) (k?)Hz/g)].map(
      ([, digits, kilo]) => Number(digits) * (kilo === 'k' ? 1000 : 1),
    );
    // A processor's dial goes by whole hertz, and by hundredths of a kilohertz above (common practice, no source).
    for (const { frequencyHz } of told) {
      const stepHz = frequencyHz < 1000 ? 1 : 10;
      expect(
        figures.some((figureHz) => Math.abs(figureHz - frequencyHz) <= stepHz / 2),
        `${frequencyHz} Hz in ${written}`,
      ).toBe(true);
    }
  });

  it('tells the paths of a graph apart by their lines', () => {
    const [page] = drawn(fixedPlan(job));
    const [sum] = fixedPlan(job).audio.curves.sums;
    if (!page || !sum) throw new Error('nothing is drawn');
    const { document } = parseHTML(svgOf(page));
    const looks = sum.channels.map((id) => {
      const path = document.querySelector(`[data-of="${id}"] path`);
      return `${path?.getAttribute('stroke-width')} ${path?.getAttribute('stroke-dasharray')}`;
    });
    expect(new Set(looks).size).toBe(sum.channels.length);
  });

  it('is the same bytes each time', () => {
    expect(drawn(fixedPlan(job)).map(svgOf)).toEqual(drawn(fixedPlan(job)).map(svgOf));
  });
});

it('keeps its look', () => {
  const pages = drawn(fixedPlan('van-three-amps'));
  const files = pages.map(({ page, drawing }) => [
    `${page.id}.svg`,
    drawingText(drawing, { colours: 'properties' }),
  ]);
  expectGolden(new URL('../golden/responses/', import.meta.url), Object.fromEntries(files));
});

describe('responses', () => {
  // A Butterworth high-pass of second order: |H|^2 = 1/(1 + (fc/f)^4); with fc 80 Hz that is 1/17 at 40 Hz.
  // A Linkwitz-Riley low-pass of fourth order: |H| = 1/(1 + (f/fc)^4); with fc 3 kHz that is 1/17 at 6 kHz.
  it('can be read off by the figures at its axes', () => {
    const [small] = drawn(fixedPlan('under-seat-five'));
    const [estate] = drawn(fixedPlan('estate-side-well'));
    if (!small || !estate) throw new Error('nothing is drawn');
    expect(readOff(small, 'amp.1', 40)).toBeCloseTo(10 * Math.log10(1 / 17), 0);
    expect(readOff(small, 'amp.1', 80)).toBeCloseTo(10 * Math.log10(1 / 2), 0);
    expect(readOff(estate, 'amp-front.3', 6000)).toBeCloseTo(20 * Math.log10(1 / 17), 0);
    expect(readOff(estate, 'amp-front.3', 500)).toBeCloseTo(0, 0);
  });

  it('draws left and right once where they are alike, and each where they are not', () => {
    const plan = fixedPlan('under-seat-five');
    const count = (one: BuildPlan): number =>
      drawn(one)
        .flatMap(({ drawing }) => drawing.texts)
        .filter(({ text }) => text.startsWith('Sum of')).length;
    const { curves } = plan.audio;
    const turned = curves.sums.map((sum, index) =>
      index === 1 ? { ...sum, levelsDb: sum.levelsDb.map((level) => level - 1) } : sum,
    );
    expect(curves.sums).toHaveLength(4);
    expect(count(plan)).toBe(2);
    expect(count(withAudio(plan, { curves: { ...curves, sums: turned } }))).toBe(3);
  });

  it('shows a path that hands over to no other, without a sum', () => {
    const plan = fixedPlan('under-seat-five');
    const alone = withAudio(plan, { curves: { ...plan.audio.curves, sums: [] } });
    const texts = drawn(alone).flatMap(({ drawing }) => drawing.texts.map(({ text }) => text));
    expect(texts).toContain('Paths that hand over to no other');
    expect(texts).not.toContain('Sum');
  });

  it('cuts what is louder or quieter than its axis', () => {
    const plan = fixedPlan('under-seat-five');
    const wild = plan.audio.channels.map((channel) => {
      return { ...channel, levelsDb: channel.levelsDb.map((_, index) => (index % 7) * 20 - 70) };
    });
    const [page] = drawn(withAudio(plan, { channels: wild }));
    if (!page) throw new Error('nothing is drawn');
    const [top, foot] = [figureAt(page, '+6 dB').yMm, figureAt(page, '-30').yMm];
    const heights = curveOf(page, 'amp.1').map(({ yMm }) => yMm);
    expect(Math.min(...heights)).toBeGreaterThan(top - 0.5);
    expect(Math.max(...heights)).toBeLessThan(foot + 0.5);
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(0.9 * (foot - top));
  });

  it('has no page for a job without filters', () => {
    const plan = fixedPlan('under-seat-five');
    const channels = plan.audio.channels.map((channel) => ({ ...channel, levelsDb: [] }));
    expect(drawn(withAudio(plan, { channels, curves: { ...plan.audio.curves, sums: [] } }))).toEqual([]);
  });
});
