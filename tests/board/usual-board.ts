import { type SearchOptions, searchLayouts as searchBy } from '../../lib/board/layout/layout-search.ts';
import type { LayoutTask } from '../../lib/board/layout/layout-setting.ts';
import type { LayoutRules } from '../../lib/board/layout/placement.ts';
import { type StackLimits, searchStacked as stackBy } from '../../lib/board/layout/stacked-search.ts';
import { type RoutingRules, type RoutingTask, routeWires as routeBy } from '../../lib/board/route/routing.ts';
import type { WebRules } from '../../lib/board/shape/outline-faults.ts';
import { usualHouseRules } from '../power/usual-rules.ts';

const valueM = (name: keyof typeof usualHouseRules): number => usualHouseRules[name].value;

/** The figures of a shop that sets none: the house-rule table's own. */
export const usualLayout: LayoutRules = {
  partGapM: valueM('gap-parts'),
  powerToSignalM: valueM('power-signal-distance'),
};
export const usualWebs: WebRules = {
  webGoodM: valueM('web-good'),
  webStopM: valueM('web-limit'),
  holeToEdgeM: valueM('hole-edge'),
  holeToCornerM: valueM('hole-corner'),
};
export const usualClearanceM = valueM('space-clearance');

/** Routing by the house's figures, unless a test says otherwise. */
export const routeWires = (task: RoutingTask, given: Partial<RoutingRules> = {}) =>
  routeBy(task, { powerToSignalM: usualLayout.powerToSignalM, ...given });

/** The search for a layout by the house's figures, unless a test says otherwise. */
export const searchLayouts = (task: LayoutTask, given: Partial<SearchOptions> = {}) =>
  searchBy(task, { rules: usualLayout, ...given });
export const searchStacked = (task: LayoutTask, limits: StackLimits, given: Partial<SearchOptions> = {}) =>
  stackBy(task, limits, { rules: usualLayout, ...given });
