import { describe, expect, test } from 'vitest';
import { layoutPictures } from '../../../lib/draw/layouts/layout-picture.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan, PlanBoard } from '../../../lib/model/plan/index.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { drawnThings } from '../drawn-svg.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';

const plans: readonly (readonly [string, BuildPlan])[] = [
  ...demoJobs.map((job) => [`demo ${job}`, demoPlan(job)] as const),
  ...fixedJobs.map((job) => [`fixed ${job}`, fixedPlan(job)] as const),
];
const boards = plans.flatMap(([name, plan]) =>
  plan.boards.map((board) => ({ name: `${name}, ${board.id}`, plan, board })),
);
const compared = boards.filter(({ board }) => board.proposals.length > 1);
const picturesOf = (plan: BuildPlan, board: PlanBoard) => layoutPictures(plan, board, shippedMetrics);

test('boards whose places were all given have nothing to compare, those that were searched for have', () => {
  expect(compared.length).toBeGreaterThan(0);
  for (const { plan, board } of boards)
    expect(picturesOf(plan, board)).toHaveLength(board.proposals.length > 1 ? board.proposals.length : 0);
});

describe.each(compared)('the layouts of $name', ({ plan, board }) => {
  const pictures = picturesOf(plan, board);

  test('show each part by its number once, clear of lines and of each other', () => {
    for (const { drawing, unplaced } of pictures) {
      const texts = drawing.texts.map(({ text }) => text);
      const all = board.placements.map((_, at) => String(at + 1));
      expect([...texts, ...unplaced].toSorted()).toEqual(all.toSorted());
      expect(unplaced).toEqual([]);
      // These pictures have no frame: their rim is the paper's.
      expect(overlapsOn({ drawing }).filter((one) => !one.endsWith('off the sheet'))).toEqual([]);
      for (const { box } of drawing.texts) {
        expect(Math.min(box.leftMm, box.topMm)).toBeGreaterThanOrEqual(0);
        expect(box.rightMm).toBeLessThanOrEqual(drawing.widthMm);
        expect(box.bottomMm).toBeLessThanOrEqual(drawing.heightMm);
      }
    }
  });

  test('differ from each other', () => {
    expect(new Set(pictures.map(({ drawing }) => drawingText(drawing, { colours: 'resolved' }))).size).toBe(
      pictures.length,
    );
  });
});

/** A part of 200 by 100 mm, 50 mm from the corner of a board of 600 by 400 mm, as it is placed and by another layout. */
function boardWith(turnDeg: number): PlanBoard {
  const [base] = boards;
  const [placement] = base?.board.placements ?? [];
  if (!base || !placement) throw new Error('No demo board has a part.');
  const outline = [
    { xM: 0, yM: 0, bulge: 0 },
    { xM: 0.6, yM: 0, bulge: 0 },
    { xM: 0.6, yM: 0.4, bulge: 0 },
    { xM: 0, yM: 0.4, bulge: 0 },
  ];
  const built = { ...placement, xM: 0.05, yM: 0.05, widthM: 0.2, depthM: 0.1, turnDeg: 0 };
  const other = { item: built.item, xM: 0.3, yM: 0.1, turnDeg };
  const proposals = [built, other].map((at) => ({
    total: 1,
    score: {},
    placements: [{ item: at.item, xM: at.xM, yM: at.yM, turnDeg: at.turnDeg }],
  }));
  return { ...base.board, outline, cutouts: [], placements: [built], proposals };
}

/** The box of the part (m) and its marked corner, measured on the written picture by the board's own outline. */
function measured(board: PlanBoard, rank: number) {
  const [, plan] = plans[0] ?? [];
  if (!plan) throw new Error('There is no demo job.');
  const picture = picturesOf(plan, board)[rank - 1];
  if (!picture) throw new Error(`There is no layout ${rank}.`);
  const things = drawnThings(drawingText(picture.drawing, { colours: 'resolved' }));
  const [outline, body, mark] = things
    .filter(({ strokes }) => strokes.length > 0)
    .map(({ strokes }) => {
      const [xs, ys] = [strokes.flatMap(({ x1, x2 }) => [x1, x2]), strokes.flatMap(({ y1, y2 }) => [y1, y2])];
      return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), low: Math.max(...ys) };
    });
  if (!outline || !body || !mark) throw new Error('Outline, part or mark is not drawn.');
  const perM = (outline.right - outline.left) / 0.6;
  return {
    xM: (body.left - outline.left) / perM,
    yM: (outline.low - body.low) / perM,
    widthM: (body.right - body.left) / perM,
    depthM: (body.low - body.top) / perM,
    isRight: mark.right > (body.left + body.right) / 2,
    isHigh: mark.top < (body.top + body.low) / 2,
  };
}

// Turned counter-clockwise, the lower left corner comes to the lower right, the upper right, the upper left.
test.each([
  [0, 0.2, 0.1, false, false],
  [90, 0.1, 0.2, true, false],
  [180, 0.2, 0.1, true, true],
  [270, 0.1, 0.2, false, true],
])(
  'a part that another layout turns by %s degrees is drawn so, its corner marked',
  (turn, w, d, isRight, isHigh) => {
    const board = boardWith(turn);
    const built = measured(board, 1);
    expect(built.widthM).toBeCloseTo(0.2, 2);
    expect([built.isRight, built.isHigh]).toEqual([false, false]);
    const other = measured(board, 2);
    for (const [found, asked] of [
      [other.xM, 0.3],
      [other.yM, 0.1],
      [other.widthM, w],
      [other.depthM, d],
    ] as const)
      expect(found).toBeCloseTo(asked, 2);
    expect([other.isRight, other.isHigh]).toEqual([isRight, isHigh]);
  },
);
