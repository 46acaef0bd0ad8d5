import { sheetFaults } from '../../board/cut/sheet-faults.ts';
import { bodyOf } from '../../board/layout/item.ts';
import { clearRooms } from '../../board/layout/keep-clear.ts';
import { riserPieces } from '../../board/layout/raising/risers.ts';
import type { BoardRemark } from '../../board/remark.ts';
import { outlineFaults } from '../../board/shape/outline-faults.ts';
import type { LaidRib } from '../../board/strength/rib.ts';
import type { Stiffness } from '../../board/strength/stiffness.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import type { Whereabouts } from '../../model/remark.ts';
import type { PlanBook } from '../plan-book.ts';
import { planHouseRules } from '../plan-house-rules.ts';
import { bodyFigures, drillBoard, sheetFigures, spaceFigures } from './board-body.ts';
import { placementFaults, placePath } from './board-layout.ts';
import { boardPhysics } from './board-physics.ts';
import { boardPose, mountingSpace } from './board-pose.ts';
import type { RoutedBoard } from './board-routes.ts';
import type { BoardFixing } from './board-shape.ts';
import { itemsBeneath, raisedHeight } from './board-stacking.ts';
import { fitStep } from './board-steps.ts';
import { stiffnessRemarks } from './board-stiffness.ts';
import { fixingJoints, type PlannedJoint } from './fixing-joints.ts';
import type { LaidBoard } from './laid-board.ts';
import { madePoint } from './made-points.ts';
import { depthInSpace } from './raising/depth-in-space.ts';
import { withLift } from './raising/lifted-clear.ts';
import { spacerStacks, unmadeHeights } from './raising/spacer-stacks.ts';
import { remarksOnBoard } from './remark-words.ts';
import { traceRibs } from './ribs/plan-ribs.ts';
import { kindOfRoom } from './side-rooms.ts';
import { webGround } from './webs/web-ground.ts';

/** One board of the plan: its shape and holes, how it fits and holds, what stands on it, how its wires run. */
export function planBoard(
  job: Job,
  laid: LaidBoard,
  routed: RoutedBoard,
  book: PlanBook,
  keep: Keep,
): PlanBoard {
  const { board, shape } = laid;
  const drilled = drillBoard(job, laid);
  const { fixings, holes, ribbing } = drilled;
  traceRibs(board.id, ribbing, book);
  const body = bodyFigures(laid, drilled, book);
  const joints = fixingJoints(job, board, fixings, spacerStacks(job, board));
  const physics = boardPhysics(
    job,
    { laid, fixings, joints, ribbing, bareKg: body.figures.massKg - body.ribsKg },
    book,
    keep,
  );
  tellFaults(
    job,
    laid,
    drilled,
    [
      ...outlineFaults(body.shape, outlineRules(job), webGround(job, laid, fixings)),
      ...drilled.faults,
      ...physics.faults,
      ...routed.faults,
    ],
    { book, keep },
  );
  const placements = planPlacements(laid, book);
  const planned: PlanBoard = {
    ...sheetFigures(board),
    ...grainOf(board, physics.stiffness),
    edgeProfile: edgeProfileOf(board),
    outline: shape.outline.map((point) => ({ ...point })),
    cutouts: shape.cutouts.map((loop) => loop.map((point) => ({ ...point }))),
    holes,
    ...body.figures,
    centroid: physics.centre,
    ...body.size,
    ...physics.numbers,
    ...figuresInSpace(job, laid, drilled, book),
    fixings: planFixings(job, board, { fixings, joints }, book),
    placements,
    pieces: piecesOf(job, board, { fixings, holes, placements }),
    ribs: ribbing.ribs,
    ...routesOf(routed),
    ...proposalsOf(laid),
    exits: [...routed.exits],
  };
  const doubts = [
    ...sheetFaults(planned, planHouseRules(job)),
    ...unmadeHeights(planned.pieces, job.rules['spacer-tolerance'].value),
    ...stiffnessRemarks(job, laid, fixings, planned, physics.stiffness, keep),
  ];
  remarksOnBoard(job, board.id, doubts, () => ({ path: board.path }), book);
  return planned;
}

/** The space of a board, and what the board takes of its depth. */
function figuresInSpace(
  job: Job,
  laid: LaidBoard,
  { fixings, ribbing: { ribs } }: Pick<ReturnType<typeof drillBoard>, 'fixings' | 'ribbing'>,
  book: PlanBook,
) {
  return { ...spaceFigures(laid.board), depth: depthInSpace(job, laid, { fixings, ribs }, book) };
}

/** Writes down what is wrong with a board as it stands, with its ribs and in its space. */
function tellFaults(
  job: Job,
  laid: LaidBoard,
  { fixings, ribbing }: Pick<ReturnType<typeof drillBoard>, 'fixings' | 'ribbing'>,
  faults: readonly BoardRemark[],
  { book, keep }: { readonly book: PlanBook; readonly keep: Keep },
): void {
  const { board } = laid;
  const all = [
    ...faults,
    ...ribbing.faults,
    ...fitFaults(job, laid, fixings, ribbing.standing, keep),
    ...placementFaults(job, laid, keep),
  ].map((fault) => ({ ...fault, of: [...fault.of, board.id] }));
  remarksOnBoard(job, board.id, all, (fault) => faultSpot(job, fault, board), book);
}

function planFixings(
  job: Pick<Job, 'parts' | 'shop'>,
  board: Board,
  { fixings, joints }: { readonly fixings: readonly BoardFixing[]; readonly joints: readonly PlannedJoint[] },
  book: PlanBook,
): PlanBoard['fixings'] {
  return fixings.map(({ id, xM, yM, partId, point, spacerM }) => {
    const spot = board.space['sound-points'][point];
    const made = spot ? madePoint(job, spot) : null;
    return {
      id,
      xM,
      yM,
      part: partId,
      point,
      spacerM,
      ...torqueOf(joints, id, `boards.${board.id}`, book),
      ...(made && { made }),
    };
  });
}

function piecesOf(
  job: Job,
  board: Board,
  raised: Pick<PlanBoard, 'holes' | 'placements'> & { readonly fixings: readonly BoardFixing[] },
): PlanBoard['pieces'] {
  return riserPieces({
    id: board.id,
    thicknessM: board.sheet.thickness,
    ...raised,
    stacks: spacerStacks(job, board),
    toleranceM: job.rules['spacer-tolerance'].value,
    railWidthM: job.rules['riser-rail'].value,
    padM: job.rules['spacer-pad'].value,
  });
}

function routesOf({ routes, crossings, firstCrossings, pathSearches }: RoutedBoard) {
  return { routes: [...routes], crossings, firstCrossings, pathSearches };
}

function proposalsOf({ proposals, evaluations }: LaidBoard) {
  return {
    proposals: proposals.map(({ placements: places, score, wired }) => ({
      total: score.total,
      score: { ...score.parts },
      ...(wired && { wired: { ...wired } }),
      placements: places.map(({ item, xM, yM, turnDeg }) => ({ item, xM, yM, turnDeg })),
    })),
    evaluations,
  };
}

/** What a fixing is tightened to, and what sets the limit. */
function torqueOf(
  joints: readonly PlannedJoint[],
  fixing: string,
  at: string,
  book: PlanBook,
): Pick<PlanBoard['fixings'][number], 'torqueNm' | 'torqueBy'> {
  const tight = joints.find(({ id }) => id === fixing)?.tight;
  if (!tight) return { torqueNm: null, torqueBy: null };
  return { torqueNm: book.trace(`${at}.fixings.${fixing}.torqueNm`, tight.torqueNm), torqueBy: tight.by };
}

/** Which way the grain has to run, and whether the job says so or the stiffness relies on it. */
function grainOf({ given }: Board, stiffness: Stiffness | null): Pick<PlanBoard, 'grain' | 'grainChosen'> {
  const written = given.outline.grain;
  if (written !== undefined) return { grain: written, grainChosen: 'given' };
  const grain = stiffness?.grain ?? null;
  return { grain, grainChosen: grain === null ? null : 'computed' };
}

function edgeProfileOf({ given }: Board): PlanBoard['edgeProfile'] {
  const profile = given.outline['edge-profile'];
  return profile ? { kind: profile.kind, sizeM: profile.size ?? null } : null;
}

function planPlacements(laid: LaidBoard, book: PlanBook): PlanPlacement[] {
  const { board, items, placements, given, proposals } = laid;
  return placements.flatMap((at): PlanPlacement[] => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) return [];
    const body = bodyOf(item, at);
    const under = itemsBeneath(laid, at);
    if (item.raising && at.heightM > 0)
      book.trace(
        `boards.${board.id}.placements.${item.id}.raisedM`,
        raisedHeight(at.heightM, board.sheet.thickness, under),
      );
    const score = given.has(at.item) ? undefined : proposals[0]?.score.parts;
    return [
      {
        item: at.item,
        xM: at.xM,
        yM: at.yM,
        turnDeg: at.turnDeg,
        widthM: body.maxX - body.minX,
        depthM: body.maxY - body.minY,
        heightM: item.heightM,
        raisedM: at.heightM,
        keepClear: clearRooms(item, at).map(({ kind, side, depthM }) => ({
          kind: kindOfRoom[kind],
          side,
          depthM,
        })),
        chosen: given.has(at.item) ? 'given' : 'computed',
        ...(score ? { score: { ...score } } : {}),
      },
    ];
  });
}

function outlineRules({ rules }: Pick<Job, 'rules'>) {
  return {
    webGoodM: rules['web-good'].value,
    webStopM: rules['web-limit'].value,
    holeToEdgeM: rules['hole-edge'].value,
    holeToCornerM: rules['hole-corner'].value,
  };
}

/** What is mended in the outline, where nothing else that was written is its subject. */
const ofOutline: ReadonlySet<BoardRemark['rule']> = new Set([
  'narrow-web',
  'hole-near-edge',
  'hole-near-corner',
  'holes-run-together',
]);

/** The place of what a board fault is about: a cut of the outline, a fixing, a device, or the board. */
function faultSpot(job: Job, fault: BoardRemark, board: Board): Whereabouts {
  const [subject = ''] = fault.of;
  if (Object.hasOwn(board.given.ribs, subject)) return { path: `${board.path}/ribs/${subject}` };
  if (Object.hasOwn(board.given.fixings, subject)) return { path: `${board.path}/fixings/${subject}` };
  const link = job.links.find(({ id }) => id === subject);
  if (link) return { path: link.path };
  if (job.devices.some(({ id }) => id === subject)) return { path: placePath(job, subject, board) };
  return { path: ofOutline.has(fault.rule) ? `${board.path}/outline` : board.path };
}

/** What does not go into the mounting space, the board standing on its fixings' spacers. */
function fitFaults(
  job: Job,
  { board, shape, items, placements }: LaidBoard,
  fixings: readonly BoardFixing[],
  ribs: readonly LaidRib[],
  keep: Keep,
): readonly BoardRemark[] {
  const clearanceM = job.rules['space-clearance'].value;
  const { thickness: thicknessM } = board.sheet;
  const loaded = { shape, thicknessM, items, placements, ribs };
  const [space, pose] = [mountingSpace(board), boardPose(board, fixings)];
  const faultsAt = (standoffM: number) =>
    keep(fitStep, { loaded, space, pose: { ...pose, standoffM }, clearanceM });
  return withLift(job, faultsAt(pose.standoffM), { board, standoffM: pose.standoffM, faultsAt });
}
