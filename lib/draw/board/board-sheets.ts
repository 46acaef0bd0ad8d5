import type { BuildPlan, PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import { drawPage, type Page } from '../page.ts';
import { grown, heightMm, type PaperBox, widthMm } from '../paper.ts';
import { type PlanView, type ScaleRatio, scaleRatios } from '../scale.ts';
import type { Drawing } from '../surface.ts';
import type { TextMetrics } from '../text-metrics.ts';
import { type BoardWindow, viewIn, windowBox, windowRound } from './board-view.ts';
import { directionArrowsMm } from './direction-arrows.ts';
import {
  type Margins,
  type ScaledSheet,
  type SheetRooms,
  sheetFor,
  sheetRooms,
  within,
} from './scaled-sheet.ts';

/** A board, or a part of it, as one sheet shows it. */
export interface BoardScene {
  readonly plan: BuildPlan;
  readonly board: PlanBoard;
  readonly view: PlanView;
  /** The part of the board that is shown, on paper; null where all of it is. */
  readonly clip: PaperBox | null;
  readonly room: PaperBox;
}

/** A drawing of a board that may be spread over several sheets. */
export interface BoardPicture {
  readonly base: Omit<Page, 'paint' | 'scale' | 'orientation'>;
  readonly margins: (ratio: ScaleRatio) => Margins;
  readonly paint: (drawing: Drawing, scene: BoardScene) => readonly string[];
}

const mostTiles = 6;
/** How much of the board neighbouring sheets have in common, metres. */
const overlapM = 0.03;

/**
 * The sheets of a picture of a board: the whole on one sheet where all its texts find room, else at a larger
 * scale on several sheets. Of those tried, the one that leaves fewest texts out, and then fewest sheets.
 */
export function boardSheets(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: BoardPicture,
): Page[] {
  const rooms = sheetRooms(plan, metrics, picture.base);
  let best: Attempt | null = null;
  for (const margins of roomier(picture.margins)) {
    const tried = attempt(plan, metrics, board, { ...picture, margins }, rooms);
    if (best === null || tried.left < best.left) best = tried;
    if (best.left === 0) break;
  }
  return best?.pages ?? [];
}

interface Attempt {
  readonly pages: Page[];
  /** How many texts found no room. */
  readonly left: number;
}

type MarginsAt = BoardPicture['margins'];

/** The margins asked for; then with room for the arrows and for labels below the board; then beside it. */
function roomier(margins: MarginsAt): MarginsAt[] {
  const { width, height } = directionArrowsMm;
  const more = (side: 'left' | 'bottom', byMm: number): MarginsAt => {
    return (ratio) => ({ ...margins(ratio), [side]: margins(ratio)[side] + byMm });
  };
  return [margins, more('bottom', height), more('left', width)];
}

/** The sheets of a picture with given margins, at the scale that leaves fewest texts out. */
function attempt(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: BoardPicture,
  rooms: SheetRooms,
): Attempt {
  const window = windowRound(board.outline);
  const first = sheetFor(rooms, window, picture.margins) ?? smallest;
  let best: Attempt = { pages: [], left: Number.POSITIVE_INFINITY };
  for (const ratio of ratiosFrom(first.ratio)) {
    const { windows, orientation } =
      ratio === first.ratio
        ? { orientation: first.orientation, windows: [window] }
        : fewestTiles(rooms, board, picture, ratio);
    if (windows.length > mostTiles) continue;
    const cut = cutItems(board, windows).map((item) => `${item}: on no sheet as a whole`);
    const pages = windows.map((each, index) =>
      tilePage(plan, board, index === 0 ? withLeft(picture, cut) : picture, { ratio, orientation }, each, {
        index,
        count: windows.length,
      }),
    );
    const left = pages.reduce((sum, page) => sum + drawPage(plan, metrics, page).unplaced.length, 0);
    if (left < best.left) best = { pages, left };
    if (left === 0) break;
  }
  return best;
}

/** Items that stand as a whole in none of the windows: they would stay without their names. */
function cutItems({ placements }: PlanBoard, windows: readonly BoardWindow[]): string[] {
  const whole = ({ xM, yM, widthM, depthM }: PlanPlacement): boolean =>
    windows.some(
      ({ fromXM, toXM, fromYM, toYM }) =>
        xM >= fromXM && xM + widthM <= toXM && yM >= fromYM && yM + depthM <= toYM,
    );
  // An item that hangs over the edge of its board is cut where all of the board is shown as well.
  return windows.length === 1 ? [] : placements.filter((each) => !whole(each)).map(({ item }) => item);
}

function withLeft(picture: BoardPicture, left: readonly string[]): BoardPicture {
  return { ...picture, paint: (drawing, scene) => [...left, ...picture.paint(drawing, scene)] };
}

/** Where a board is too large for a sheet at every scale. */
const smallest: ScaledSheet = { ratio: 100, orientation: 'landscape' };

function tilePage(
  plan: BuildPlan,
  board: PlanBoard,
  { base, margins, paint }: BoardPicture,
  sheet: ScaledSheet,
  window: BoardWindow,
  { index, count }: { readonly index: number; readonly count: number },
): Page {
  const part = count > 1 ? `, part ${index + 1} of ${count}` : '';
  return {
    ...base,
    id: count > 1 ? `${base.id}-${index + 1}` : base.id,
    title: `${base.title}${part}`,
    scale: sheet.ratio,
    orientation: sheet.orientation,
    paint: (drawing, room) => {
      const view = viewIn(within(room, margins(sheet.ratio)), sheet.ratio, window);
      // Edges that lie on the border of the window are inside it.
      const clip = count > 1 ? grown(windowBox(view, window), 0.02) : null;
      return paint(drawing, { plan, board, view, clip, room });
    },
  };
}

/** The smallest scale at which what stands on a board still reads well. */
const readable: ScaleRatio = 5;

/** Scales to try: that of the whole board on one sheet if it reads well, else larger ones before it. */
function ratiosFrom(first: ScaleRatio): ScaleRatio[] {
  const finer = scaleRatios.filter((ratio) => ratio >= 1 && ratio < first).toReversed();
  if (first <= readable) return [first, ...finer.slice(0, 2)];
  return [...finer.filter((ratio) => ratio <= readable).slice(0, 1), first];
}

interface Tiling {
  readonly orientation: Page['orientation'];
  readonly windows: readonly BoardWindow[];
}

/** The way that sheets lie in which fewest of them show a board at a scale. */
function fewestTiles(
  rooms: SheetRooms,
  board: PlanBoard,
  { margins }: BoardPicture,
  ratio: ScaleRatio,
): Tiling {
  const tilings = rooms.map(({ orientation, room }): Tiling => {
    return { orientation, windows: tilesOf(board, within(room, margins(ratio)), ratio) };
  });
  const none: Tiling = { orientation: 'landscape', windows: [] };
  return tilings.reduce(
    (best, each) => (best.windows.length === 0 || each.windows.length < best.windows.length ? each : best),
    none,
  );
}

/** Windows of a board that each fit a room at a scale, with every item as a whole in one of them. */
function tilesOf(board: PlanBoard, room: PaperBox, ratio: ScaleRatio): BoardWindow[] {
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
  );
  const ys = cutSpan(
    window.fromYM,
    window.toYM,
    metresOf(heightMm(room)),
    spans.map(({ y }) => y),
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
 * whole, so that every item stands in one of them, and ends where the next has taken over.
 */
function cutSpan(from: number, to: number, roomM: number, items: readonly Span[]): Span[] {
  const starts = [from];
  for (let start = from; start + roomM < to; ) {
    const end = start + roomM;
    const next = items.filter(([a, b]) => a > start && b + padM > end).map(([a]) => a - padM);
    // Forwards in any case: an item larger than a sheet can't hold the cut back.
    const wanted = Math.min(end - overlapM, ...next);
    start = wanted > start + overlapM ? wanted : end - overlapM;
    starts.push(start);
  }
  return starts.map((start, index): Span => {
    const next = starts[index + 1];
    if (next === undefined) return [start, to];
    const end = start + roomM;
    const shown = items.filter(([a, b]) => a >= start && b + padM <= end).map(([, b]) => b + padM);
    return [start, Math.min(end, Math.max(next + overlapM, ...shown))];
  });
}
