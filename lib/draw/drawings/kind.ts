import type { BuildPlan } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { DrawnPage } from '../page.ts';

/** Sheets of a job on which drawings stand. */
export type DrawingSheet =
  | 'cut-and-drill'
  | 'risers'
  | 'placement'
  | 'board-wiring'
  | 'power-diagram'
  | 'signal-diagram'
  | 'presets';

/** One kind of drawing: the sheet it belongs on, and its pages for a plan, drawn; none where the plan has nothing to show. */
export interface DrawingKind {
  readonly sheet: DrawingSheet;
  readonly pages: (plan: BuildPlan, metrics: TextMetrics) => readonly DrawnPage[];
}
