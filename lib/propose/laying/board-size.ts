import { spacerStack } from '../../board/layout/raising/spacer-stack.ts';
import { freeRectangles } from '../../board/shape/free-rectangles.ts';
import type { Box } from '../../board/shape/point.ts';
import { spreadOut } from '../../board/shape/rectangle-over-points.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import { listed } from '../../model/printed/listed.ts';
import { inch } from '../../model/quantity/dimensions.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Around } from '../draft/around.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftBoard } from '../draft/draft-terms.ts';
import { freeInSpace, mostMoreMm, roomAtPoint } from './board-room.ts';
import { boltFor, sheetsFor } from './bolts.ts';
import { keptSpaceOf } from './mounting-space.ts';
import { spacerShelf } from './spacer-shelf.ts';

/** Lines of the grid across a space beside those that its corners give (house judgement). */
const linesAcross = 16;
/** How much of a board its parts take at most where there is room for them and their wires (house judgement). */
const partsShare = 0.5;
const hairM = 1e-9;

/** A rectangle for a board, how high it stands, and the sound points that hold it there. Metres. */
interface BoardSize {
  readonly box: Box;
  readonly spacerM: number;
  readonly points: readonly string[];
}

/**
 * Gives each board without an outline the largest rectangle that is free in its space, over sound points that hold it
 * where it can be: on the lowest spacers that the shelf makes and that leave room for what stands on it, higher up where
 * that would pass over what is in the way. What the job says of its place and its spacers stays.
 */
export function shapeBoards(draft: Draft): void {
  for (const [id, board] of Object.entries(draft.boards)) {
    const spaceId = draft.spaceOf(id);
    const space = draft.around.vehicle.spaces[spaceId ?? ''];
    if (board.outline) continue;
    const on = draft.own.filter((device) => device.board === id);
    const parts = on.flatMap(({ facts, given }) => {
      const print = facts.footprint;
      return print ? [{ ...print, topM: print.heightM + (given?.raised ?? 0) }] : [];
    });
    const size = space && sizeIn(draft.around, board, space, parts);
    if (!space || !size) {
      draft.ask(
        ['boards', id],
        space
          ? `${id} has no outline, and no rectangle is free in ${spaceId ?? ''}`
          : `${id} has no outline, and no space to follow one from`,
        'write outline: with its shape, such as { rectangle: { width: 17 in, height: 12 in } }, and at: with its place',
      );
      continue;
    }
    const text = (lengthM: number) => tapeText(lengthM, draft.around.shop.units);
    const { box, spacerM } = size;
    draft.shapeBoard(
      id,
      {
        ...(!board.at && { at: { x: text(box.minX), y: text(box.minY) } }),
        outline: { rectangle: { width: text(box.maxX - box.minX), height: text(box.maxY - box.minY) } },
        ...(board.spacer === undefined && spacerM > 0 && { spacer: tapeText(spacerM, 'millimetre') }),
      },
      { rule: 'board-size', reason: reasonOf(spaceId ?? '', size), cp: true },
    );
  }
}

function reasonOf(space: string, { points, spacerM }: BoardSize): string {
  const over = points.length > 0 ? `, over ${listed(points)}` : ', though over no three sound points';
  const lift = spacerM > 0 ? '; on the lowest spacers of the shelf that leave it so much room' : '';
  return `the largest rectangle that is free in ${space}, clear of its walls and of what stands in it${over}${lift}`;
}

/** A part as far as the size of its board follows from it. Metres. */
interface PartOn {
  readonly widthM: number;
  readonly depthM: number;
  readonly topM: number;
}

/** The size of a board in its space: of the lowest that its parts have room on and that is held; else the largest. */
function sizeIn(
  around: Around,
  board: DraftBoard,
  space: VehicleSpace,
  parts: readonly PartOn[],
): BoardSize | null {
  const clearanceM = around.rules['space-clearance'].value;
  const thickM = Math.max(0, ...sheetsFor(around, board).map(({ part }) => part.thickness));
  const mostM = space.depth - thickM - Math.max(0, ...parts.map(({ topM }) => topM)) - clearanceM;
  const neededM2 = parts.reduce((sum, { widthM, depthM }) => sum + widthM * depthM, 0) / partsShare;
  const sizes = liftsOf(around, board, space, mostM).flatMap((spacerM) => {
    return largestAt(around, board, space, spacerM) ?? [];
  });
  const fitting = sizes.find(({ box, points }) => points.length > 0 && areaM2(box) >= neededM2);
  return fitting ?? sizes.toSorted(better)[0] ?? null;
}

/** How high a board may stand, the lowest first: as written; else as what gets wet asks, and over each thing in the way. */
function liftsOf(
  around: Around,
  board: DraftBoard,
  { obstacles, wet, 'sound-points': points }: VehicleSpace,
  mostM: number,
): readonly number[] {
  if (board.spacer !== undefined) return [board.spacer];
  const { rules } = around;
  const leastM = wet ? rules['wet-raise'].value : 0;
  const over = Object.values(obstacles).map((one) => one['stands-out'] + rules['space-clearance'].value);
  const studs = new Set(Object.values(points).map(({ stud }) => stud));
  const needs = [...new Set([leastM, ...over])].filter((needM) => needM >= leastM).toSorted((a, b) => a - b);
  const lifts = needs.flatMap((needM) => madeLift(around, board, studs, { needM, mostM }) ?? []);
  return lifts.length > 0 ? [...new Set(lifts)] : [leastM];
}

/** The least height in whole millimetres from one on that the shelf makes at every point; null for none. */
function madeLift(
  around: Around,
  board: DraftBoard,
  threads: ReadonlySet<string>,
  { needM, mostM }: { readonly needM: number; readonly mostM: number },
): number | null {
  if (needM <= hairM) return 0;
  const layerM = Math.min(...sheetsFor(around, board).map(({ part }) => part.thickness));
  const toleranceM = around.rules['spacer-tolerance'].value;
  const shelves = [...threads].map((thread) => spacerShelf(around, thread, new Map()));
  const fromMm = Math.ceil(needM * 1000 - 1e-6);
  for (let mm = fromMm; mm <= fromMm + mostMoreMm && mm / 1000 <= mostM + hairM; mm += 1)
    if (shelves.every((shelf) => spacerStack(mm / 1000, layerM, shelf, toleranceM))) return mm / 1000;
  return null;
}

/** The best free rectangle at one height: held by three points that are in no line before held by none, then the largest. */
function largestAt(
  around: Around,
  board: DraftBoard,
  space: VehicleSpace,
  spacerM: number,
): BoardSize | null {
  const points = pointsFor(around, { sheet: board.sheet, spacer: spacerM }, space);
  const sheets = sheetsFor(around, board).map(({ part }) => [part.width, part.height] as const);
  const { xs, ys } = gridOf(around, board, space);
  const sizes = freeRectangles(xs, ys, freeInSpace(around.rules, space, spacerM)).flatMap(
    (box): BoardSize[] => {
      const [wideM, highM] = [box.maxX - box.minX, box.maxY - box.minY];
      const isCut = sheets.some(([a, b]) => (wideM <= a && highM <= b) || (wideM <= b && highM <= a));
      const stands = !board.at || (box.minX === board.at.x && box.minY === board.at.y);
      if (!isCut || !stands) return [];
      const held = points.filter((one) => isWithin(one, box));
      return [{ box, spacerM, points: spreadOut(held) ? held.map(({ id }) => id) : [] }];
    },
  );
  return sizes.reduce<BoardSize | null>((best, one) => (best && better(best, one) <= 0 ? best : one), null);
}

/** Below zero where the first is better: held, then larger. */
function better(a: BoardSize, b: BoardSize): number {
  return Number(b.points.length > 0) - Number(a.points.length > 0) || areaM2(b.box) - areaM2(a.box);
}

const areaM2 = ({ minX, maxX, minY, maxY }: Box): number => (maxX - minX) * (maxY - minY);

interface PointFor {
  readonly id: string;
  readonly xM: number;
  readonly yM: number;
  /** From its middle to an edge of the board at least. */
  readonly roomM: number;
}

/** The sound points that a bolt holds the board at, with nothing behind. */
function pointsFor(
  around: Around,
  board: Parameters<typeof boltFor>[1],
  space: VehicleSpace,
): readonly PointFor[] {
  return Object.entries(space['sound-points']).flatMap(([id, point]): PointFor[] => {
    if (point.behind !== 'nothing' || boltFor(around, board, point) === null) return [];
    return [{ id, xM: point.x, yM: point.y, roomM: roomAtPoint(around, point).goodM }];
  });
}

function isWithin({ xM, yM, roomM }: PointFor, { minX, maxX, minY, maxY }: Box): boolean {
  return Math.min(xM - minX, maxX - xM, yM - minY, maxY - yM) >= roomM - hairM;
}

/** Where edges of a board may run, as a tape shows: beside the corners of the space and of what stands in it, and between. */
function gridOf(
  { shop, rules }: Around,
  { at }: DraftBoard,
  space: VehicleSpace,
): { readonly xs: readonly number[]; readonly ys: readonly number[] } {
  const stepM = shop.units === 'inch' ? inch / 8 : 0.001;
  const clearanceM = rules['space-clearance'].value;
  const { outline, obstacles } = keptSpaceOf(space, ({ must }) => must);
  const corners = [outline, ...obstacles.map((one) => one.outline)].flat();
  const linesOf = (axis: 'xM' | 'yM', fromM: number | undefined): readonly number[] => {
    const within = outline.map((p) => p[axis]);
    const [leastM, mostM] = [Math.min(...within), Math.max(...within)];
    const between = Array.from(
      { length: linesAcross },
      (_, n) => leastM + ((mostM - leastM) * n) / linesAcross,
    );
    const beside = corners.flatMap((p) => [p[axis] - clearanceM, p[axis] + clearanceM]);
    const steps = [...beside, ...between].flatMap((m) => [
      Math.floor(m / stepM + hairM),
      Math.ceil(m / stepM - hairM),
    ]);
    const lines = [...new Set(steps)].map((count) => count * stepM);
    // A board whose place is written begins there.
    const own = fromM === undefined ? lines : [fromM, ...lines.filter((m) => m > fromM + stepM / 2)];
    return own.filter((m) => m >= leastM && m <= mostM).toSorted((a, b) => a - b);
  };
  return { xs: linesOf('xM', at?.x), ys: linesOf('yM', at?.y) };
}
