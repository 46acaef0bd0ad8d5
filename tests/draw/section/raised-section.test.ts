import { describe, expect, test } from 'vitest';
import { drawJobPages } from '../../../lib/draw/draw-job.ts';
import { beneathOf } from '../../../lib/draw/section/wires-beneath.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan, PlanBoard, PlanPlacement, PlanRoute } from '../../../lib/model/plan/index.ts';
import { crowded } from '../../plan/board/crowded-board.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';

const { plan } = crowded();
const [board] = plan.boards;
const raised = board?.placements.find(({ raisedM }) => raisedM > 0);
if (!board || !raised) throw new Error('Nothing is raised.');
const wire = plan.wires[0];
if (!wire) throw new Error('There is no wire.');

/** What lies below a part of 200 by 100 mm, raised by 40 mm, on a board with the given routes and parts. */
function below(
  routes: readonly (readonly [number, number])[][],
  lower: readonly Partial<PlanPlacement>[] = [],
) {
  const upper: PlanPlacement = { ...upperBase, item: 'upper', xM: 0.1, yM: 0.1, widthM: 0.2, depthM: 0.1 };
  const placements = [
    upper,
    ...lower.map((one, nth) => ({ ...upperBase, raisedM: 0, item: `lower-${nth}`, ...one })),
  ];
  const made = routes.map(
    (points): PlanRoute => ({
      wire: wireId,
      along: [wireId],
      points: points.map(([x, y]) => ({ xM: x / 1000, yM: y / 1000 })),
      lengthM: 1,
      layer: 'power',
      bends: 0,
    }),
  );
  const on: PlanBoard = { ...boardBase, placements, routes: made };
  return beneathOf({ ...plan, boards: [on] } satisfies BuildPlan, on, upper);
}
const upperBase = { ...raised, raisedM: 0.04 };
const boardBase = board;
const wireId = wire.id;

describe('what lies below a raised part', () => {
  test('is the stroke of a route within its footprint, cut at its edges: by hand', () => {
    const { wires } = below([
      [
        [0, 150],
        [150, 150],
        [150, 300],
      ],
    ]);
    expect(wires.map(({ from, to }) => [from, to])).toEqual([
      [
        { xM: expect.closeTo(0.1, 9), yM: 0.15 },
        { xM: 0.15, yM: 0.15 },
      ],
      [
        { xM: 0.15, yM: 0.15 },
        { xM: 0.15, yM: expect.closeTo(0.2, 9) },
      ],
    ]);
    expect(wires[0]?.labels).toEqual([wire.label]);
  });

  test('is no route along its edge or beside it, and one a millimetre inside', () => {
    const level = (y: number) =>
      below([
        [
          [0, y],
          [400, y],
        ],
      ]).wires.length;
    expect(level(100)).toBe(0);
    expect(level(99)).toBe(0);
    expect(level(101)).toBe(1);
    expect(level(199)).toBe(1);
    expect(level(200)).toBe(0);
  });

  test('is a part that stands lower within the footprint, and none that touches it or stands as high', () => {
    const size = { widthM: 0.05, depthM: 0.05, yM: 0.12 };
    const names = (one: Partial<PlanPlacement>) => below([], [{ ...size, ...one }]).placements.length;
    expect(names({ xM: 0.15 })).toBe(1);
    expect(names({ xM: 0.299 })).toBe(1);
    expect(names({ xM: 0.3 })).toBe(0);
    expect(names({ xM: 0.15, raisedM: 0.04 })).toBe(0);
  });
});

describe('the section of a raised part', () => {
  const pages = drawJobPages(plan, shippedMetrics).filter(({ page }) => page.documentType === 'Section');
  const [page] = pages;
  if (!page) throw new Error('There is no section.');
  const texts = page.drawing.texts.map(({ text }) => text);
  const svg = drawingText(page.drawing, { colours: 'resolved' });

  test('is one for each, on the placement sheet, in third-angle projection', () => {
    expect(pages).toHaveLength(board.placements.filter(({ raisedM }) => raisedM > 0).length);
    expect(page.sheet).toBe('placement');
    expect(page.page.projection).toBe('third');
  });

  test('lets nothing overlap and leaves nothing out', () => {
    expect(overlapsOn(page)).toEqual([]);
    expect(page.unplaced).toEqual([]);
  });

  test('names the part in both views, all that passes below it, and the section by its plane', () => {
    expect(texts.filter((text) => text === 'Bass amplifier')).toHaveLength(2);
    expect(texts.filter((text) => text === 'Bar')).toHaveLength(2);
    const [, plane = ''] = /<g id="[^"]*cutting-plane"[^>]*>(.*?)<\/g>/s.exec(svg) ?? [];
    expect(plane.match(/>A<\/text>/g)).toHaveLength(2);
    expect(texts).toContain('A-A');
    const { placements, wires } = beneathOf(plan, board, raised);
    expect(placements.map(({ item }) => item)).toEqual(['bar']);
    const said = page.page.notes.join('\n');
    for (const label of wires.flatMap((one) => one.labels)) expect(said).toContain(label);
    expect(said).toContain('Bar');
  });

  test('tells heights off the board: two layers of 18 mm, and 20 mm below them', () => {
    expect(texts.join('\n')).toMatch(/1 7\/16 .*\[36\]/);
    expect(texts.join('\n')).toMatch(/\[20\]/);
  });

  test('hatches what is cut: the board one way, the two rails the other (ISO 128-3, from memory)', () => {
    expect(svg.match(/fill="url\(#[^"]*hatch-section\)"/g)).toHaveLength(1);
    expect(svg.match(/fill="url\(#[^"]*hatch-sectionBeside\)"/g)).toHaveLength(2);
  });

  test('leaves a cut-out of the board open where the plane passes it', () => {
    const middleM = raised.yM + raised.depthM / 2;
    const [leftM, rightM] = [raised.xM + 0.1, raised.xM + 0.14];
    const hole = [
      { xM: leftM, yM: 0.001, bulge: 0 },
      { xM: rightM, yM: 0.001, bulge: 0 },
      { xM: rightM, yM: middleM * 2, bulge: 0 },
      { xM: leftM, yM: middleM * 2, bulge: 0 },
    ];
    const opened = { ...plan, boards: [{ ...board, cutouts: [hole] }] };
    const [drawn] = drawJobPages(opened, shippedMetrics).filter(
      ({ page: one }) => one.documentType === 'Section',
    );
    const open = drawn ? drawingText(drawn.drawing, { colours: 'resolved' }) : '';
    expect(open.match(/fill="url\(#[^"]*hatch-section\)"/g)).toHaveLength(2);
  });
});
