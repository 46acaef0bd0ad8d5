import { describe, expect, test } from 'vitest';
import { nestJobs } from '../../lib/board/cut/sheet-pieces.ts';
import { drawJobPages, type JobPage } from '../../lib/draw/draw-job.ts';
import { drawingText } from '../../lib/draw/surface.ts';
import { nestPaths } from '../../lib/export/nest/nest-paths.ts';
import { smallPlan } from '../plan/plan-small-shop.ts';
import { onFourPoints, stocked } from '../plan/power/four-points.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';
import { overlapsOn } from './overlaps.ts';

const { plan } = smallPlan(
  ...stocked({ id: 'ply-9', mm: 9, pieces: 1 }),
  ...onFourPoints([
    'sheet: ply-9',
    'ribs: { brace: { edge: bottom, distance: 150 mm, height: 19 mm }, lip: { edge: top, distance: 60 mm, height: 30 mm, face: mounting } }',
  ]),
);
const pages = drawJobPages(plan, shippedMetrics);

function pageOf(id: string): JobPage {
  const page = pages.find((one) => one.page.id.startsWith(id));
  if (!page) throw new Error(`There is no ${id}.`);
  return page;
}
/** What is drawn of a rib on a page, dashed or not. */
function dashed(id: string, rib: string): boolean {
  const svg = drawingText(pageOf(id).drawing, { colours: 'resolved' });
  const groups = svg.split(`data-of="${rib}"`).slice(1);
  const own = groups
    .map((group) => group.slice(0, group.indexOf('</g>')))
    .find((group) => group.includes('<path'));
  if (own === undefined) throw new Error(`${rib} is not drawn on ${id}.`);
  return own.includes('stroke-dasharray');
}
const textsOf = (id: string) => pageOf(id).drawing.texts.map(({ text }) => text);

describe('ribs on the drawings of a board', () => {
  test('are hidden lines where the board is before them, and seen from their own side (ISO 128)', () => {
    for (const id of ['cut-main', 'drill-main', 'placement-main']) {
      expect(dashed(id, 'brace'), id).toBe(true);
      expect(dashed(id, 'lip'), id).toBe(false);
    }
    expect(dashed('drill-rear-main', 'brace')).toBe(false);
    expect(dashed('drill-rear-main', 'lip')).toBe(true);
  });

  test('have their names, and on the rear view the room behind', () => {
    for (const id of ['cut-main', 'drill-rear-main', 'placement-main'])
      expect(textsOf(id)).toEqual(expect.arrayContaining(['rib brace', 'rib lip']));
    // Spacers of 25 mm less a rib of 19 mm.
    expect(textsOf('drill-rear-main').join('\n')).toMatch(/\[6\] free behind/);
  });

  test('leave no text out and let none meet a line', () => {
    for (const id of ['cut-main', 'drill-main', 'drill-rear-main', 'placement-main', 'wiring-main']) {
      expect(pageOf(id).unplaced, id).toEqual([]);
      expect(overlapsOn(pageOf(id)), id).toEqual([]);
    }
  });

  test('are cut with the board from its sheet', () => {
    const { sheets, pieces } = nestJobs([plan]);
    const loops = sheets.flatMap((sheet) => nestPaths(sheet, pieces).cut);
    const sides = loops.map((loop) => {
      const [a, b, c] = loop;
      if (!a || !b || !c) return [];
      return [Math.hypot(b.xM - a.xM, b.yM - a.yM), Math.hypot(c.xM - b.xM, c.yM - b.yM)].map((side) =>
        Number((side * 1000).toFixed(1)),
      );
    });
    expect(sides).toContainEqual([19, 488]);
    expect(sides).toContainEqual([30, 488]);
  });
});
