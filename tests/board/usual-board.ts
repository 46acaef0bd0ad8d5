import { boardCentroid } from '../../lib/board/area-and-mass.ts';
import { boardLinesOf } from '../../lib/board/layout/board-lines.ts';
import type { FixingHead, LayoutRules } from '../../lib/board/layout/check-placements.ts';
import { type SearchOptions, searchLayouts as searchBy } from '../../lib/board/layout/layout-search.ts';
import type { LayoutTask } from '../../lib/board/layout/layout-setting.ts';
import { type StackLimits, searchStacked as stackBy } from '../../lib/board/layout/raising/stacked-search.ts';
import { layoutHouse, roughHouse } from '../../lib/board/layout/score/layout-house.ts';
import type { ScoreBoard } from '../../lib/board/layout/score/score.ts';
import { surroundingsOf } from '../../lib/board/layout/score/surroundings.ts';
import { type RoutingRules, type RoutingTask, routeWires as routeBy } from '../../lib/board/route/routing.ts';
import { routingHouse } from '../../lib/board/route/routing-house.ts';
import type { BoardShape } from '../../lib/board/shape/outline.ts';
import type { WebRules } from '../../lib/board/shape/outline-faults.ts';
import { usualHouseRules } from '../power/usual-rules.ts';

const valueM = (name: keyof typeof usualHouseRules): number => usualHouseRules[name].value;

/** The figures of a shop that sets none: the house-rule table's own. */
export const usualLayout: LayoutRules = {
  partGapM: valueM('gap-parts'),
  powerToSignalM: valueM('power-signal-distance'),
};
export const usualHouse = layoutHouse(valueM);
export const usualRouting = routingHouse(valueM);
/** As places are looked for at first. */
export const searchHouse = roughHouse(usualHouse);
export const usualScore = { ...usualLayout, house: usualHouse };
/** What a score needs to know of a board. */
export function scoreBoard(shape: BoardShape, heads: readonly FixingHead[] = []): ScoreBoard {
  return {
    shape,
    heads,
    around: surroundingsOf(boardLinesOf(shape), heads),
    centroid: boardCentroid(shape),
    joined: new Set(),
  };
}
export const usualWebs: WebRules = {
  webGoodM: valueM('web-good'),
  webStopM: valueM('web-limit'),
  holeToEdgeM: valueM('hole-edge'),
  holeToCornerM: valueM('hole-corner'),
};
export const usualClearanceM = valueM('space-clearance');

/** Routing by the house's figures, unless a test says otherwise. */
export const routeWires = (task: RoutingTask, given: Partial<RoutingRules> = {}) =>
  routeBy(task, { ...usualRouting, ...given });

/** What a test says otherwise than the house. */
type Otherwise = Partial<Omit<SearchOptions, 'rules'>> & { readonly rules?: LayoutRules };

const byHouse = ({ rules = usualLayout, ...given }: Otherwise) => ({
  ...given,
  rules: { ...rules, house: searchHouse },
});

/** The search for a layout by the house's figures, unless a test says otherwise. */
export const searchLayouts = (task: LayoutTask, given: Otherwise = {}) => searchBy(task, byHouse(given));
export const searchStacked = (task: LayoutTask, limits: StackLimits, given: Otherwise = {}) =>
  stackBy(task, limits, byHouse(given));
