import type { BuildPlan } from '../model/plan/index.ts';
import { drawingKinds } from './drawings/index.ts';
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

/**
 * Every drawing of a plan as SVG text, kind by kind and board by board, each in its frame and numbered among
 * them all. The same plan gives the same bytes. Without `options`, colours are left to the page.
 */
export function drawJob(
  plan: BuildPlan,
  metrics: TextMetrics,
  options: SerialiseOptions = { colours: 'properties' },
): readonly JobDrawing[] {
  return drawJobPages(plan, metrics).map(({ sheet, openTo, page, drawing, unplaced }) => {
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
  });
}

/** The same drawings before they are written as text, with every text and its room. */
export function drawJobPages(plan: BuildPlan, metrics: TextMetrics): readonly JobPage[] {
  const pages = Object.values(drawingKinds).flatMap(({ sheet, openTo, unframed, pages: of }) =>
    of(plan, metrics).map((drawn) => ({ sheet, openTo, isFramed: unframed !== true, drawn })),
  );
  const drawings = pages.filter(({ isFramed }) => isFramed).length;
  return pages.map(({ sheet, openTo, drawn }, index) => {
    const drawing = pages.slice(0, index + 1).filter(({ isFramed }) => isFramed).length;
    return { sheet, openTo: openTo ?? 'builders', ...numberPage(drawn, { drawing, drawings }) };
  });
}
