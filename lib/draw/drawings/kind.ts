import type { BuildPlan } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { DrawnPage } from '../page.ts';

/** Sheets of a job on which drawings stand. */
export type DrawingSheet =
  | 'cover'
  | 'cut-and-drill'
  | 'risers'
  | 'placement'
  | 'board-wiring'
  | 'power-diagram'
  | 'signal-diagram'
  | 'presets';

/**
 * One kind of drawing: the sheet it belongs on, whether only those who build may see it, and its pages for a plan, drawn;
 * none where the plan has nothing to show.
 */
export interface DrawingKind {
  readonly sheet: DrawingSheet;
  /** `everyone`: shown to the customer as well, so that it says nothing that they may not see. Left out: builders. */
  readonly openTo?: 'everyone';
  /** A picture among the text of a page: without frame and number. Left out: a sheet of its own. */
  readonly unframed?: true;
  readonly pages: (plan: BuildPlan, metrics: TextMetrics) => readonly DrawnPage[];
}
