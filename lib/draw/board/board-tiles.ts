import type { PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import type { Page } from '../page.ts';
import { heightMm, type PaperBox, widthMm } from '../paper.ts';
import type { ScaleRatio } from '../sheet/scale.ts';
import { type BoardWindow, windowRound } from './board-view.ts';
import { type Margins, type SheetRooms, within } from './scaled-sheet.ts';

/** How much of the board neighbouring sheets have in common, metres. */
const overlapM = 0.03;

/** Items that stand as a whole in none of the windows: they would stay without their names. */
export function cutItems({ placements }: PlanBoard, windows: readonly BoardWindow[]): string[] {
  const whole = ({ xM, yM, widthM, depthM }: PlanPlacement): boolean =>
    windows.some(
      ({ fromXM, toXM, fromYM, toYM }) =>
        xM >= fromXM && xM + widthM <= toXM && yM >= fromYM && yM + depthM <= toYM,
    );
  // An item that hangs over the edge of its board is cut where all of the board is shown as well.
  return windows.length === 1 ? [] : placements.filter((each) => !whole(each)).map(({ item }) => item);
}

/** Windows that show a board together, on sheets that lie or stand. */
export interface Tiling {
  readonly orientation: Page['orientation'];
  readonly large?: boolean;
  readonly windows: readonly BoardWindow[];
}

/** What it costs to cut a board across x or y at a place. */
export type CutCost = (axis: 'x' | 'y', atM: number) => number;

/** The way that sheets lie in which fewest of them show a board at a scale; without windows where no sheet has the room. */
export function fewestTiles(
  rooms: SheetRooms,
  board: PlanBoard,
  margins: (ratio: ScaleRatio) => Margins,
  ratio: ScaleRatio,
  costAt: CutCost | null = null,
): Tiling {
  const tilings = rooms.map(({ orientation, large = false, room }): Tiling => {
    return { orientation, large, windows: tilesOf(board, within(room, margins(ratio)), ratio, costAt) };
  });
  const none: Tiling = { orientation: 'landscape', windows: [] };
  return tilings
    .filter(({ windows }) => windows.length > 0)
    .reduce(
      (best, each) => (best.windows.length === 0 || each.windows.length < best.windows.length ? each : best),
      none,
    );
}

/** Windows of a board that each fit a room at a scale, with every item as a whole in one of them. */
function tilesOf(board: PlanBoard, room: PaperBox, ratio: ScaleRatio, costAt: CutCost | null): BoardWindow[] {
  const window = windowRound(board.outline);
  const spans = board.placements.map(({ xM, yM, widthM, depthM }) => {
    return { x: [xM, xM + widthM] as const, y: [yM, yM + depthM] as const };
  });
  const metresOf = (mm: number): number => (mm * ratio) / 1000;
  const xs = cutSpan(
    window.fromXM,
    window.toXM,
    metresOf(widthMm(room)),
    spans.map(({ x }) => x),
    costAt && ((atM) => costAt('x', atM)),
  );
  const ys = cutSpan(
    window.fromYM,
    window.toYM,
    metresOf(heightMm(room)),
    spans.map(({ y }) => y),
    costAt && ((atM) => costAt('y', atM)),
  );
  // Read like a page: rows from the top, each from the left.
  return ys
    .toReversed()
    .flatMap(([fromYM, toYM]) => xs.map(([fromXM, toXM]) => ({ fromXM, toXM, fromYM, toYM })));
}

type Span = readonly [from: number, to: number];

/** Room round an item that is shown with it, such as what must stay clear, metres. */
const padM = 0.015;

/**
 * Covers a length with windows of a room's size: each begins before the first item that is not yet shown as a
 * whole, so that every item stands in one of them, and ends where the next has taken over. What a cut costs moves it
 * within the room that the sheets leave.
 */
function cutSpan(
  from: number,
  to: number,
  roomM: number,
  items: readonly Span[],
  costAt: ((atM: number) => number) | null,
): Span[] {
  // Neighbours must have more than their common strip, or the cuts never get on.
  if (roomM < 2 * overlapM) return [];
  const starts = [from];
  for (let start = from; start + roomM < to; ) {
    const end = start + roomM;
    const next = items.filter(([a, b]) => a > start && b + padM > end).map(([a]) => a - padM);
    // Forwards in any case: an item larger than a sheet can't hold the cut back.
    const wanted = Math.min(end - overlapM, ...next);
    start = wanted > start + overlapM ? wanted : end - overlapM;
    starts.push(start);
  }
  const begun = costAt ? cheaperStarts(starts, { to, roomM, items }, costAt) : starts;
  return begun.map((start, index): Span => {
    const next = begun[index + 1];
    if (next === undefined) return [start, to];
    const end = start + roomM;
    const shown = items.filter(([a, b]) => a >= start && b + padM <= end).map(([, b]) => b + padM);
    const leastM = Math.min(end, Math.max(next + overlapM, ...shown));
    return [start, costAt ? cheapest(stepsFrom(leastM, end), costAt) : leastM];
  });
}

/** From place to place of a cut that is tried, metres. */
const tryM = 0.005;

function stepsFrom(fromM: number, toM: number): number[] {
  const count = Math.floor(Math.abs(toM - fromM) / tryM);
  return Array.from({ length: count + 1 }, (_, nth) => fromM + Math.sign(toM - fromM) * nth * tryM);
}

function cheapest([first = 0, ...places]: readonly number[], costAt: (atM: number) => number): number {
  let [best, least] = [first, costAt(first)];
  for (const place of places) {
    const cost = costAt(place);
    if (cost < least) [best, least] = [place, cost];
  }
  return best;
}

interface CutRoom {
  readonly to: number;
  readonly roomM: number;
  readonly items: readonly Span[];
}

/** The places at which windows begin, each moved back to where the cut costs least, as long as all is shown that was. */
function cheaperStarts(
  starts: readonly number[],
  { to, roomM, items }: CutRoom,
  costAt: (atM: number) => number,
): number[] {
  const isWhole = (all: readonly number[], [a, b]: Span): boolean =>
    all.some((start) => a >= start && b <= start + roomM);
  const whole = items.filter((item) => isWhole(starts, item));
  const shows = (all: readonly number[]): boolean =>
    (all.at(-1) ?? 0) + roomM >= to &&
    all.every((start, nth) => nth === 0 || start <= (all[nth - 1] ?? 0) + roomM - overlapM) &&
    whole.every((item) => isWhole(all, item));
  return starts.reduce<number[]>(
    (all, start, nth) => {
      const before = all[nth - 1];
      if (before === undefined) return all;
      const places = stepsFrom(start, before + overlapM).filter((place) => shows(all.with(nth, place)));
      return places.length === 0 ? all : all.with(nth, cheapest(places, costAt));
    },
    [...starts],
  );
}
