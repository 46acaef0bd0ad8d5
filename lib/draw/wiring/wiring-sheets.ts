import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { fewestTiles } from '../board/board-tiles.ts';
import { type BoardWindow, windowRound } from '../board/board-view.ts';
import { type Attempt, withDetails } from '../board/detail-sheets.ts';
import {
  type BoardPicture,
  type Margins,
  type ScaledSheet,
  type SheetRooms,
  sheetFor,
  sheetRooms,
} from '../board/scaled-sheet.ts';
import { drawTiles, mostTiles, roomier, smallest } from '../board/tile-sheets.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { DrawnPage } from '../page.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';

/** A picture of wiring, with the room that references take beside a cut. */
export interface WiringPicture extends BoardPicture {
  readonly referenceMm: number;
  /** The smallest scale at which it still reads well. */
  readonly readable: ScaleRatio;
  /** The same, with a list of what finds no room beside what it names. */
  readonly paintListed: BoardPicture['paint'];
}

interface Request {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly board: PlanBoard;
  readonly picture: WiringPicture;
}

/** One way of putting a board on sheets. */
interface Way {
  readonly sheet: ScaledSheet;
  readonly windows: readonly BoardWindow[];
  readonly margins: BoardPicture['margins'];
}

/**
 * The sheets of a picture of wiring: the whole board on one sheet of the shop's paper where it reads well and all tags find
 * room; else on one of its larger sheets; else cut, with a reference at every line that is. Of the ways tried, the
 * first that leaves no tag out; else the first with room for a list of those left out; else the one that leaves fewest,
 * with details of what is crowded on it.
 */
export function wiringSheets(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: WiringPicture,
): readonly DrawnPage[] {
  const request: Request = { plan, metrics, board, picture };
  let best: Attempt | null = null;
  for (const way of waysOf(request)) {
    const tried = attempt(request, way);
    if (best === null || tried.left < best.left) best = tried;
    if (tried.left === 0) return tried.pages;
  }
  const listed = { ...request, picture: { ...picture, paint: picture.paintListed } };
  for (const way of waysOf(request)) {
    const tried = attempt(listed, way);
    if (tried.left === 0) return tried.pages;
  }
  if (best === null) return [];
  const margins = forCuts(picture, allSides);
  const base = { ...picture.base, notes: [...picture.base.notes, crowdedNote] };
  return withDetails({ ...request, picture: { ...picture, base, margins } }, best);
}

/** Said on the details of a board on which some tags have no room. */
const crowdedNote = 'Shows tags that the sheet of the whole leaves out';

function* waysOf(request: Request): Generator<Way> {
  const { plan, metrics, board, picture } = request;
  const usual = sheetRooms(plan, metrics, picture.base);
  const larger = plan.shop.largerPaper === null ? [] : sheetRooms(plan, metrics, picture.base, true);
  const wholes = (rooms: SheetRooms): ScaledSheet[] => wholeSheets(rooms, board, picture.margins);
  const windows = [windowRound(board.outline)];
  const { readable } = picture;
  const isReadable = ({ ratio }: ScaledSheet): boolean => ratio <= readable;
  const all = [...wholes(usual), ...wholes(larger)];
  for (const sheet of all.filter(isReadable))
    for (const margins of roomier(picture.margins)) yield { sheet, windows, margins };
  const [finest = readable] = all.filter(isReadable).map(({ ratio }) => ratio);
  const rooms = [...usual, ...larger];
  for (const ratio of scaleRatios.filter((each) => each >= 1 && each <= finest).toReversed())
    yield* tiled(request, rooms, ratio);
  const [smaller = smallest] = all.filter((sheet) => !isReadable(sheet));
  yield { sheet: smaller, windows, margins: picture.margins };
}

/** The two largest scales at which a board stands on one of the sheets as a whole. */
function wholeSheets(rooms: SheetRooms, board: PlanBoard, margins: BoardPicture['margins']): ScaledSheet[] {
  const window = windowRound(board.outline);
  return scaleRatios
    .flatMap((ratio) => sheetFor(rooms, window, margins, (each) => each === ratio) ?? [])
    .slice(0, 2);
}

const upright = ['left', 'right'] as const;
const allSides = ['left', 'right', 'top', 'bottom'] as const;

/** Margins that hold the references of cuts on the named sides as well. */
function forCuts(picture: WiringPicture, sides: readonly (keyof Margins)[]): BoardPicture['margins'] {
  return (ratio) => {
    const own = picture.margins(ratio);
    const reference = (side: keyof Margins): number =>
      sides.includes(side) ? Math.max(own[side], picture.referenceMm) : own[side];
    return {
      ...{ left: reference('left'), right: reference('right') },
      ...{ top: reference('top'), bottom: reference('bottom') },
    };
  };
}

/** A board in parts at a scale, fewest first: cut between left and right alone where that will do. */
function tiled({ board, picture }: Request, rooms: SheetRooms, ratio: ScaleRatio): Way[] {
  const ways = rooms.flatMap((room) =>
    [upright, allSides].flatMap((sides): Way[] => {
      const margins = forCuts(picture, sides);
      const { windows, ...sheet } = fewestTiles([room], board, margins, ratio);
      if (windows.length < 2 || windows.length > mostTiles) return [];
      const isOneRow = windows.every(({ fromYM }) => fromYM === windows[0]?.fromYM);
      return isOneRow === (sides === upright) ? [{ sheet: { ...sheet, ratio }, windows, margins }] : [];
    }),
  );
  return ways.toSorted((a, b) => a.windows.length - b.windows.length);
}

function attempt({ plan, metrics, board, picture }: Request, { sheet, windows, margins }: Way): Attempt {
  return drawTiles({ plan, metrics, board, picture: { ...picture, margins } }, sheet, windows);
}
