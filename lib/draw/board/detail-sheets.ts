import { type DrawnPage, leftOf } from '../page.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { cutItems, fewestTiles } from './board-tiles.ts';
import type { BoardWindow } from './board-view.ts';
import { type SheetRooms, sheetRooms } from './scaled-sheet.ts';
import { drawTile, type TileRequest } from './tile-page.ts';

/** A picture on its sheets, and how many of its texts found no room there. */
export interface Attempt {
  readonly pages: readonly DrawnPage[];
  /** The part of the board that each sheet shows. */
  readonly windows: readonly BoardWindow[];
  readonly ratio: ScaleRatio;
  readonly left: number;
}

/**
 * The sheets of a picture with details of what is crowded on them: the same board at the first larger scale at
 * which all texts of the crowded sheets find room. So no text is dropped, however many sheets that takes.
 */
export function withDetails(request: TileRequest, whole: Attempt): readonly DrawnPage[] {
  const { plan, metrics, picture } = request;
  const rooms = sheetRooms(plan, metrics, picture.base);
  const isCrowded = whole.pages.map((page) => leftOf([page]) > 0);
  const crowded = whole.windows.filter((_, index) => isCrowded[index]);
  let best: { readonly details: readonly DrawnPage[]; readonly left: number } = {
    details: [],
    left: whole.left,
  };
  for (const ratio of scaleRatios.filter((each) => each < whole.ratio).toReversed()) {
    const details = detailsAt(request, rooms, ratio, crowded);
    if (details === null) continue;
    const left = leftOf(details);
    if (left < best.left) best = { details, left };
    if (left === 0) break;
  }
  if (best.details.length === 0) return whole.pages;
  // What they leave out is not lost: its names stand on the details.
  const shown = whole.pages.map((page, index) => (isCrowded[index] ? { ...page, left: [] } : page));
  return [...shown, ...best.details];
}

/** More sheets than that nobody lays side by side. */
const mostDetails = 100;

/** Sheets at a scale that show together what crowded windows show; null where they cut an item, or are too many. */
function detailsAt(
  request: TileRequest,
  rooms: SheetRooms,
  ratio: ScaleRatio,
  crowded: readonly BoardWindow[],
): DrawnPage[] | null {
  const { board, picture } = request;
  const { windows, ...sheet } = fewestTiles(rooms, board, picture.margins, ratio);
  if (cutItems(board, windows).length > 0) return null;
  const needed = windows.filter((window) => crowded.some((one) => overlaps(window, one)));
  if (needed.length === 0 || needed.length > mostDetails) return null;
  return needed.map((window, index) =>
    drawTile(request, { ratio, ...sheet }, window, { word: 'detail', index, windows: needed }),
  );
}

function overlaps(a: BoardWindow, b: BoardWindow): boolean {
  return a.fromXM < b.toXM && b.fromXM < a.toXM && a.fromYM < b.toYM && b.fromYM < a.toYM;
}
