import { ratedPointName } from '../../model/operating-points.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawPage, type Page, roomOf } from '../page.ts';
import { heightMm, widthMm } from '../paper.ts';
import { feedParts, feedWidths, partHeightMm } from '../power/feed-geometry.ts';
import { type FeedGrid, feedGrid } from '../power/feed-grid.ts';
import { paintFeed } from '../power/feed-paint.ts';
import { cutToSheets } from '../power/feed-sheets.ts';
import { type FeedNode, feedForest } from '../power/feed-tree.ts';
import { atMostText, drawnText } from '../power/feed-words.ts';
import type { DrawingKind } from './kind.ts';

/** Single-line diagram of the feed, after IEC 60617 (mem): sources at the left, grounds at the right. */
export const power: DrawingKind = {
  sheet: 'power-diagram',
  pages: (plan, metrics) =>
    plan.wires.some(({ role }) => role === 'power')
      ? powerPages(plan, metrics).map((page) => drawPage(plan, metrics, page))
      : [],
};

function powerPages(plan: BuildPlan, metrics: TextMetrics): Page[] {
  const forest = feedForest(plan);
  const base: Omit<Page, 'paint' | 'id' | 'title'> = {
    subject: plan.vehicle.title,
    documentType: 'Power diagram',
    description: describe(plan),
    scale: null,
    orientation: 'landscape',
    projection: null,
    notes: notesOf(
      plan,
      forest.rings.map(({ label, id }) => (label === '' ? id : label)),
    ),
  };
  const room = roomOf(plan, metrics, { ...base, id: 'power', title: 'Power diagram' });
  const sheets = forest.roots
    .flatMap((root) =>
      cutToSheets(root, (tree) => feedWidths(gridOf(plan, tree), plan, metrics).totalMm <= widthMm(room)),
    )
    .flatMap((tree) => {
      const grid = gridOf(plan, tree);
      const widths = feedWidths(grid, plan, metrics);
      return feedParts(grid, heightMm(room), metrics).map((part) => ({ grid, widths, part }));
    });
  const factsOf = (item: string): string[] => deviceFacts(plan, item);
  return sheets.map(({ grid, widths, part }, index): Page => {
    const many = sheets.length > 1;
    return {
      ...base,
      id: many ? `power-${index + 1}` : 'power',
      title: many ? `Power diagram, part ${index + 1} of ${sheets.length}` : 'Power diagram',
      paint: (drawing, inside) => {
        paintFeed(drawing, { plan, grid, widths, part, factsOf }, inside);
        const high = partHeightMm(grid, part, metrics).totalMm;
        const larger = widths.totalMm > widthMm(inside) || high > heightMm(inside);
        return larger ? ['Power diagram: larger than its sheet'] : [];
      },
    };
  });
}

function gridOf(plan: BuildPlan, tree: FeedNode): FeedGrid {
  return feedGrid(plan, { roots: [tree], rings: [] });
}

/** Current of a device and the voltage that it gets at rated power. */
function deviceFacts({ power: { loads, drops } }: Pick<BuildPlan, 'power'>, item: string): string[] {
  const load = loads.find((one) => one.item === item);
  if (!load) return [];
  const drop = drops.find((one) => one.item === item && one.point === ratedPointName);
  return [drawnText(load.ratedA) + (drop ? `, ${printed('voltage', drop.voltageV)}` : ', NOT SOLVED')];
}

function describe({ power: { fuses, loads } }: Pick<BuildPlan, 'power'>): string {
  const rated = fuses.map(
    ({ id, ratingA }) => `${id} ${ratingA === null ? 'no rating' : atMostText(ratingA)}`,
  );
  return `Single-line diagram of the feed: ${loads.length} devices; fuses ${rated.join(', ')}.`;
}

function notesOf({ power: { points } }: Pick<BuildPlan, 'power'>, rings: readonly string[]): string[] {
  const unsolved = points.filter(({ state }) => state !== 'solved');
  return [
    'Current and voltage of devices: rated power, cruising',
    ...(rings.length > 0 ? [`Conductors that close a ring, not drawn: ${rings.join(', ')}`] : []),
    ...unsolved.map(
      ({ title, state }) =>
        `NOT SOLVED: ${title} (${state === 'cut-out' ? 'a device cuts out' : 'no solution'})`,
    ),
  ];
}
