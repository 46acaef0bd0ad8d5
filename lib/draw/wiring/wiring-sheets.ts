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
import type { CutPlaces } from './cut-places.ts';

/** A picture of wiring, with the room that references take beside a cut. */
export interface WiringPicture extends BoardPicture {
  readonly referenceMm: number;
  /** Where it is cut, if it must be. */
  readonly cuts: CutPlaces;
  /** The smallest scale at which it reads well: no larger one is worth larger paper. */
  readonly readable: ScaleRatio;
  /** The smallest scale at which its lines can be followed. */
  readonly legible: ScaleRatio;
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
  /** What the board is cut into, if parts of it have no sheet. */
  readonly cutInto?: readonly BoardWindow[];
  readonly margins: BoardPicture['margins'];
}

/**
 * The sheets of a picture of wiring: the whole board on one sheet, at the largest scale at which all of its tags find
 * room, on the shop's paper or else on its larger one; where a few find none at any, they are listed. Only a board
 * that can't be shown so is cut, with a reference at every line that is. If nothing holds all tags, the way that leaves
 * fewest out, with details of what is crowded on it.
 */
export function wiringSheets(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  picture: WiringPicture,
): readonly DrawnPage[] {
  const request: Request = { plan, metrics, board, picture };
  const listed = { ...request, picture: { ...picture, paint: picture.paintListed } };
  const { ways, rooms } = waysOf(request);
  const wholes = firstWithAll(request, ways.wholes);
  if (wholes.left === 0) return wholes.pages;
  if (wholes.fewest !== null && wholes.left <= mostListed) {
    const tried = attempt(listed, wholes.fewest);
    if (tried.left === 0) return tried.pages;
  }
  const cut = ways.cutAt.flatMap((ratio) => tiled(request, rooms, ratio));
  const parts = firstWithAll(request, cut);
  if (parts.left === 0) return parts.pages;
  const inLists = firstWithAll(listed, [...ways.wholes, ...cut]);
  if (inLists.left === 0) return inLists.pages;
  const [best = attempt(request, ways.smallest)] = [wholes, parts]
    .flatMap(({ best: each }) => each ?? [])
    .toSorted(byLeft);
  const margins = forCuts(picture, allSides);
  const base = { ...picture.base, notes: [...picture.base.notes, crowdedNote] };
  return withDetails({ ...request, picture: { ...picture, base, margins } }, best);
}

/** So many tags without room beside their ends are listed on the sheet of a whole board: more would be a search. */
const mostListed = 2;

/** Said on the details of a board on which some tags have no room. */
const crowdedNote = 'Shows tags that the sheet of the whole leaves out';

const byLeft = (a: Attempt, b: Attempt): number => a.left - b.left;

/** What came of several ways. */
interface Tried {
  readonly pages: readonly DrawnPage[];
  /** Tags that the best of them leaves out; infinite where there is no way. */
  readonly left: number;
  readonly fewest: Way | null;
  readonly best: Attempt | null;
}

/** The first way that leaves no tag out; else the first of those that leave fewest. */
function firstWithAll(request: Request, ways: readonly Way[]): Tried {
  let [best, fewest]: [Attempt | null, Way | null] = [null, null];
  for (const way of ways) {
    const tried = attempt(request, way);
    if (best === null || tried.left < best.left) [best, fewest] = [tried, way];
    if (tried.left === 0) break;
  }
  return { pages: best?.pages ?? [], left: best?.left ?? Number.POSITIVE_INFINITY, fewest, best };
}

/** The ways of a picture: its wholes, those that read well first, then by scale, the shop's paper before its larger one; the scales to cut it at. */
interface Ways {
  readonly wholes: readonly Way[];
  readonly cutAt: readonly ScaleRatio[];
  /** Where nothing else will do. */
  readonly smallest: Way;
}

function waysOf(request: Request): { readonly ways: Ways; readonly rooms: SheetRooms } {
  const { plan, metrics, board, picture } = request;
  const usual = sheetRooms(plan, metrics, picture.base);
  const larger = plan.shop.largerPaper === null ? [] : sheetRooms(plan, metrics, picture.base, true);
  const windows = [windowRound(board.outline)];
  const all = [usual, larger]
    .flatMap((rooms) => wholeSheets(rooms, board, picture.margins))
    .toSorted((a, b) => Math.max(a.ratio, picture.readable) - Math.max(b.ratio, picture.readable));
  const legible = all.filter(({ ratio }) => ratio <= picture.legible);
  const finest = legible[0]?.ratio ?? picture.legible;
  const [smaller = smallest] = all.filter(({ ratio }) => ratio > picture.legible);
  return {
    ways: {
      wholes: legible.flatMap((sheet) =>
        roomier(picture.margins).map((margins) => ({ sheet, windows, margins })),
      ),
      cutAt: scaleRatios.filter((each) => each >= 1 && each <= finest).toReversed(),
      smallest: { sheet: smaller, windows, margins: picture.margins },
    },
    rooms: [...usual, ...larger],
  };
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
      const { costAt, needed } = picture.cuts;
      const { windows: cutInto, ...sheet } = fewestTiles([room], board, margins, ratio, costAt);
      const windows = needed(cutInto);
      if (cutInto.length < 2 || windows.length > mostTiles) return [];
      const isOneRow = cutInto.every(({ fromYM }) => fromYM === cutInto[0]?.fromYM);
      return isOneRow === (sides === upright)
        ? [{ sheet: { ...sheet, ratio }, windows, cutInto, margins }]
        : [];
    }),
  );
  return ways.toSorted((a, b) => a.windows.length - b.windows.length);
}

function attempt(
  { plan, metrics, board, picture }: Request,
  { sheet, windows, cutInto, margins }: Way,
): Attempt {
  return drawTiles({ plan, metrics, board, picture: { ...picture, margins } }, sheet, windows, cutInto);
}
