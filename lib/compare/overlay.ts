import type { Audience } from '../model/audience.ts';
import {
  type BuildPlan,
  buildPlanSchema,
  type OutlinePoint,
  type PlanBoard,
  type PlanHole,
  type PlanPlacement,
} from '../model/plan/index.ts';
import type { RowState, TableDifference } from './compare-plans.ts';
import { areFor } from './table.ts';
import { placesTable } from './tables/boards.ts';
import { cornerText, tenths } from './tenths.ts';

/** A box on a board, from its datum corner. */
export type Footprint = Pick<PlanPlacement, 'xM' | 'yM' | 'widthM' | 'depthM'>;

/** A device on a board of one plan or both. */
export interface LaidItem {
  readonly item: string;
  readonly state: RowState | 'same';
  readonly was: Footprint | null;
  readonly is: Footprint | null;
}

/** Whether a line that stays where it is stands on one board or on both. */
export type LineState = 'gone' | 'new' | 'same';

/** A hole of one plan or both. */
export interface LaidHole {
  readonly state: LineState;
  /** What it is for: a device, a fixing, a cut. */
  readonly of: string;
  readonly hole: Pick<PlanHole, 'xM' | 'yM' | 'diameterM'>;
}

/** An edge that is cut: the outline, or a cut-out. */
export interface LaidEdge {
  readonly state: LineState;
  readonly corners: readonly OutlinePoint[];
}

/** A board of one plan laid over that of another, datum corner on datum corner. */
export interface BoardOverlay {
  /** The board as it is, or as it was where it is gone. */
  readonly id: string;
  readonly title: string;
  /** What it was called before, where that is otherwise. */
  readonly over: string | null;
  readonly edges: readonly LaidEdge[];
  readonly items: readonly LaidItem[];
  readonly holes: readonly LaidHole[];
}

const { outline, holes, placements } = buildPlanSchema.shape.boards.element.shape;

/** The leaves of a plan that an overlay shows. */
const laidLeaves = [outline, holes, placements].flatMap(({ element: { shape } }) => [shape.xM, shape.yM]);

/**
 * The boards of one plan over those of another. They belong together by their name; where each has just one, these do
 * whatever they are called. What moved is what the table of places tells so.
 *
 * @param tables The two plans compared, for the same reader.
 * @returns Nothing for a reader who may not see where things stand.
 */
export function boardOverlays(
  before: Pick<BuildPlan, 'boards'>,
  after: Pick<BuildPlan, 'boards'>,
  tables: readonly TableDifference[],
  audience: Audience,
): BoardOverlay[] {
  if (!areFor(audience, laidLeaves)) return [];
  const places = tables.find(({ id }) => id === placesTable.id);
  const moved = new Set((places?.rows ?? []).filter(({ state }) => state === 'moved').map(({ key }) => key));
  return paired(before.boards, after.boards).map(([was, is]) => overlayOf(was, is, moved));
}

type Pair = readonly [was: PlanBoard | null, is: PlanBoard | null];

function paired(before: readonly PlanBoard[], after: readonly PlanBoard[]): Pair[] {
  const [onlyBefore, onlyAfter] = [before[0] ?? null, after[0] ?? null];
  if (before.length === 1 && after.length === 1) return [[onlyBefore, onlyAfter]];
  const ids = [...new Set([...before, ...after].map(({ id }) => id))].toSorted();
  const find = (boards: readonly PlanBoard[], id: string) => boards.find((one) => one.id === id) ?? null;
  return ids.map((id) => [find(before, id), find(after, id)]);
}

function overlayOf(was: PlanBoard | null, is: PlanBoard | null, moved: ReadonlySet<string>): BoardOverlay {
  const { id = '', title = '' } = is ?? was ?? {};
  return {
    ...{ id, title },
    over: was !== null && is !== null && was.title !== is.title ? was.title : null,
    edges: laidOver(edgesOf(was), edgesOf(is), edgeKey).map(({ state, one }) => ({ state, corners: one })),
    items: itemsOver(was?.placements ?? [], is?.placements ?? [], moved),
    holes: laidOver(was?.holes ?? [], is?.holes ?? [], holeKey).map(({ state, one }) => {
      const { of, xM, yM, diameterM } = one;
      return { state, of, hole: { xM, yM, diameterM } };
    }),
  };
}

function edgesOf(board: PlanBoard | null): (readonly OutlinePoint[])[] {
  return board === null ? [] : [board.outline, ...board.cutouts];
}

/** Things that are told apart by where they are alone: those of both lists once, and as often as each has them. */
function laidOver<T>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (one: T) => string,
): { readonly state: LineState; readonly one: T }[] {
  const left = new Map<string, number>();
  for (const one of before) left.set(keyOf(one), (left.get(keyOf(one)) ?? 0) + 1);
  const standing = after.map((one) => {
    const count = left.get(keyOf(one)) ?? 0;
    if (count > 0) left.set(keyOf(one), count - 1);
    return { state: count > 0 ? ('same' as const) : ('new' as const), one };
  });
  const gone = before.filter((one) => {
    const count = left.get(keyOf(one)) ?? 0;
    if (count > 0) left.set(keyOf(one), count - 1);
    return count > 0;
  });
  return [...standing, ...gone.map((one) => ({ state: 'gone' as const, one }))];
}

function edgeKey(corners: readonly OutlinePoint[]): string {
  return corners.map(cornerText).join(', ');
}

function holeKey({ xM, yM, diameterM }: PlanHole): string {
  return [xM, yM, diameterM].map(tenths).join(' ');
}

function itemsOver(
  before: readonly PlanPlacement[],
  after: readonly PlanPlacement[],
  moved: ReadonlySet<string>,
): LaidItem[] {
  const [was, is] = [byItem(before), byItem(after)];
  return [...new Set([...was.keys(), ...is.keys()])].toSorted().map((item) => {
    const [old, now] = [was.get(item) ?? null, is.get(item) ?? null];
    return { item, state: stateOf(old, now, moved.has(item)), was: old, is: now };
  });
}

function byItem(placements: readonly PlanPlacement[]): ReadonlyMap<string, Footprint> {
  return new Map(
    placements.map(({ item, xM, yM, widthM, depthM }) => [item, { xM, yM, widthM, depthM }] as const),
  );
}

function stateOf(was: Footprint | null, is: Footprint | null, hasMoved: boolean): LaidItem['state'] {
  if (was === null) return 'new';
  if (is === null) return 'gone';
  if (hasMoved) return 'moved';
  const isAsLarge = tenths(was.widthM) === tenths(is.widthM) && tenths(was.depthM) === tenths(is.depthM);
  return isAsLarge ? 'same' : 'changed';
}
