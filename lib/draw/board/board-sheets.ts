import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { DrawnPage } from '../page.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import { fewestTiles } from './board-tiles.ts';
import { windowRound } from './board-view.ts';
import { type Attempt, withDetails } from './detail-sheets.ts';
import { directionArrowsMm } from './direction-arrows.ts';
import { type BoardPicture, type SheetRooms, sheetFor, sheetRooms } from './scaled-sheet.ts';
import { drawTiles, mostTiles, roomier, smallest, wider } from './tile-sheets.ts';

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
    const tried = drawTiles({ plan, metrics, board, picture }, { ratio, orientation }, windows);
    if (tried.left < best.left) best = tried;
    if (tried.left === 0) break;
  }
  return best;
}

/** The smallest scale at which what stands on a board still reads well. */
const readable: ScaleRatio = 5;

/** Scales to try: that of the whole board on one sheet if it reads well, else larger ones before it. */
function ratiosFrom(first: ScaleRatio): ScaleRatio[] {
  const finer = scaleRatios.filter((ratio) => ratio >= 1 && ratio < first).toReversed();
  if (first <= readable) return [first, ...finer.slice(0, 2)];
  return [...finer.filter((ratio) => ratio <= readable).slice(0, 1), first];
}
