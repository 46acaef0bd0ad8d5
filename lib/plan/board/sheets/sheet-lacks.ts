import { pastFootM } from '../../../board/cut/drill.ts';
import { sheetFaults } from '../../../board/cut/sheet-faults.ts';
import { nestJobs } from '../../../board/cut/sheet-pieces.ts';
import { fitBoard } from '../../../board/layout/fit-in-space.ts';
import { threadM } from '../../../board/strength/screw-thread.ts';
import type { Stiffness } from '../../../board/strength/stiffness.ts';
import type { Board, Job, SheetPart } from '../../../model/content/resolved-job.ts';
import type { Keep } from '../../../model/keep.ts';
import { piecesOf } from '../../../shelf/shelf-lengths.ts';
import { planHouseRules } from '../../plan-house-rules.ts';
import { withProposals } from '../board-layout.ts';
import { boardPose, mountingSpace } from '../board-pose.ts';
import { boardFixings } from '../board-shape.ts';
import { onFixings, stiffnessStep } from '../board-steps.ts';
import { modeLimits } from '../first-mode-limits.ts';
import type { LaidBoard } from '../laid-board.ts';
import { boardLengths } from '../remark-words.ts';
import { countedRibs, planRibs } from '../ribs/plan-ribs.ts';
import { mountingScrew, screwedInto } from '../screws/mounting-screw.ts';
import { offCutsOfSheet } from './off-cuts-on-shelf.ts';
import { bareCut, buildOf } from './sheet-build.ts';
import { withBoltsOfSheet } from './shortest-bolts.ts';

/** A sheet of the catalogue by its id. */
export interface NamedSheet {
  readonly id: string;
  readonly part: SheetPart;
}

/** What a sheet comes to on a board: what it lacks, and how stiff it is in the worst of the layouts. */
export interface TriedSheet {
  readonly sheet: NamedSheet;
  /** What it lacks aside from stiffness and from what its fixings lack, in the words of a message. */
  readonly lacks: readonly string[];
  /** Fixings that are too short or too long for it. */
  readonly fixings: FixingLack;
  /** Null where the fixings do not hold the board, whatever it is made of. */
  readonly stiffness: Stiffness | null;
}

/** Fixings that a sheet does not suit, by their ids. */
export interface FixingLack {
  /** Those that it leaves too little thread. */
  readonly short: readonly string[];
  /** Those that it lets reach past what is free behind the panel. */
  readonly long: readonly string[];
}

/** A laid-out board, as if it were cut from another sheet. */
export function ofSheet<T extends { readonly board: Board }>(laid: T, { id, part }: NamedSheet): T {
  return { ...laid, board: { ...laid.board, sheetId: id, sheet: part } };
}

/** Tries a sheet on a laid-out board, whose proposed bolts are as long as it asks for. */
export function trySheet(job: Job, laid: LaidBoard, sheet: NamedSheet, keep: Keep): TriedSheet {
  const cut = ofSheet(laid, sheet);
  const tried = { ...cut, board: withBoltsOfSheet(job, cut.board) };
  const lacks = [
    ...sizeLacks(job, tried),
    ...depthLacks(job, tried),
    ...(tried.board.space.wet && sheet.part.material === 'fibreboard' && !sheet.part.sealed
      ? [`swells in ${tried.board.spaceId}, which gets wet`]
      : []),
    ...screwLacks(job, tried),
  ];
  return { sheet, lacks, fixings: fixingLack(job, tried), stiffness: worstStiffness(job, tried, keep) };
}

function sizeLacks(job: Job, laid: LaidBoard): string[] {
  const { id, sheetId, given } = laid.board;
  const cut = bareCut(laid, given.outline.grain ?? null);
  const rules = planHouseRules(job);
  if (sheetFaults(cut, rules).length > 0) return ['is too small for it'];
  const offCuts = offCutsOfSheet(job.shop.stock[sheetId], sheetId);
  if (piecesOf(job.shop.stock[sheetId]) > 0 || offCuts.length === 0) return [];
  const { sheets } = nestJobs([{ job: { id }, boards: [cut], rules, offCuts }]);
  return sheets.some(({ stock }) => stock.offCut === undefined)
    ? ['is on the shelf in smaller off-cuts']
    : [];
}

/** True where a sheet is on the shelf, whole or in off-cuts; whether a board comes out of these is seen when it is tried. */
export function isOnShelf({ shop }: Pick<Job, 'shop'>, id: string): boolean {
  return piecesOf(shop.stock[id]) > 0 || offCutsOfSheet(shop.stock[id], id).length > 0;
}

function depthLacks(job: Job, { board, shape, items, placements }: LaidBoard): string[] {
  const loaded = { shape, thicknessM: board.sheet.thickness, items, placements };
  const { faults } = fitBoard(
    loaded,
    mountingSpace(board),
    boardPose(board, boardFixings(board, job.parts)),
    job.rules['space-clearance'].value,
  );
  return faults.some(({ rule, level }) => rule === 'space-too-shallow' && level === 'stop')
    ? ['leaves the parts too little depth in the space']
    : [];
}

function screwLacks(job: Job, { board, items }: LaidBoard): string[] {
  const holes = items.flatMap(({ mountingHoles = [] }) => mountingHoles);
  const into = screwedInto(board, board.sheet.thickness);
  const bites = holes.flatMap((hole): number[] => {
    const lengthM = mountingScrew(hole, job, into)?.part.length;
    return lengthM === undefined ? [] : [Math.min(pastFootM(lengthM, hole), board.sheet.thickness)];
  });
  const least = Math.min(...bites);
  return least < job.rules['screw-bite'].value - 1e-9
    ? [
        `gives the screws of its parts ${boardLengths(job, board.id, { path: board.path })('room-free', least)} to bite in`,
      ]
    : [];
}

/** Fixings that the sheet leaves too little thread, or lets reach past what is free behind the panel. */
function fixingLack(job: Job, { board }: LaidBoard): FixingLack {
  const diameters = job.rules['thread-engagement-limit'].value;
  const reaching = boardFixings(board, job.parts).flatMap(({ id, part, point, spacerM }) => {
    const passes = part.form === 'bolt' || part.form === 'machine-screw' || part.form === 'wood-screw';
    if (!passes || part.length === undefined) return [];
    const pastM = part.length - board.sheet.thickness - spacerM;
    const freeM = board.space['sound-points'][point]?.['free-depth'] ?? Number.POSITIVE_INFINITY;
    const leastM = part.form === 'wood-screw' ? 0 : diameters * (threadM(part.thread ?? '') ?? 0);
    return [{ id, short: pastM <= 0 || pastM < leastM - 1e-9, meets: pastM > freeM + 1e-9 }];
  });
  return {
    short: reaching.filter((one) => one.short).map(({ id }) => id),
    long: reaching.filter(({ meets }) => meets).map(({ id }) => id),
  };
}

/** The softest of the layouts that the board may come to, with its ribs. */
function worstStiffness(job: Job, laid: LaidBoard, keep: Keep): Stiffness | null {
  const layouts =
    laid.proposals.length > 1 ? laid.proposals.map((one) => withProposals(laid, [one])) : [laid];
  const supports = boardFixings(laid.board, job.parts);
  const ribs = countedRibs(job, laid.board, planRibs(job, laid, []));
  const { wantedHz } = modeLimits(job, laid.board);
  const found = layouts.map((layout) =>
    keep(stiffnessStep, {
      board: onFixings(layout, supports),
      build: buildOf(job, laid, ribs),
      aim: { wantedHz },
    }),
  );
  return found.reduce((worst, one) => {
    if (!worst || !one) return null;
    return one.firstModeHz.value < worst.firstModeHz.value ? one : worst;
  });
}
