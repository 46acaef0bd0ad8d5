import type { FixingHead, LayoutBoard } from '../../board/layout/check-placements.ts';
import { type Item, type Placement, placeM, type TurnDeg } from '../../board/layout/item.ts';
import type { SearchResult } from '../../board/layout/layout-search.ts';
import { layoutHouse } from '../../board/layout/score/layout-house.ts';
import type { ScoreRules } from '../../board/layout/score/score.ts';
import type { BoardRemark } from '../../board/remark.ts';
import type { BoardShape } from '../../board/shape/outline.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import type { ConductorRole, Edge } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { boardItems, partGapM } from './board-items.ts';
import { wallsBefore } from './board-pose.ts';
import { boardFixings, boardShape, drilling, fixingHeads } from './board-shape.ts';
import { stackLimits } from './board-stacking.ts';
import { type LayoutInput, layoutStep, placementStep, roomStep } from './board-steps.ts';
import { boardWires, layoutLinks } from './board-wires.ts';
import type { LaidBoard } from './laid-board.ts';
import { remarksOnBoard } from './remark-words.ts';
import { standingRibs } from './ribs/board-ribs.ts';
import { isOfRibs, ribsAsItems } from './ribs/rib-barriers.ts';
import { railSupply } from './sheets/rail-stock.ts';

/** What the links of a job are known to be before anything is placed. */
export interface KnownLinks {
  readonly roles: ReadonlyMap<string, ConductorRole>;
  /** The sizes that they have at least, whatever their ways; asked for where places are searched for. */
  readonly sized: () => ReadonlyMap<string, SizedConductor>;
}

/** Draws and lays out every board of a job. A board whose base can't be drawn is left out; the book says why. */
export function layOutBoards(job: Job, known: KnownLinks, book: PlanBook, keep: Keep): LaidBoard[] {
  return job.boards.flatMap((board): LaidBoard[] => {
    const shape = boardShape(job, board, book);
    return shape ? [layOut(job, board, shape, { known, book, keep })] : [];
  });
}

/** What laying out a board takes besides job and board. */
interface LayingOut {
  readonly known: KnownLinks;
  readonly book: PlanBook;
  readonly keep: Keep;
}

function layOut(job: Job, board: Board, shape: BoardShape, { known, book, keep }: LayingOut): LaidBoard {
  const { roles } = known;
  const items = boardItems(job, board.id, roles, book);
  const given = items.flatMap(({ id }) => givenPlacement(job, id) ?? []);
  const sides = {
    signalSide: sideOfRoutes(job, board, roles, ['signal']),
    powerSide: sideOfRoutes(job, board, roles, ['power']),
  };
  const layout = { shape, heads: heads(job, board), ...definedSides(sides) };
  const places = new Set(given.map(({ item }) => item));
  const { ribs } = standingRibs(job, { board, shape, items, placements: given, given: places });
  const room = { board: board.id, shape, heads: layout.heads, items, given };
  const [heightsM, stepM] = [writtenHeights(job, items), job.rules['layout-step'].value];
  const full = given.length < items.length ? keep(roomStep, { ...room, heightsM, stepM }) : [];
  const standing = { items, given, ribs: ribsAsItems(ribs, job.rules['rib-clearance'].value) };
  const search = full.length > 0 ? null : searchFor(job, board, layout, standing, known);
  const found: SearchResult = search ? keep(layoutStep, search) : withoutSearch(full);
  const spotOf = ({ of }: BoardRemark) => ({ path: placePath(job, of[0] ?? '', board) });
  remarksOnBoard(job, board.id, found.faults, spotOf, book);
  return {
    board,
    shape,
    items,
    placements: [...given, ...(found.proposals[0]?.placements ?? [])],
    given: places,
    ribs,
    proposals: found.proposals,
    evaluations: found.evaluations,
    trials: 0,
    search,
    ...sides,
  };
}

/** How far the job raises each item of a board, metres. */
function writtenHeights({ devices }: Pick<Job, 'devices'>, items: readonly Item[]): Record<string, number> {
  return Object.fromEntries(
    items.map(({ id }) => [id, devices.find((device) => device.id === id)?.given?.raised ?? 0]),
  );
}

/** The same board laid out by the first of some proposals. */
export function withProposals(laid: LaidBoard, proposals: LaidBoard['proposals']): LaidBoard {
  const [chosen] = proposals;
  if (!chosen) return laid;
  const given = laid.placements.filter(({ item }) => laid.given.has(item));
  return { ...laid, placements: [...given, ...chosen.placements], proposals };
}

/** What is wrong with where things stand, given or proposed. */
export function placementFaults(
  job: Job,
  { board, shape, items, placements, ribs, signalSide, powerSide }: LaidBoard,
  keep: Keep,
): readonly BoardRemark[] {
  const standing = ribsAsItems(ribs, job.rules['rib-clearance'].value);
  const found = keep(placementStep, {
    board: { shape, heads: heads(job, board), ...definedSides({ signalSide, powerSide }) },
    items: [...items, ...standing.items],
    placements: [...placements, ...standing.placements],
    rules: layoutRules(job),
  });
  return found.filter(({ of }) => !isOfRibs(of));
}

/** Where fixings come through; before the board has its place in the space, that is not known. */
function heads({ parts }: Pick<Job, 'parts'>, board: Board): FixingHead[] {
  return board.given.at || board.place ? fixingHeads(boardFixings(board, parts)) : [];
}

function layoutRules({ rules }: Pick<Job, 'rules'>): ScoreRules {
  return {
    partGapM: partGapM(rules),
    powerToSignalM: rules['power-signal-distance'].value,
    house: layoutHouse((name) => rules[name].value),
  };
}

/** What stands on a board before places are searched for. */
interface Standing {
  readonly items: readonly Item[];
  readonly given: readonly Placement[];
  readonly ribs: ReturnType<typeof ribsAsItems>;
}

/** Every place is given; or a board that can't hold what stands on it is told before any place is searched for. */
function withoutSearch(faults: readonly BoardRemark[]): SearchResult {
  return { proposals: [], evaluations: 0, faults, brokenM: faults.length > 0 ? Number.POSITIVE_INFINITY : 0 };
}

/** What places are searched for by, for the items that the job leaves open; null where it leaves none. */
function searchFor(
  job: Job,
  board: Board,
  layout: LayoutBoard,
  { items, given, ribs }: Standing,
  { roles, sized }: KnownLinks,
): LayoutInput | null {
  if (given.length === items.length) return null;
  const sizes = sized();
  const links = layoutLinks(job, board, boardWires(job, board, roles), (link) => sizes.get(link)?.cable);
  const heightsM = writtenHeights(job, items);
  const standing = [...items, ...ribs.items];
  const task = {
    board: layout,
    items: standing,
    given: [...given, ...ribs.placements],
    heightsM,
    links,
    drilling: drilling(board, job, standing),
    walls: wallsBefore(board, boardFixings(board, job.parts)),
  };
  const rails = railSupply(job, board, layout.shape);
  return { task, limits: stackLimits(job, board), rails, rules: layoutRules(job) };
}

function definedSides({ signalSide, powerSide }: Pick<LaidBoard, 'signalSide' | 'powerSide'>) {
  return { ...(signalSide ? { signalSide } : {}), ...(powerSide ? { powerSide } : {}) };
}

/** Where a given placement was written; the board where the subject is none of its devices. */
export function placePath(job: Job, item: string, board: Board): string {
  const device = job.devices.find(({ id }) => id === item);
  return device ? `${device.path}/at` : board.path;
}

/** Where the job says that a device stands on its board; null where it leaves that open. */
export function givenPlacement(job: Job, id: string): Placement | null {
  const given = job.devices.find((device) => device.id === id)?.given;
  if (!given?.at) return null;
  const turnDeg: TurnDeg = given.turn ?? 0;
  const { x, y } = given.at;
  return { item: id, xM: placeM(x), yM: placeM(y), turnDeg, heightM: given.raised ?? 0 };
}

/** The edge at which the routes of a role reach the board; none where they come from several, or from nowhere. */
function sideOfRoutes(
  job: Job,
  board: Board,
  roles: ReadonlyMap<string, ConductorRole>,
  wanted: readonly ConductorRole[],
): Edge | undefined {
  const edges = new Set<Edge>();
  for (const link of job.links) {
    const role = roles.get(link.id);
    const reaches = job.runs.find(({ id }) => id === link.run)?.route.reaches;
    if (role && wanted.includes(role) && reaches?.space === board.spaceId) edges.add(reaches.edge);
  }
  const [edge, ...more] = edges;
  return more.length > 0 ? undefined : edge;
}
