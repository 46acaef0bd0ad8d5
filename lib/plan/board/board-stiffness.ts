import type { BoardRemark } from '../../board/remark.ts';
import type { Rib } from '../../board/strength/plate.ts';
import { type Stiffness, stiffnessFaults } from '../../board/strength/stiffness.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import type { BoardFixing } from './board-shape.ts';
import { onFixings, stiffnessStep } from './board-steps.ts';
import { modeLimits } from './first-mode-limits.ts';
import type { LaidBoard } from './laid-board.ts';
import { buildOf } from './sheets/sheet-build.ts';
import { stifferBuild } from './sheets/stiffer-builds.ts';

/** Sag and first mode of a laid-out board with its ribs on its fixings; null where they do not hold it. */
export function planStiffness(
  job: Job,
  laid: LaidBoard,
  fixings: readonly BoardFixing[],
  ribs: readonly Rib[],
  keep: Keep,
): Stiffness | null {
  const { wantedHz } = modeLimits(job, laid.board);
  const build = buildOf(job, laid, ribs);
  return keep(stiffnessStep, { board: onFixings(laid, fixings), build, aim: { wantedHz } });
}

/** What is too soft, with the sheet of the shop that is stiff enough, or with word that none is. */
export function stiffnessRemarks(
  job: Job,
  laid: LaidBoard,
  fixings: readonly BoardFixing[],
  planned: PlanBoard,
  stiffness: Stiffness | null,
  keep: Keep,
): readonly BoardRemark[] {
  const { board } = laid;
  const { leastHz, wantedHz } = modeLimits(job, board);
  if (!stiffness || stiffness.firstModeHz.value >= wantedHz)
    return stiffnessFaults(board.id, stiffness, { leastHz, wantedHz });
  const remedy = stifferBuild({ job, laid, fixings, planned, wantedHz, keep });
  return stiffnessFaults(board.id, stiffness, { leastHz, wantedHz }, remedy);
}
