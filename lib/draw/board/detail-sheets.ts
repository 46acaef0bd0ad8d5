import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawPage, type Page } from '../page.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { cutItems, fewestTiles } from './board-tiles.ts';
import type { BoardWindow } from './board-view.ts';
import type { BoardPicture } from './scaled-sheet.ts';
import { type SheetRooms, sheetRooms } from './scaled-sheet.ts';
import { tilePage } from './tile-page.ts';

/** A picture on its sheets, and how many of its texts found no room there. */
export interface Attempt {
  readonly pages: Page[];
  /** The part of the board that each sheet shows. */
  readonly windows: readonly BoardWindow[];
  readonly ratio: ScaleRatio;
  readonly left: number;
}

/** What the details of a picture are drawn from. */
export interface DetailRequest {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly board: PlanBoard;
  readonly picture: BoardPicture;
}

/**
 * The sheets of a picture with details of what is crowded on them: the same board at the first larger scale at
 * which all texts of the crowded sheets find room. So no text is dropped, however many sheets that takes.
 */
export function withDetails(request: DetailRequest, whole: Attempt): Page[] {
  const { plan, metrics, picture } = request;
  const rooms = sheetRooms(plan, metrics, picture.base);
  const isCrowded = whole.pages.map((page) => drawPage(plan, metrics, page).unplaced.length > 0);
  const crowded = whole.windows.filter((_, index) => isCrowded[index]);
  let best: { readonly details: Page[]; readonly left: number } = { details: [], left: whole.left };
  for (const ratio of scaleRatios.filter((each) => each < whole.ratio).toReversed()) {
    const details = detailsAt(request, rooms, ratio, crowded);
    if (details === null) continue;
    const left = details.reduce((sum, page) => sum + drawPage(plan, metrics, page).unplaced.length, 0);
    if (left < best.left) best = { details, left };
    if (left === 0) break;
  }
  if (best.details.length === 0) return whole.pages;
  const shown = whole.pages.map((page, index) => (isCrowded[index] ? withoutLeft(page) : page));
  return [...shown, ...best.details];
}

/** A sheet whose names stand on details as well: what it leaves out is not lost. */
function withoutLeft(page: Page): Page {
  return {
    ...page,
    paint: (drawing, room) => {
      page.paint(drawing, room);
      return [];
    },
  };
}

/** More sheets than that nobody lays side by side. */
const mostDetails = 100;

/** Sheets at a scale that show together what crowded windows show; null where they cut an item, or are too many. */
function detailsAt(
  { plan, board, picture }: DetailRequest,
  rooms: SheetRooms,
  ratio: ScaleRatio,
  crowded: readonly BoardWindow[],
): Page[] | null {
  const { windows, orientation } = fewestTiles(rooms, board, picture.margins, ratio);
  if (cutItems(board, windows).length > 0) return null;
  const needed = windows.filter((window) => crowded.some((one) => overlaps(window, one)));
  if (needed.length === 0 || needed.length > mostDetails) return null;
  return needed.map((window, index) =>
    tilePage(plan, board, picture, { ratio, orientation }, window, {
      word: 'detail',
      index,
      count: needed.length,
    }),
  );
}

function overlaps(a: BoardWindow, b: BoardWindow): boolean {
  return a.fromXM < b.toXM && b.fromXM < a.toXM && a.fromYM < b.toYM && b.fromYM < a.toYM;
}
