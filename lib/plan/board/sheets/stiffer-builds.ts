import { sheetFaults } from '../../../board/cut/sheet-faults.ts';
import { fitBoard } from '../../../board/layout/fit-in-space.ts';
import type { Stiffness } from '../../../board/strength/stiffness.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import type { PlanBoard, PlanHole } from '../../../model/plan/index.ts';
import { modeHertz, sagMm } from '../../../model/printed/told.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';
import { tapeText } from '../../keeping/tape-text.ts';
import { planHouseRules } from '../../plan-house-rules.ts';
import { boardPose, mountingSpace } from '../board-pose.ts';
import { buildStep, onFixings, stiffnessStep } from '../board-steps.ts';
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
  const holes = holesWithoutRibs(soft.planned);
  const sheet = stifferSheet(soft, holes);
  const ribs = proposeRibs({ job, laid, fixings, holes, wantedHz, keep });
  if (ribs && (!sheet?.stocked || ribs.stiffness.massKg < sheet.stiffness.massKg))
    return `write ${ribWords(ribs)}${sheet ? `, or ${sheetWords(sheet)}` : ''}${orFixing}`;
  if (sheet) return `${sheetWords(sheet)}${orFixing}`;
  const both = sheetWithRibs(soft, holes);
  if (both) return `write sheet: ${both.id} and ${ribWords(both.ribs)}${orFixing}`;
  return [
    `no sheet of the shop that fits, nor a rib behind it, reaches ${wantedHz} Hz on these fixings`,
    ...nearestWays(soft, holes),
  ].join('; ');
}

/** A way out that raises the first mode by less than this much is none, Hz (house judgement). */
const worthHz = 2;

/** Where nothing reaches the limit: the fixing and the sheet in stock that do most. */
function nearestWays(soft: SoftBoard, holes: readonly PlanHole[]): readonly string[] {
  const { job, planned, wantedHz } = soft;
  const leastHz = (planned.firstModeHz ?? 0) + worthHz;
  const fixing = bestFixingPlace(soft, leastHz);
  const at = fixing && [fixing.xM, fixing.yM].map((lengthM) => tapeText(lengthM, job.shop.units));
  const sheet = stiffestSheet(soft, holes);
  const sheetHz = sheet?.firstModeHz.value ?? 0;
  const does = (hz: number) => (hz >= wantedHz ? 'does' : 'does most');
  return [
    fixing && at
      ? `one more fixing ${does(fixing.stiffness.firstModeHz.value)} at x: ${at[0]}, y: ${at[1]} of the space, written under sound-points: with what lies behind it there ${reach(fixing.stiffness)}`
      : 'no place that parts, hands and wires leave free takes a fixing that helps',
    ...(sheet && sheetHz >= leastHz
      ? [`of the sheets in stock sheet: ${sheet.build} does most ${reach(sheet)}`]
      : []),
  ];
}

/** The sheet in stock by which the first mode is highest. */
function stiffestSheet(
  { job, laid, fixings, wantedHz, ...soft }: SoftBoard,
  holes: readonly PlanHole[],
): Stiffness | null {
  const found = usableSheets({ job, laid, fixings, wantedHz, ...soft })
    .filter(({ id }) => isStocked(job, id))
    .flatMap((sheet) => {
      const other = ofSheet(laid, sheet);
      const build = buildOf(job, other, countedRibs(job, other.board, planRibs(job, other, holes)));
      return soft.keep(stiffnessStep, { board: onFixings(other, fixings), build, aim: { wantedHz } }) ?? [];
    });
  const [best] = found.toSorted((a, b) => b.firstModeHz.value - a.firstModeHz.value);
  return best ?? null;
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
function stifferSheet(soft: SoftBoard, holes: readonly PlanHole[]): StifferSheet | null {
  const { job, laid, fixings, wantedHz, keep } = soft;
  const { material } = laid.board.sheet;
  const sheets = usableSheets(soft);
  for (const stocked of [true, false])
    for (const same of [true, false]) {
      const builds = sheets
        .filter(({ id, part }) => isStocked(job, id) === stocked && (part.material === material) === same)
        .map((sheet) => {
          const other = ofSheet(laid, sheet);
          return buildOf(job, other, countedRibs(job, other.board, planRibs(job, other, holes)));
        });
      const { chosen } = keep(buildStep, { board: onFixings(laid, fixings), builds, wantedHz });
      if (chosen) return { stiffness: chosen, stocked };
    }
  return null;
}

/** The lightest sheet in stock that keeps the limit with ribs. */
function sheetWithRibs(
  soft: SoftBoard,
  holes: readonly PlanHole[],
): { readonly id: string; readonly ribs: RibProposal } | null {
  const { job, laid, fixings, wantedHz, keep } = soft;
  const found = usableSheets(soft)
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
