import type { Placement } from '../layout/item.ts';
import type { LayoutTask } from '../layout/layout-setting.ts';
import type { ScoreRules } from '../layout/score/score.ts';
import { type Routing, routeWires } from '../route/routing.ts';
import type { RoutingHouse } from '../route/routing-house.ts';
import { boxOf } from '../shape/point.ts';
import { tidyLayouts } from './tidy-layouts.ts';
import { wiredProposals } from './wired-proposals.ts';
import { barriersInPlace, type WireOnBoard, wiresInPlace } from './wires-in-place.ts';

/** A board laid out and wired. */
export interface ProposedBoard {
  readonly placements: readonly Placement[];
  readonly routing: Routing;
  readonly trials: number;
}

/** What a board is laid out and wired by. */
export interface ProposalRules extends ScoreRules {
  readonly routing: RoutingHouse;
}

/** Lays out the open parts of a board, none raised over others, and lays its wires, all of one diameter (m). */
export function proposeBoard(task: LayoutTask, rules: ProposalRules, diameterM: number): ProposedBoard {
  const { shape, heads = [] } = task.board;
  const found = tidyLayouts(task, { layerM: 0, topM: 0 }, { rules });
  const wires = task.links.map(({ id, from, to, layer, longestM }): WireOnBoard => {
    const length = longestM === undefined ? {} : { longestM };
    return { id, layer, diameterM, along: [{ link: id, from, to }], ...length };
  });
  const barriers = heads.map(({ id, radiusM, xM, yM }) => ({ id, centre: { xM, yM }, radiusM }));
  const house = rules.routing;
  const wiring = { shape, items: task.items, barriers, wires, house };
  const { proposals, trials } = wiredProposals({ task, rules, proposals: found.proposals, wiring });
  const placements = [...task.given, ...(proposals[0]?.placements ?? [])];
  const inPlace = { box: boxOf(shape.outline), items: task.items, placements };
  const routing = routeWires(
    { shape, barriers: [...barriersInPlace(inPlace), ...barriers], wires: wiresInPlace(inPlace, wires) },
    house,
  );
  return { placements, routing, trials };
}
