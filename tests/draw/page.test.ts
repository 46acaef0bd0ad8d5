import { describe, expect, it } from 'vitest';
import { drawJobPages } from '../../lib/draw/draw-job.ts';
import { strokeObstacles } from '../../lib/draw/drawn-strokes.ts';
import { lines } from '../../lib/draw/line-styles.ts';
import { drawPage, numberPage, roomOf } from '../../lib/draw/page.ts';
import { at } from '../../lib/draw/paper.ts';
import { drawLine } from '../../lib/draw/pen.ts';
import { drawingText } from '../../lib/draw/surface.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';
import { samplePlan } from './sample/sample-plan.ts';
import { middling } from './sample/sample-shape.ts';

describe.each([
  ['released', { ...middling, released: true }],
  ['draft', { ...middling, released: false }],
  ['a4', { ...middling, paper: 'a4' as const }],
])('pages of a job, %s', (_, shape) => {
  const plan = samplePlan(shape);
  // Pictures stand among the text of a page, without frame and number.
  const pages = drawJobPages(plan, shippedMetrics).filter(({ sheet }) => sheet !== 'cover');

  it('have the room that is told before they are drawn', () => {
    expect(pages.length).toBeGreaterThan(5);
    for (const { page, room } of pages) expect(roomOf(plan, shippedMetrics, page), page.id).toEqual(room);
  });

  it('bear their number between its caption and what follows it in the title block', () => {
    pages.forEach(({ drawing }, index) => {
      const texts = [...drawingText(drawing, { colours: 'resolved' }).matchAll(/>([^<>]+)<\/text>/g)];
      const said = texts.map(([, text = '']) => text);
      const caption = said.indexOf('Drawing');
      expect(said.slice(caption, caption + 3)).toEqual([
        'Drawing',
        `${index + 1} of ${pages.length}`,
        'Date of issue',
      ]);
    });
  });

  it('are obstacles as a whole, however often and early they were read', () => {
    for (const { drawing } of pages) {
      const known = strokeObstacles(drawing);
      expect(known).toEqual(strokeObstacles({ ...drawing, strokes: new WeakMap() }));
    }
  });
});

describe('a page', () => {
  const plan = samplePlan(middling);
  const [first] = drawJobPages(plan, shippedMetrics);
  if (!first) throw new Error('the job has no drawing');
  const { page } = first;

  it('has obstacles for what is drawn after the first reading, too', () => {
    const { drawing } = drawPage(plan, shippedMetrics, page);
    const before = strokeObstacles(drawing).length;
    drawLine(drawing.svg, [at(50, 50), at(60, 50)], lines.cut);
    expect(strokeObstacles(drawing).at(-1)).toEqual({
      id: 'drawing',
      segment: { from: at(50, 50), to: at(60, 50) },
    });
    expect(strokeObstacles(drawing)).toHaveLength(before + 1);
  });

  it('tells of a number that is too long for its field', () => {
    const many = { drawing: 1_000_000_000_000, drawings: 1_000_000_000_000 };
    const { unplaced } = numberPage(drawPage(plan, shippedMetrics, page), many);
    expect(unplaced).toContain('title block: Drawing');
  });
});
