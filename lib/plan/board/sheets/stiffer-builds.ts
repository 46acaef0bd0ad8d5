import { sheetFaults } from '../../../board/cut/sheet-faults.ts';
import { fitBoard } from '../../../board/layout/fit-in-space.ts';
import type { Build, Stiffness } from '../../../board/strength/stiffness.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import type { PlanBoard, PlanHole } from '../../../model/plan/index.ts';
import { modeHertz, sagMm } from '../../../model/printed/told.ts';
import { tapeText } from '../../../model/quantity/tape-text.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';
import { planHouseRules } from '../../plan-house-rules.ts';
import { boardPose, mountingSpace } from '../board-pose.ts';
import { buildStep, onFixings, stiffnessStep } from '../board-steps.ts';
import type { LaidBoard } from '../laid-board.ts';
import { countedRibs, planRibs } from '../ribs/plan-ribs.ts';
import { proposeRibs, type RibProposal } from '../ribs/rib-proposals.ts';
import { bestFixingPlace } from './fixing-place.ts';
import { buildOf } from './sheet-build.ts';
import { type NamedSheet, ofSheet } from './sheet-lacks.ts';
import type { SoftBoard } from './soft-board.ts';

const orFixing = ', or add a fixing near the heaviest part';

/**
 * The least way to build a board that keeps the limit, in the words that the job is to have: a rib of the sheet that it
 * has, or another sheet, whichever is lighter and in stock, the other beside it; where neither does alone, the lightest
 * sheet in stock with ribs. Proposed only: a job that writes nothing gets no rib.
 */
export function stifferBuild(soft: SoftBoard): string {
  const { job, laid, fixings, wantedHz, keep } = soft;
  const [holes, sheets] = [holesWithoutRibs(soft.planned), usableSheets(soft)];
  const sheet = stifferSheet(soft, sheets, holes);
  const ribs = proposeRibs({ job, laid, fixings, holes, wantedHz, keep });
  if (ribs && (!sheet?.stocked || ribs.stiffness.massKg < sheet.stiffness.massKg))
    return `write ${ribWords(ribs)}${sheet ? `, or ${sheetWords(sheet)}` : ''}${orFixing}`;
  if (sheet) return `${sheetWords(sheet)}${orFixing}`;
  const both = sheetWithRibs(soft, sheets, holes);
  if (both) return `write sheet: ${both.id} and ${ribWords(both.ribs)}${orFixing}`;
  return [
    `no sheet of the shop that fits, nor a rib behind it, reaches ${wantedHz} Hz on these fixings`,
    ...nearestWays(soft, sheets, holes),
  ].join('; ');
}

/** A way out that raises the first mode by less than this much is none, Hz (house judgement). */
const worthHz = 2;

/** Where nothing reaches the limit: the fixing and the sheet in stock that do most. */
function nearestWays(
  soft: SoftBoard,
  sheets: readonly NamedSheet[],
  holes: readonly PlanHole[],
): readonly string[] {
  const { job, laid, planned, wantedHz } = soft;
  const leastHz = (planned.firstModeHz ?? 0) + worthHz;
  const ribs = countedRibs(job, laid.board, planRibs(job, laid, holes));
  const fixing = bestFixingPlace(soft, ribs, leastHz);
  const tape = (lengthM: number) => tapeText(lengthM, job.shop.units);
  const sheet = stiffestSheet(soft, sheets, holes);
  const sheetHz = sheet?.firstModeHz.value ?? 0;
  const does = (hz: number) => (hz >= wantedHz ? 'does' : 'does most');
  return [
    fixing
      ? `one more fixing ${does(fixing.stiffness.firstModeHz.value)} at x: ${tape(fixing.xM)}, y: ${tape(fixing.yM)} of the space, written under sound-points: with what lies behind it there ${reach(fixing.stiffness)}`
      : 'no place that parts, hands and wires leave free takes a fixing that helps',
    ...(sheet && sheetHz >= leastHz
      ? [`of the sheets in stock sheet: ${sheet.build} does most ${reach(sheet)}`]
      : []),
  ];
}

/** The sheet in stock by which the first mode is highest. */
function stiffestSheet(
  { job, laid, fixings, wantedHz, keep }: SoftBoard,
  sheets: readonly NamedSheet[],
  holes: readonly PlanHole[],
): Stiffness | null {
  const board = onFixings(laid, fixings);
  const found = sheets
    .filter(({ id }) => isStocked(job, id))
    .flatMap((sheet) => {
      const build = builtOf(job, laid, sheet, holes);
      return keep(stiffnessStep, { board, build, aim: { wantedHz } }) ?? [];
    });
  const [best] = found.toSorted((a, b) => b.firstModeHz.value - a.firstModeHz.value);
  return best ?? null;
}

/** The board of another sheet, with the ribs that it has. */
function builtOf(job: Job, laid: LaidBoard, sheet: NamedSheet, holes: readonly PlanHole[]): Build {
  const other = ofSheet(laid, sheet);
  return buildOf(job, other, countedRibs(job, other.board, planRibs(job, other, holes)));
}

/** What a build reaches, both to the safe side. */
function reach({ sagM, firstModeHz }: Stiffness): string {
  return `(first mode ${modeHertz(firstModeHz.value)}, sag ${sagMm(1000 * sagM.value)})`;
}

function ribWords({ text, stiffness }: RibProposal): string {
  return `ribs: ${text} ${reach(stiffness)}`;
}

interface StifferSheet {
  readonly stiffness: Stiffness;
  readonly stocked: boolean;
}

function sheetWords({ stiffness, stocked }: StifferSheet): string {
  return `write sheet: ${stiffness.build}${stocked ? '' : ', which has to be bought,'} ${reach(stiffness)}`;
}

/**
 * The lightest sheet that keeps the limit: from stock in the same material, from stock in another, then from the rest
 * of the catalogue in the same order.
 */
function stifferSheet(
  { job, laid, fixings, wantedHz, keep }: SoftBoard,
  sheets: readonly NamedSheet[],
  holes: readonly PlanHole[],
): StifferSheet | null {
  const { material } = laid.board.sheet;
  for (const stocked of [true, false])
    for (const same of [true, false]) {
      const builds = sheets
        .filter(({ id, part }) => isStocked(job, id) === stocked && (part.material === material) === same)
        .map((sheet) => builtOf(job, laid, sheet, holes));
      const { chosen } = keep(buildStep, { board: onFixings(laid, fixings), builds, wantedHz });
      if (chosen) return { stiffness: chosen, stocked };
    }
  return null;
}

/** The lightest sheet in stock that keeps the limit with ribs. */
function sheetWithRibs(
  { job, laid, fixings, wantedHz, keep }: SoftBoard,
  sheets: readonly NamedSheet[],
  holes: readonly PlanHole[],
): { readonly id: string; readonly ribs: RibProposal } | null {
  const found = sheets
    .filter(({ id }) => isStocked(job, id))
    .flatMap((sheet) => {
      const ribs = proposeRibs({ job, laid: ofSheet(laid, sheet), fixings, holes, wantedHz, keep });
      return ribs ? [{ id: sheet.id, ribs }] : [];
    })
    .toSorted((a, b) => a.ribs.stiffness.massKg - b.ribs.stiffness.massKg);
  return found[0] ?? null;
}

function holesWithoutRibs({ holes, ribs }: PlanBoard): readonly PlanHole[] {
  return holes.filter(({ of }) => !ribs.some(({ id }) => id === of));
}

function isStocked({ shop }: Pick<Job, 'shop'>, id: string): boolean {
  return piecesOf(shop.stock[id]) > 0;
}

/** Other sheets that the board comes out of, that its room has the depth for, and that take as much wet. */
function usableSheets({ job, laid, fixings, planned }: SoftBoard): readonly NamedSheet[] {
  const { board, shape, items, placements } = laid;
  const rules = planHouseRules(job);
  const tooDeep = (thicknessM: number) =>
    fitBoard(
      { shape, thicknessM, items, placements },
      mountingSpace(board),
      boardPose(board, fixings),
      job.rules['space-clearance'].value,
    ).faults.filter(({ rule }) => rule === 'space-too-shallow').length;
  const now = tooDeep(board.sheet.thickness);
  return Object.entries(job.parts).flatMap(([id, part]) => {
    if (part.kind !== 'board-sheet' || id === planned.sheet || (board.sheet.sealed && !part.sealed))
      return [];
    const cut = { ...planned, sheet: id, ...sheetOf(part) };
    return sheetFaults(cut, rules).length > 0 || tooDeep(part.thickness) > now ? [] : [{ id, part }];
  });
}

function sheetOf({ width, height, thickness, material, grain }: NamedSheet['part']) {
  return {
    sheetWidthM: width,
    sheetHeightM: height,
    thicknessM: thickness,
    material,
    sheetGrain: grain ?? null,
  };
}
