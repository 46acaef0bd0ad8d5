import { describe, expect, it } from 'vitest';
import { drawJobPages } from '../../lib/draw/draw-job.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';
import { overlapsOn } from './overlaps.ts';
import { crowdedPlan } from './sample/crowded-plan.ts';

describe('a board too crowded for its names', () => {
  const plan = crowdedPlan(8, 5, 0.05, 0.04);
  const pages = drawJobPages(plan, shippedMetrics).filter(({ page }) => page.documentType === 'Placement');
  const details = pages.filter(({ page }) => page.title.includes(', detail '));
  const said = (sheets: typeof pages): string[] =>
    sheets.flatMap(({ drawing }) => drawing.texts.map(({ text }) => text));

  it('has details at a larger scale, and its other sheets say so', () => {
    const whole = pages.filter((page) => !details.includes(page));
    expect(details.length).toBeGreaterThan(1);
    for (const { page } of details) expect(page.scale).toBeLessThan(whole[0]?.page.scale ?? 0);
    expect(said(whole).join(' ')).toContain('left out here stand on the details');
  });

  it('has every name of every item and terminal on the details', () => {
    expect(details.flatMap(({ unplaced }) => unplaced)).toEqual([]);
    const texts = said(details);
    const count = (text: string): number => texts.filter((one) => one === text).length;
    for (const { title } of plan.items)
      for (const word of title.split(' ')) expect(texts.join(' ').split(' '), title).toContain(word);
    for (const name of ['IN-A', 'IN-B', 'OUT-A', 'OUT-B', 'SENSE', 'SHIELD'])
      expect(count(name), name).toBeGreaterThanOrEqual(plan.items.length);
  });

  it('lets no text meet another, a line or the rim', () => {
    expect(pages.flatMap(overlapsOn)).toEqual([]);
  });
});
