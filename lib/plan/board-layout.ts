import type { Item, Placement, TurnDeg } from '../board/item.ts';
import type { BoardShape } from '../board/outline.ts';
import { checkPlacements } from '../board/placement.ts';
import type { Board, Job } from '../model/resolved-job.ts';
import type { ConductorRole, Edge } from '../model/vocabulary.ts';
import { boardItems } from './board-items.ts';
import { boardShape } from './board-shape.ts';
import type { PlanBook } from './plan-book.ts';

/** A board with everything placed, before its wires are routed. */
export interface LaidBoard {
  readonly board: Board;
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  /** Items whose place the job gave. */
  readonly given: ReadonlySet<string>;
  readonly scores: ReadonlyMap<string, Readonly<Record<string, number>>>;
  readonly evaluations: number;
  readonly signalSide: Edge | undefined;
  readonly powerSide: Edge | undefined;
}

/** Draws and lays out every board of a job. A board whose base can't be drawn is left out; the book says why. */
export function layOutBoards(
  job: Job,
  roles: ReadonlyMap<string, ConductorRole>,
  book: PlanBook,
): LaidBoard[] {
  return job.boards.flatMap((board): LaidBoard[] => {
    const shape = boardShape(board, book);
    return shape ? [layOut(job, board, shape, roles, book)] : [];
  });
}

function layOut(
  job: Job,
  board: Board,
  shape: BoardShape,
  roles: ReadonlyMap<string, ConductorRole>,
  book: PlanBook,
): LaidBoard {
  const items = boardItems(job, board.id, roles);
  const given = items.flatMap(({ id }) => givenPlacement(job, id) ?? []);
  const sides = {
    signalSide: sideOfRoutes(job, board, roles, ['signal']),
    powerSide: sideOfRoutes(job, board, roles, ['power']),
  };
  const rules = {
    partGapM: job.rules['gap-parts'].value,
    powerToSignalM: job.rules['power-signal-distance'].value,
  };
  for (const fault of checkPlacements({ shape, ...definedSides(sides) }, items, given, rules))
    book.remark(fault, { path: placePath(job, fault.of[0] ?? '', board) });
  return {
    board,
    shape,
    items,
    placements: given,
    given: new Set(given.map(({ item }) => item)),
    scores: new Map(),
    evaluations: 0,
    ...sides,
  };
}

function definedSides({ signalSide, powerSide }: Pick<LaidBoard, 'signalSide' | 'powerSide'>) {
  return { ...(signalSide ? { signalSide } : {}), ...(powerSide ? { powerSide } : {}) };
}

/** Where a given placement was written; the board where the subject is none of its devices. */
export function placePath(job: Job, item: string, board: Board): string {
  const device = job.devices.find(({ id }) => id === item);
  return device ? `${device.path}/at` : board.path;
}

function givenPlacement(job: Job, id: string): Placement | null {
  const given = job.devices.find((device) => device.id === id)?.given;
  if (!given?.at) return null;
  const turnDeg: TurnDeg = given.turn ?? 0;
  return { item: id, xM: given.at.x, yM: given.at.y, turnDeg, heightM: given.raised ?? 0 };
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
