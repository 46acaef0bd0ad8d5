import type { Job } from '../../../model/content/resolved-job.ts';
import type { Keep } from '../../../model/keep.ts';
import type { PlanBoard } from '../../../model/plan/index.ts';
import type { BoardFixing } from '../board-shape.ts';
import type { LaidBoard } from '../laid-board.ts';

/** A board that is too soft, as it is planned. */
export interface SoftBoard {
  readonly job: Job;
  readonly laid: LaidBoard;
  readonly fixings: readonly BoardFixing[];
  readonly planned: PlanBoard;
  readonly wantedHz: number;
  readonly keep: Keep;
}
