import { describe, expect, test } from 'vitest';
import { drawJobPages } from '../../../lib/draw/draw-job.ts';
import { shortName } from '../../../lib/draw/power/feed-words.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';

describe.each([...fixedJobs])('the setting out of parts, %s', (job) => {
  const plan = fixedPlan(job);
  const pages = drawJobPages(plan, shippedMetrics).filter(({ page }) => page.documentType === 'Setting out');

  test('is one sheet of each board on which nothing overlaps and nothing is left out', () => {
    expect(pages).toHaveLength(plan.boards.length);
    expect(pages.flatMap(overlapsOn)).toEqual([]);
    expect(pages.flatMap(({ unplaced }) => unplaced)).toEqual([]);
  });

  test('has both ordinates of the lower left corner of every part, in whole millimetres, by its number', () => {
    for (const { page, drawing } of pages) {
      const texts = drawing.texts.map(({ text }) => text);
      const board = plan.boards.find(({ id }) => page.id === `set-out-${id}`);
      const figures = texts.flatMap((text) => {
        const [, numbers = '', mm = ''] = /^([\d, -]+): .*\[(\d+)\]$/.exec(text) ?? [];
        return mm === '' ? [] : [{ numbers: listed(numbers), mm: Number(mm) }];
      });
      for (const { item, xM, yM } of board?.placements ?? []) {
        const of = plan.items.find(({ id }) => id === item);
        const key = texts.find((text) => of && text.endsWith(`: ${shortName(of)}`));
        const n = Number(key?.split(':')[0]);
        const own = figures.filter(({ numbers }) => numbers.includes(n)).map(({ mm }) => mm);
        expect(
          own.toSorted((a, b) => a - b),
          item,
        ).toEqual([Math.round(xM * 1000), Math.round(yM * 1000)].toSorted((a, b) => a - b));
      }
    }
  });
});

/** The numbers of `1, 4-6`. */
function listed(text: string): number[] {
  return text.split(', ').flatMap((run) => {
    const [from = 0, to = from] = run.split('-').map(Number);
    return Array.from({ length: to - from + 1 }, (_, step) => from + step);
  });
}
