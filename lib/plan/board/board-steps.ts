import { checkPlacements, type LayoutBoard } from '../../board/layout/check-placements.ts';
import {
  fitBoard,
  type LoadedBoard,
  type MountingSpace,
  type Pose,
} from '../../board/layout/fit-in-space.ts';
import { type RoomTask, roomLacking } from '../../board/layout/fullness.ts';
import type { Item, Placement } from '../../board/layout/item.ts';
import type { SearchResult } from '../../board/layout/layout-search.ts';
import type { LayoutTask } from '../../board/layout/layout-setting.ts';
import type { StackLimits } from '../../board/layout/raising/stacked-search.ts';
import type { ScoreRules } from '../../board/layout/score/score.ts';
import { tidyLayouts } from '../../board/propose/tidy-layouts.ts';
import {
  type WiredProposals,
  type WiredSearch,
  wiredProposals,
} from '../../board/propose/wired-proposals.ts';
import type { BoardRemark } from '../../board/remark.ts';
import { choosePorts, type OpenWire, type PortChoice } from '../../board/route/port-choice.ts';
import { onDraft, type Routing, type RoutingTask, routeWires } from '../../board/route/routing.ts';
import type { RoutingHouse } from '../../board/route/routing-house.ts';
import {
  type BoardOnFixings,
  type Build,
  boardStiffness,
  chooseBuild,
  type Stiffness,
  type StiffnessAim,
  type StiffnessChoice,
} from '../../board/strength/stiffness.ts';
import type { Step } from '../../model/keep.ts';
import { type RailSupply, railsComeOut } from './sheets/rail-stock.ts';

/** What places are searched for by. */
export interface LayoutInput {
  readonly task: Omit<LayoutTask, 'railsInStock'>;
  readonly limits: Omit<StackLimits, 'railsInStock'>;
  /** What the rails of raised parts are cut from; null: always in stock. */
  readonly rails: RailSupply | null;
  readonly rules: ScoreRules;
}

/** What is told before places are searched for. */
export const roomStep: Step<RoomTask, readonly BoardRemark[]> = { id: 'room', compute: roomLacking };

/** The search for places on a board. */
export const layoutStep: Step<LayoutInput, SearchResult> = {
  id: 'layout',
  compute: ({ task, limits, rails, rules }) => {
    const railsInStock = rails && ((raised: readonly Placement[]) => railsComeOut(rails, raised));
    return tidyLayouts(task, { ...limits, ...(railsInStock ? { railsInStock } : {}) }, { rules });
  },
};

/** The choice among layouts by how they can be wired, and the search for better ones from there. */
export const proposalStep: Step<WiredSearch, WiredProposals> = { id: 'proposals', compute: wiredProposals };

export interface RoutingInput {
  readonly task: RoutingTask;
  readonly house: RoutingHouse;
  /** True where the routes only tell lengths for now, and are laid again. */
  readonly isDraft: boolean;
}

/** The search for the ways of the wires of a board. */
export const routingStep: Step<RoutingInput, Routing> = {
  id: 'routing',
  compute: ({ task, house, isDraft }, keep) =>
    routeWires(task, { ...house, ...(isDraft ? onDraft : {}) }, keep),
};

interface PortInput {
  readonly task: RoutingTask;
  readonly open: readonly OpenWire[];
  readonly house: RoutingHouse;
}

/** The choice of open ports on a board. */
export const portStep: Step<PortInput, PortChoice> = {
  id: 'ports',
  compute: ({ task, open, house }, keep) => choosePorts(task, open, house, keep),
};

interface StiffnessInput {
  readonly board: BoardOnFixings;
  readonly build: Build;
  readonly aim: StiffnessAim;
}

/** Sag and first mode of a board. */
export const stiffnessStep: Step<StiffnessInput, Stiffness | null> = {
  id: 'stiffness',
  compute: ({ board, build, aim }) => boardStiffness(board, build, aim),
};

interface BuildInput {
  readonly board: BoardOnFixings;
  readonly builds: readonly Build[];
  readonly wantedHz: number;
}

/** The lightest of several ways to build a board. */
export const buildStep: Step<BuildInput, StiffnessChoice> = {
  id: 'build',
  compute: ({ board, builds, wantedHz }) => chooseBuild(board, builds, wantedHz),
};

interface FitInput {
  readonly loaded: LoadedBoard;
  readonly space: MountingSpace;
  readonly pose: Pose;
  readonly clearanceM: number;
}

/** What of a loaded board does not go into its space. */
export const fitStep: Step<FitInput, readonly BoardRemark[]> = {
  id: 'fit',
  compute: ({ loaded, space, pose, clearanceM }) => fitBoard(loaded, space, pose, clearanceM).faults,
};

interface PlacementInput {
  readonly board: LayoutBoard;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  readonly rules: ScoreRules;
}

/** What is wrong with where things stand on a board. */
export const placementStep: Step<PlacementInput, readonly BoardRemark[]> = {
  id: 'placements',
  compute: ({ board, items, placements, rules }) => checkPlacements(board, items, placements, rules),
};

/** Of what is laid out, no more than its stiffness follows from. */
export function onFixings(
  { shape, items, placements }: Pick<BoardOnFixings, 'shape' | 'items' | 'placements'>,
  supports: BoardOnFixings['supports'],
): BoardOnFixings {
  const held = supports.map(({ xM, yM, clamped }) => ({
    xM,
    yM,
    ...(clamped === undefined ? {} : { clamped }),
  }));
  return { shape, items, placements, supports: held };
}
