import type { BoardFault } from '../board/fault.ts';
import { fitBoard } from '../board/fit.ts';
import type { Rib } from '../board/plate.ts';
import { sheetFaults } from '../board/sheet-faults.ts';
import {
  boardStiffness,
  chooseBuild,
  type ModeLimits,
  type Stiffness,
  stiffnessFaults,
} from '../board/stiffness.ts';
import type { PlanBoard } from '../model/plan/index.ts';
import type { Board, Job, SheetPart } from '../model/resolved-job.ts';
import type { LaidBoard } from './board-layout.ts';
import { boardPose, mountingSpace } from './board-pose.ts';
import type { BoardFixing } from './board-shape.ts';
import { planHouseRules } from './house-rules.ts';
import { buildOf } from './sheet-build.ts';

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
  const remedy = wayOut(job, laid, fixings, planned, wantedHz);
  return stiffnessFaults(board.id, stiffness, { leastHz, wantedHz }, remedy);
}

/**
 * The lightest sheet that keeps the limit, with what it reaches: from stock in the same material, from stock in
 * another, then from the rest of the catalogue in the same order.
 */
function wayOut(
  job: Job,
  laid: LaidBoard,
  fixings: readonly BoardFixing[],
  planned: PlanBoard,
  wantedHz: number,
): string {
  const { material } = laid.board.sheet;
  const sheets = usableSheets(job, laid, fixings, planned);
  for (const stocked of [true, false])
    for (const same of [true, false]) {
      const builds = sheets
        .filter(({ id, part }) => isStocked(job, id) === stocked && (part.material === material) === same)
        .map(({ id, part }) => buildOf(id, part));
      const { chosen } = chooseBuild({ ...laid, supports: fixings }, builds, wantedHz);
      if (chosen)
        return `write sheet: ${chosen.build}${stocked ? '' : ', which has to be bought,'} ${reach(chosen)}`;
    }
  return `no sheet of the shop that fits reaches ${wantedHz} Hz on these fixings: add a fixing near the heaviest part`;
}

/** What a build reaches, both to the safe side. */
function reach({ build: _, sagM, firstModeHz }: Stiffness): string {
  const sagMm = Math.ceil(sagM.value * 1e5) / 100;
  return `(first mode ${Math.floor(firstModeHz.value)} Hz, sag ${sagMm} mm), or add a fixing near the heaviest part`;
}

function isStocked({ shop }: Job, id: string): boolean {
  const stock = shop.stock[id];
  return stock !== undefined && 'pieces' in stock && stock.pieces > 0;
}

/** Other sheets that the board comes out of, that its room has the depth for, and that take as much wet. */
function usableSheets(
  job: Job,
  { board, shape, items, placements }: LaidBoard,
  fixings: readonly BoardFixing[],
  planned: PlanBoard,
): readonly { readonly id: string; readonly part: SheetPart }[] {
  const rules = planHouseRules(job);
  const tooDeep = (thicknessM: number) =>
    fitBoard(
      { shape, thicknessM, items, placements },
      mountingSpace(board),
      boardPose(board, fixings),
    ).faults.filter(({ rule }) => rule === 'space-too-shallow').length;
  const now = tooDeep(board.sheet.thickness);
  return Object.entries(job.parts).flatMap(([id, part]) => {
    if (part.kind !== 'board-sheet' || id === planned.sheet || (board.sheet.sealed && !part.sealed))
      return [];
    const cut = { ...planned, sheet: id, ...sheetOf(part) };
    return sheetFaults(cut, rules).length > 0 || tooDeep(part.thickness) > now ? [] : [{ id, part }];
  });
}

function sheetOf({ width, height, thickness, material, grain }: SheetPart) {
  return {
    sheetWidthM: width,
    sheetHeightM: height,
    thicknessM: thickness,
    material,
    sheetGrain: grain ?? null,
  };
}
