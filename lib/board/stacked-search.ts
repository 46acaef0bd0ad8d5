import type { Item } from './item.ts';
import { type SearchOptions, type SearchResult, searchDefaults, searchLayouts } from './layout-search.ts';
import type { LayoutTask } from './layout-setting.ts';

/** What a part may be raised by: layers of the sheet that its rails are cut from. */
export interface StackLimits {
  readonly layerM: number;
  /** How high over the board's face a raised part may reach, metres. */
  readonly topM: number;
}

/** Ways to raise a part that are tried, and layouts that each may score. */
const stackTries = 6;
const triesEvaluations = 4000;

/**
 * Proposes placements as `searchLayouts` does. Where the open items find no room side by side, one of them is raised
 * over lower ones: the largest footprint first, by the fewest layers of sheet that clear a part it may stand over. No
 * more than six ways are tried; where none helps, what does not fit side by side is told.
 */
export function searchStacked(
  task: LayoutTask,
  limits: StackLimits,
  given: Partial<SearchOptions> = {},
): SearchResult {
  const flat = searchLayouts(task, given);
  let { evaluations } = flat;
  // Without any layout scored, an item has no place on the board at all: raised it would have none either.
  if (flat.proposals.length > 0 || evaluations === 0) return flat;
  const each = Math.min(triesEvaluations, given.evaluations ?? searchDefaults.evaluations);
  for (const raised of waysToRaise(task, limits)) {
    const heightsM = { ...task.heightsM, ...raised };
    const found = searchLayouts({ ...task, heightsM }, { ...given, evaluations: each });
    evaluations += found.evaluations;
    if (found.proposals.length > 0) return { ...found, evaluations };
  }
  return { ...flat, evaluations };
}

function waysToRaise({ items, given }: LayoutTask, limits: StackLimits): Record<string, number>[] {
  const standing = new Set(given.map(({ item }) => item));
  const uppers = items
    .filter(({ id, raising }) => raising && !standing.has(id))
    .toSorted((a, b) => areaM2(b) - areaM2(a) || (a.id < b.id ? -1 : 1));
  return uppers
    .flatMap((upper) => heightsOver(upper, items, limits).map((heightM) => ({ [upper.id]: heightM })))
    .slice(0, stackTries);
}

const areaM2 = ({ widthM, depthM }: Item): number => widthM * depthM;

/** Heights of whole layers that clear one item or another that may lie beneath, least first. */
function heightsOver(upper: Item, items: readonly Item[], { layerM, topM }: StackLimits): number[] {
  const clearanceM = upper.raising?.clearanceM ?? 0;
  const heights = items
    .filter(({ id, beneath }) => beneath && id !== upper.id)
    .map(({ heightM }) => Math.ceil((heightM + clearanceM) / layerM - 1e-9) * layerM)
    .filter((heightM) => heightM + upper.heightM <= topM + 1e-9);
  return [...new Set(heights)].toSorted((a, b) => a - b);
}
