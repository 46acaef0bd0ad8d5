import { fitBoard, type MountingSpace } from '../../board/layout/fit-in-space.ts';
import { spacerStack } from '../../board/layout/raising/spacer-stack.ts';
import { type BoardShape, drawOutline } from '../../board/shape/outline.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { Around } from '../draft/around.ts';
import type { DraftBoard } from '../draft/draft-terms.ts';
import { boltsInto, holdsIn, type NamedSheet, type SoundPoint, sheetsFor } from './bolts.ts';
import { mountingSpaceOf } from './mounting-space.ts';
import { spacerShelf } from './spacer-shelf.ts';

/** How high a spacer is tried, millimetre by millimetre. */
const mostMm = 80;
const hairM = 1e-9;

/** A board over its sound points, with what stands on it. */
export interface OverPoints {
  readonly board: Pick<DraftBoard, 'sheet' | 'spacer' | 'outline' | 'at'>;
  readonly space: VehicleSpace;
  readonly points: readonly (readonly [name: string, point: SoundPoint])[];
  /** How far what stands on the board reaches above its face, metres. */
  readonly tallestM: number;
}

/** A sheet, a spacer of the shelf and bolts that hold a board together at all of its points. */
export interface BoltStack {
  readonly sheet: NamedSheet;
  readonly spacerM: number;
  /** The bolts, each once, in the order of the points. */
  readonly bolts: readonly string[];
}

/**
 * Every sheet of the shelf with each height of spacer, in whole millimetres, that was tried and does: bolts of the
 * catalogue hold at all points, the shelf makes the spacers of all of them, the board keeps clear of as much of what stands
 * out below it as any of these and as it does now, and what stands on it keeps its room in the depth of the space. What is wet asks for its
 * height.
 */
export function boltStacks(
  around: Around,
  over: OverPoints,
  sheets: readonly NamedSheet[],
): readonly BoltStack[] {
  const { at, outline } = over.board;
  const shape = outline && drawOutline(outline).shape;
  if (!shape || !at || over.points.length === 0) return [];
  const clearOf = { shape, at };
  const leastM = over.space.wet ? around.rules['wet-raise'].value : 0;
  const found = sheets.flatMap((sheet) =>
    Array.from({ length: mostMm + 1 }, (_, mm) => mm / 1000).flatMap((spacerM) => {
      const bolts = spacerM < leastM - hairM ? null : boltsOf(around, over, sheet, spacerM);
      if (!bolts || !fitsDepth(around, over, sheet, spacerM) || !isMade(around, over, sheet, spacerM))
        return [];
      const inWay = countInWay(around, over, clearOf, { sheet, spacerM });
      const before = countInWay(around, over, clearOf, { sheet, spacerM: over.board.spacer ?? 0 });
      return inWay > before ? [] : [{ sheet, spacerM, bolts, inWay }];
    }),
  );
  const fewest = Math.min(...found.map(({ inWay }) => inWay));
  return found.flatMap(({ inWay, ...stack }) => (inWay === fewest ? [stack] : []));
}

/** The shortest bolts that hold at each point; null where none does at one of them. */
function boltsOf(
  around: Around,
  { points }: OverPoints,
  { part }: NamedSheet,
  spacerM: number,
): readonly string[] | null {
  const bolts = points.map(([, point]) =>
    boltsInto(around, point).find(({ lengthM }) => holdsIn(around, lengthM, spacerM + part.thickness, point)),
  );
  const names = bolts.flatMap((bolt) => bolt?.id ?? []);
  return names.length === points.length ? [...new Set(names)] : null;
}

function fitsDepth(
  { rules }: Around,
  { space, tallestM }: OverPoints,
  { part }: NamedSheet,
  spacerM: number,
): boolean {
  return spacerM + part.thickness + tallestM + rules['space-clearance'].value <= space.depth + hairM;
}

/** True where the shelf makes a spacer of one height at every point, of what the others leave on it. */
function isMade(around: Around, { points }: OverPoints, { part }: NamedSheet, spacerM: number): boolean {
  if (spacerM <= hairM) return true;
  const taken = new Map<string, number>();
  return points.every(([, { stud }]) => {
    const shelf = spacerShelf(around, stud, taken);
    const stack = spacerStack(spacerM, part.thickness, shelf, around.rules['spacer-tolerance'].value);
    for (const used of stack?.parts ?? []) taken.set(used.part, (taken.get(used.part) ?? 0) + used.count);
    return stack !== null;
  });
}

/** How many things that stand out are nearer to the bare board than the house allows. */
function countInWay(
  { rules }: Around,
  { space }: OverPoints,
  { shape, at }: { readonly shape: BoardShape; readonly at: { readonly x: number; readonly y: number } },
  { sheet: { part }, spacerM }: Pick<BoltStack, 'sheet' | 'spacerM'>,
): number {
  const bare = { shape, thicknessM: part.thickness, items: [], placements: [] };
  const room: MountingSpace = mountingSpaceOf(space);
  const pose = { xM: at.x, yM: at.y, turnDeg: 0, standoffM: spacerM };
  const { faults } = fitBoard(bare, room, pose, rules['space-clearance'].value);
  return faults.filter(({ rule }) => rule === 'obstacle-in-the-way').length;
}

/** Stacks that change least of what a board writes: of its own sheet, then of its own spacer, then of another pair. */
export function nearestStacks(around: Around, over: OverPoints): readonly BoltStack[] {
  const { board } = over;
  const shelf = sheetsFor(around, {});
  const [own] = board.sheet === undefined ? [] : sheetsFor(around, board);
  const sheets = own ? [own, ...shelf.filter(({ id }) => id !== own.id)] : shelf;
  const changeM = ({ spacerM }: BoltStack) => Math.abs(spacerM - (board.spacer ?? 0));
  const alike = ({ sheet }: BoltStack) => Number(sheet.part.material !== own?.part.material);
  const stacks = boltStacks(around, over, sheets).toSorted(
    (a, b) =>
      alike(a) - alike(b) || changeM(a) - changeM(b) || b.sheet.part.thickness - a.sheet.part.thickness,
  );
  const ofSheet = stacks.find(({ sheet }) => sheet.id === own?.id);
  const ofOther = stacks.find(({ sheet }) => sheet.id !== own?.id);
  return [ofSheet, ofOther].flatMap((stack) => stack ?? []);
}
