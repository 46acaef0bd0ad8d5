import { boardArea } from '../../area-and-mass.ts';
import { type Item, type Placement, turnedSize } from '../item.ts';
import { type SearchGiven, type SearchResult, searchDefaults, searchLayouts } from '../layout-search.ts';
import type { LayoutTask } from '../layout-setting.ts';
import { clearanceOverM } from './stacking.ts';

/** What a part may be raised by: layers of the sheet that its rails are cut from. */
export interface StackLimits {
  readonly layerM: number;
  /** How high over the board's face a raised part may reach, metres. */
  readonly topM: number;
  /** Whether the stock gives the rails of raised parts; left out: always. */
  readonly railsInStock?: (raised: readonly Placement[]) => boolean;
}

/** Share of the evaluations of the first search that each number of raised parts is searched with. */
const shareOfStacks = 0.75;

/**
 * Proposes placements as `searchLayouts` does. Where the open items find no room side by side, it is looked for once
 * more, softly; then one of them is raised over lower ones, then two, and so on: the least number for which a layout is
 * found, and of its layouts the best three that differ. A part is raised by whole layers of sheet, the fewest that clear
 * what it stands over; it may stand over one that is raised itself. A number that can't be enough by area is passed
 * over. Where no number helps, the fault tells what comes nearest. Bounded by evaluations: those given, and three
 * quarters of them for each number tried, none raised among them.
 */
export function searchStacked(task: LayoutTask, limits: StackLimits, given: SearchGiven): SearchResult {
  const flat = searchLayouts(task, given);
  // Without any layout scored, an item has no place on the board at all: raised it would have none either.
  if (flat.proposals.length > 0 || flat.evaluations === 0) return flat;
  const raisableM = heightsToRaise(task, limits);
  const evaluations = Math.floor((given.evaluations ?? searchDefaults.evaluations) * shareOfStacks);
  let nearest = flat;
  let tried = flat.evaluations;
  for (const raised of numbersToRaise(task, raisableM)) {
    const found = searchLayouts(
      { ...task, raisableM, ...(limits.railsInStock ? { railsInStock: limits.railsInStock } : {}) },
      { ...given, evaluations, raised, soft: true },
    );
    tried += found.evaluations;
    if (found.proposals.length > 0) return { ...found, evaluations: tried };
    if (found.brokenM < nearest.brokenM) nearest = found;
  }
  return { ...nearest, evaluations: tried };
}

function openItems({ items, given }: LayoutTask): Item[] {
  const standing = new Set(given.map(({ item }) => item));
  return items.filter(({ id }) => !standing.has(id));
}

/** Heights of whole layers by which each open item clears another that may lie beneath, raised or not, least first. */
function heightsToRaise(
  task: LayoutTask,
  { layerM, topM }: StackLimits,
): Readonly<Record<string, readonly number[]>> {
  const uppers = openItems(task).filter(({ raising }) => raising);
  const layersOf = new Map(uppers.map(({ id }) => [id, new Set<number>()]));
  const heightsOf = ({ id }: Item): readonly number[] => {
    const atM = task.given.find(({ item }) => item === id)?.heightM ?? task.heightsM?.[id] ?? 0;
    return [atM, ...[...(layersOf.get(id) ?? [])].map((layers) => layers * layerM)];
  };
  // A part over a raised one stands higher by at least a layer, so that this ends below the top.
  for (let before = -1, count = 0; count !== before; ) {
    before = count;
    for (const upper of uppers)
      for (const lower of task.items) {
        if (!lower.beneath || lower.id === upper.id) continue;
        const clearanceM = clearanceOverM(lower.beneath, upper.raising);
        for (const heightM of heightsOf(lower)) {
          const layers = Math.ceil((heightM + lower.heightM + clearanceM) / layerM - 1e-9);
          if (layers * layerM + upper.heightM <= topM + 1e-9) layersOf.get(upper.id)?.add(layers);
        }
      }
    count = [...layersOf.values()].reduce((sum, { size }) => sum + size, 0);
  }
  const ascending = (layers: ReadonlySet<number>) => [...layers].toSorted((a, b) => a - b);
  return Object.fromEntries(
    [...layersOf].map(([id, layers]) => [id, ascending(layers).map((n) => n * layerM)]),
  );
}

/** Numbers of parts that may be raised, least first, without those that leave more on the board than its area. */
function numbersToRaise(task: LayoutTask, raisableM: Readonly<Record<string, readonly number[]>>): number[] {
  const uppers = openItems(task).filter(({ id }) => (raisableM[id] ?? []).length > 0);
  const boardM2 = boardArea(task.board.shape).value;
  // Those that are given may stand in each other: what they take is not counted on.
  const onBoard = openItems(task).filter(({ id }) => (task.heightsM?.[id] ?? 0) === 0);
  const allM2 = onBoard.reduce((sum, item) => sum + areaM2(item), 0);
  // What raising a part frees: its footprint less its rails, at most.
  const freed = uppers
    .map((item) => Math.max(0, areaM2(item) - leastRailsM2(item)))
    .toSorted((a, b) => b - a);
  return [0, ...freed.map((_, at) => at + 1)].filter((raised) => {
    const leftM2 = allM2 - freed.slice(0, raised).reduce((sum, one) => sum + one, 0);
    return leftM2 <= boardM2 + 1e-9;
  });
}

const areaM2 = ({ widthM, depthM }: Item): number => widthM * depthM;

function leastRailsM2(item: Item): number {
  const railM = item.raising?.railWidthM ?? 0;
  return Math.min(
    ...([0, 90] as const).map((turnDeg) => {
      const { xM, yM } = turnedSize(item, turnDeg);
      return 2 * Math.min(railM, xM / 2) * yM;
    }),
  );
}
