import type { Item, Placement } from '../../board/layout/item.ts';
import type { Proposal } from '../../board/layout/layout-setting.ts';
import type { BoardShape } from '../../board/shape/outline.ts';
import type { Board } from '../../model/content/resolved-job.ts';
import type { Edge } from '../../model/vocabulary.ts';
import type { LayoutInput } from './board-steps.ts';
import type { StandingRib } from './ribs/board-ribs.ts';

/** A board with everything placed, before its wires are routed. */
export interface LaidBoard {
  readonly board: Board;
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  /** Items whose place the job gave. */
  readonly given: ReadonlySet<string>;
  readonly ribs: readonly StandingRib[];
  /** Layouts that the search found, best first; empty where every place was given. */
  readonly proposals: readonly Proposal[];
  readonly evaluations: number;
  /** Layouts that were wired on trial. */
  readonly trials: number;
  /** What places were searched for by; null where every place was given. */
  readonly search: LayoutInput | null;
  readonly signalSide: Edge | undefined;
  readonly powerSide: Edge | undefined;
}
