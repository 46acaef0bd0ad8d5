import type { BoardFault } from '../board/fault.ts';
import type { Rib } from '../board/plate.ts';
import { boardStiffness, type ModeLimits, type Stiffness, stiffnessFaults } from '../board/stiffness.ts';
import type { PlanBoard } from '../model/plan/index.ts';
import type { Board, Job } from '../model/resolved-job.ts';
import type { LaidBoard } from './board-layout.ts';
import type { BoardFixing } from './board-shape.ts';
import { buildOf } from './sheet-build.ts';
import { stifferBuild } from './stiffer-builds.ts';

/** Sag and first mode of a laid-out board with its ribs on its fixings; null where they do not hold it. */
export function planStiffness(
  laid: LaidBoard,
  fixings: readonly BoardFixing[],
  ribs: readonly Rib[],
): Stiffness | null {
  return boardStiffness({ ...laid, supports: fixings }, buildOf(laid.board.id, laid.board.sheet, ribs));
}

/** What the first mode of a board is judged by: the house's limit, and a higher one beside a subwoofer. */
export function modeLimits({ rules }: Job, { space }: Board): ModeLimits {
  const leastHz = rules['first-mode'].value;
  const besideHz = rules['first-mode-bass'].value;
  return { leastHz, wantedHz: space['beside-subwoofer'] ? Math.max(leastHz, besideHz) : leastHz };
}

/** What is too soft, with the sheet of the shop that is stiff enough, or with word that none is. */
export function stiffnessRemarks(
  job: Job,
  laid: LaidBoard,
  fixings: readonly BoardFixing[],
  planned: PlanBoard,
  stiffness: Stiffness | null,
): readonly BoardFault[] {
  const { board } = laid;
  const { leastHz, wantedHz } = modeLimits(job, board);
  if (!stiffness || stiffness.firstModeHz.value >= wantedHz)
    return stiffnessFaults(board.id, stiffness, { leastHz, wantedHz });
  const remedy = stifferBuild({ job, laid, fixings, planned, wantedHz });
  return stiffnessFaults(board.id, stiffness, { leastHz, wantedHz }, remedy);
}
