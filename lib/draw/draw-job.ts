import type { BuildPlan } from '../model/plan/index.ts';
import { type DrawingId, drawingIds, drawingKinds } from './drawings/index.ts';
import type { DrawingSheet } from './drawings/kind.ts';
import type { TextMetrics } from './lettering/text-metrics.ts';
import { type NumberedPage, numberPage } from './page.ts';
import type { SerialiseOptions } from './serialise.ts';
import { scaleText } from './sheet/scale.ts';
import { drawingText } from './surface.ts';

/** One drawing of a job, on a sheet of its own. */
export interface JobDrawing {
  /** The sheet of the job's page that it belongs on. */
  readonly sheet: DrawingSheet;
  /** Who may see it. */
  readonly openTo: 'builders' | 'everyone';
  readonly id: string;
  readonly title: string;
  readonly svg: string;
  /** `1:5`; null for a diagram. */
  readonly scale: string | null;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What found no place on it: never dropped in silence. */
  readonly unplaced: readonly string[];
}

/** A page with the sheet of the job's page that it belongs on. */
export interface JobPage extends NumberedPage {
  readonly sheet: DrawingSheet;
  readonly openTo: 'builders' | 'everyone';
}

/** Where the numbers of some drawings lie among those of their job. */
export interface NumberRun {
  /** Numbered drawings before them. */
  readonly before: number;
  /** Numbered drawings of the job. */
  readonly of: number;
}

/** The drawings of one kind, drawn; their numbers are known only once all kinds are. */
export interface KindPages {
  /** How many of them have a number. */
  readonly numbered: number;
  /** Numbers them, once. */
  pages(run: NumberRun): readonly JobPage[];
}

/** Without a choice, colours are left to the page. */
const usualOptions: SerialiseOptions = { colours: 'properties' };

/**
 * Every drawing of a plan as SVG text, kind by kind and board by board, each in its frame and numbered among
 * them all. The same plan gives the same bytes.
 */
export function drawJob(
  plan: BuildPlan,
  metrics: TextMetrics,
  options: SerialiseOptions = usualOptions,
): readonly JobDrawing[] {
  return drawJobPages(plan, metrics).map((page) => writtenPage(page, options));
}

/** The same drawings before they are written as text, with every text and its room. */
export function drawJobPages(plan: BuildPlan, metrics: TextMetrics): readonly JobPage[] {
  const kinds = drawingIds.map((id) => drawKind(id, plan, metrics));
  const runs = numberRuns(kinds.map(({ numbered }) => numbered));
  return kinds.flatMap((kind, at) => kind.pages(runs[at] ?? { before: 0, of: 0 }));
}

/** Draws the pages of one kind. */
export function drawKind(id: DrawingId, plan: BuildPlan, metrics: TextMetrics): KindPages {
  const { sheet, openTo = 'builders', unframed = false, pages } = drawingKinds[id];
  const drawn = pages(plan, metrics);
  return {
    numbered: unframed ? 0 : drawn.length,
    pages: ({ before, of }) =>
      drawn.map((page, index) => {
        const drawing = before + (unframed ? 0 : index + 1);
        return { sheet, openTo, ...numberPage(page, { drawing, drawings: of }) };
      }),
  };
}

/** How the numbers of a job's drawings fall to its kinds, by how many of each have one. */
export function numberRuns(counts: readonly number[]): readonly NumberRun[] {
  const sum = (some: readonly number[]): number => some.reduce((total, count) => total + count, 0);
  return counts.map((_, at) => ({ before: sum(counts.slice(0, at)), of: sum(counts) }));
}

/** A page as SVG text, with what is told beside it. */
export function writtenPage(
  { sheet, openTo, page, drawing, unplaced }: JobPage,
  options: SerialiseOptions = usualOptions,
): JobDrawing {
  const { id, title, scale } = page;
  const { widthMm, heightMm } = drawing;
  return {
    sheet,
    openTo,
    id,
    title,
    svg: drawingText(drawing, options),
    scale: scale === null ? null : scaleText(scale),
    widthMm,
    heightMm,
    unplaced,
  };
}
