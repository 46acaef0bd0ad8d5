import { describe, expect, test } from 'vitest';
import { drawJobPages, type JobPage } from '../../../lib/draw/draw-job.ts';
import { boxesMeet, boxRound, type PaperBox } from '../../../lib/draw/paper.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan, PlanBoard } from '../../../lib/model/plan/index.ts';
import { cutAndDrill } from '../../../lib/publish/sheets/board/cut-and-drill.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { drawnThings } from '../drawn-svg.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';

const plans = new Map<string, BuildPlan>([
  ...demoJobs.map((job) => [`demo ${job}`, demoPlan(job)] as const),
  ...fixedJobs.map((job) => [`fixed ${job}`, fixedPlan(job)] as const),
]);

const textsOf = ({ drawing }: JobPage): string[] => drawing.texts.map(({ text }) => text);

/** What the drill table of a plan names and heads its groups with: `A24`, and `A`. */
function drillTable(plan: BuildPlan): {
  readonly names: readonly string[];
  readonly letters: readonly string[];
} {
  const printed = JSON.stringify(cutAndDrill.model(plan));
  return {
    names: [...new Set([...printed.matchAll(/"([A-Z]\d?\d+)"/g)].map(([, name = '']) => name))],
    letters: [...new Set([...printed.matchAll(/"([A-Z]\d?): bit /g)].map(([, letter = '']) => letter))],
  };
}

describe.each([...plans])('the drill drawings, %s', (_, plan) => {
  const pages = drawJobPages(plan, shippedMetrics).filter(({ sheet }) => sheet === 'cut-and-drill');
  const drills = pages.filter(({ page }) => page.documentType === 'Drill drawing');

  test('bear the letter of every hole of the drill table beside it, on both faces', () => {
    const { names, letters } = drillTable(plan);
    const holes = plan.boards.flatMap((board) => board.holes);
    expect(names).toHaveLength(holes.length);
    expect(drills.length).toBe(2 * plan.boards.filter((board) => board.holes.length > 0).length);
    for (const drill of drills) {
      expect(textsOf(drill)).toEqual(expect.arrayContaining([...names]));
      for (const letter of letters)
        expect(textsOf(drill).filter((text) => text.startsWith(`${letter}: bit `))).toHaveLength(1);
    }
  });

  test('tell in the key how many holes each letter has: as many as bear it', () => {
    for (const drill of drills)
      for (const key of textsOf(drill).filter((text) => / holes?$/.test(text))) {
        const [, letter = '', count = ''] = /^([A-Z]\d?): bit .* (\d+) holes?$/.exec(key) ?? [];
        const bearing = textsOf(drill).filter((text) => new RegExp(`^${letter}\\d+$`).test(text));
        expect(bearing, key).toHaveLength(Number(count));
      }
  });

  test('have the arrows of direction off the board, as cut drawings have', () => {
    for (const page of pages) {
      const board = plan.boards.find(({ id }) => page.page.id.endsWith(`-${id}`));
      expect(board).toBeDefined();
      const edge = board ? edgeOf(page, board) : null;
      const words = page.drawing.texts.filter(({ text }) =>
        [board?.right, board?.upward].some((way) => text === way?.toUpperCase()),
      );
      expect(words.length).toBeGreaterThanOrEqual(2);
      for (const { box } of words) expect(edge && boxesMeet(edge, box), page.page.id).toBe(false);
      expect(page.unplaced).toEqual([]);
    }
  });
});

/** The box round the outline of a board as it was drawn. */
function edgeOf({ drawing }: JobPage, { id }: PlanBoard): PaperBox {
  const svg = drawingText(drawing, { colours: 'resolved' });
  const [, group = ''] = new RegExp(`<g data-of="${id}">(.*?)</g>`, 's').exec(svg) ?? [];
  const strokes = drawnThings(group).flatMap((thing) => thing.strokes);
  return boxRound(
    strokes.flatMap(({ x1, y1, x2, y2 }) => [
      { xMm: x1, yMm: y1 },
      { xMm: x2, yMm: y2 },
    ]),
  );
}
