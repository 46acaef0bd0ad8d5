import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, leftOf } from '../page.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { cutItems, fewestTiles } from './board-tiles.ts';
import { windowRound } from './board-view.ts';
import { type Attempt, withDetails } from './detail-sheets.ts';
import { directionArrowsMm } from './direction-arrows.ts';
import {
  type BoardPicture,
  type ScaledSheet,
  type SheetRooms,
  sheetFor,
  sheetRooms,
} from './scaled-sheet.ts';
import { drawTile } from './tile-page.ts';

const mostTiles = 6;

/**
 * The sheets of a picture of a board: the whole on one sheet where all its texts find room, else at a larger
 * scale on several sheets. Of those tried, the one that leaves fewest texts out, and then fewest sheets; what it
 * leaves out stands on sheets of details at scales larger still.
 */
export function boardSheets(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: BoardPicture,
): readonly DrawnPage[] {
  const best = bestAttempt(plan, metrics, board, picture);
  if (best.left === 0) return best.pages;
  const noted = { ...picture, base: { ...picture.base, notes: [...picture.base.notes, crowdedNote] } };
  const detailed = { ...picture, margins: wider(picture.margins, 'bottom', directionArrowsMm.height) };
  const request = { plan, metrics, board, picture: detailed };
  return withDetails(request, bestAttempt(plan, metrics, board, noted));
}

/** Said on the sheets of a board on which some names have no room. */
const crowdedNote = 'Names left out here stand on the details';

/** The attempt with the first of the margins that leaves fewest texts out. */
function bestAttempt(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: BoardPicture,
): Attempt {
  const rooms = sheetRooms(plan, metrics, picture.base);
  let best: Attempt = nothing;
  for (const margins of roomier(picture.margins)) {
    const tried = attempt(plan, metrics, board, { ...picture, margins }, rooms);
    if (tried.left < best.left) best = tried;
    if (best.left === 0) break;
  }
  return best;
}

const nothing: Attempt = { pages: [], windows: [], ratio: 100, left: Number.POSITIVE_INFINITY };

type MarginsAt = BoardPicture['margins'];

/** The margins asked for; then with room for the arrows and for labels below the board; then beside it. */
function roomier(margins: MarginsAt): MarginsAt[] {
  const { width, height } = directionArrowsMm;
  return [margins, wider(margins, 'bottom', height), wider(margins, 'left', width)];
}

function wider(margins: MarginsAt, side: 'left' | 'bottom', byMm: number): MarginsAt {
  return (ratio) => ({ ...margins(ratio), [side]: margins(ratio)[side] + byMm });
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
  let best: Attempt = nothing;
  for (const ratio of ratiosFrom(first.ratio)) {
    const { windows, orientation } =
      ratio === first.ratio
        ? { orientation: first.orientation, windows: [window] }
        : fewestTiles(rooms, board, picture.margins, ratio);
    if (windows.length === 0 || windows.length > mostTiles) continue;
    const cut = cutItems(board, windows).map((item) => `${item}: on no sheet as a whole`);
    const pages = windows.map((each, index) =>
      drawTile(
        { plan, metrics, board, picture: index === 0 ? withLeft(picture, cut) : picture },
        { ratio, orientation },
        each,
        { word: 'part', index, windows },
      ),
    );
    const left = leftOf(pages);
    if (left < best.left) best = { pages, windows, ratio, left };
    if (left === 0) break;
  }
  return best;
}

function withLeft(picture: BoardPicture, left: readonly string[]): BoardPicture {
  return { ...picture, paint: (drawing, scene) => [...left, ...picture.paint(drawing, scene)] };
}

/** Where a board is too large for a sheet at every scale. */
const smallest: ScaledSheet = { ratio: 100, orientation: 'landscape' };

/** The smallest scale at which what stands on a board still reads well. */
const readable: ScaleRatio = 5;

/** Scales to try: that of the whole board on one sheet if it reads well, else larger ones before it. */
function ratiosFrom(first: ScaleRatio): ScaleRatio[] {
  const finer = scaleRatios.filter((ratio) => ratio >= 1 && ratio < first).toReversed();
  if (first <= readable) return [first, ...finer.slice(0, 2)];
  return [...finer.filter((ratio) => ratio <= readable).slice(0, 1), first];
}
