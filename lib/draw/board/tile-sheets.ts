import { leftOf } from '../page.ts';
import { cutItems } from './board-tiles.ts';
import type { BoardWindow } from './board-view.ts';
import type { Attempt } from './detail-sheets.ts';
import { directionArrowsMm } from './direction-arrows.ts';
import type { BoardPicture, Margins, ScaledSheet } from './scaled-sheet.ts';
import { drawTile, type TileRequest } from './tile-page.ts';

/** Sheets that a board is cut into at most. */
export const mostTiles = 6;

/** Where a board is too large for a sheet at every scale. */
export const smallest: ScaledSheet = { ratio: 100, orientation: 'landscape' };

type MarginsAt = BoardPicture['margins'];

/** The margins asked for; then with room for the arrows and for labels below the board; then beside it. */
export function roomier(margins: MarginsAt): MarginsAt[] {
  const { width, height } = directionArrowsMm;
  return [margins, wider(margins, 'bottom', height), wider(margins, 'left', width)];
}

/** Margins with more room on one side. */
export function wider(margins: MarginsAt, side: keyof Margins, byMm: number): MarginsAt {
  return (ratio) => ({ ...margins(ratio), [side]: margins(ratio)[side] + byMm });
}

/**
 * A sheet for each window on a board. The first also tells of items that stand on none as a whole, of all windows that
 * the board was cut into where not each has a sheet.
 */
export function drawTiles(
  request: TileRequest,
  sheet: ScaledSheet,
  windows: readonly BoardWindow[],
  cutInto: readonly BoardWindow[] = windows,
): Attempt {
  const { picture, board } = request;
  const cut = cutItems(board, cutInto).map((item) => `${item}: on no sheet as a whole`);
  const pages = windows.map((window, index) => {
    const own = index === 0 ? { ...request, picture: withLeft(picture, cut) } : request;
    return drawTile(own, sheet, window, { word: 'part', index, windows });
  });
  return { pages, windows, ratio: sheet.ratio, left: leftOf(pages) };
}

function withLeft(picture: BoardPicture, left: readonly string[]): BoardPicture {
  return { ...picture, paint: (drawing, scene) => [...left, ...picture.paint(drawing, scene)] };
}
