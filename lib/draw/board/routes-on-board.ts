import type { Side } from '../../board/layout/item.ts';
import type { BuildPlan, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import { splitTerminal } from '../feed/feed-tree.ts';
import type { PaperPoint } from '../paper.ts';
import { onPaper } from '../sheet/scale.ts';
import { type ItemOnBoard, nearestSide } from './item-on-board.ts';
import { labelsText } from './merge-names.ts';
import type { BoardScene } from './scaled-sheet.ts';

/** Where a route ends at an item. */
export interface RouteEnd {
  readonly item: string;
  readonly side: Side;
  readonly alongMm: number;
}

/** A route on paper, with the text that it carries at both ends. */
export interface RouteOnBoard {
  readonly route: PlanRoute;
  readonly wires: readonly PlanWire[];
  readonly points: readonly PaperPoint[];
  readonly text: string;
  readonly ends: readonly RouteEnd[];
}

/** A point counts as at an item where it is no farther than this from its edge, millimetres of paper. */
const atItemMm = 1.5;

/** The wires that run along a route. */
export function wiresAlong({ wires }: Pick<BuildPlan, 'wires'>, route: PlanRoute): PlanWire[] {
  return route.along.flatMap((id) => wires.find((wire) => wire.id === id) ?? []);
}

/** The routes of a board as a view shows them, in the order in which their layers are laid. */
export function routesOnBoard(
  { plan, board, view }: BoardScene,
  items: readonly ItemOnBoard[],
): RouteOnBoard[] {
  return board.routes.map((route) => {
    const wires = wiresAlong(plan, route);
    const points = route.points.map((point) => onPaper(view, point));
    const text = labelsText(wires.map(({ label }) => label));
    const ends = [points[0], points.at(-1)].flatMap((point) => (point ? endAt(point, wires, items) : []));
    return { route, wires, points, text, ends };
  });
}

function endAt(
  { xMm, yMm }: PaperPoint,
  wires: readonly PlanWire[],
  items: readonly ItemOnBoard[],
): RouteEnd[] {
  const own = new Set(wires.flatMap(({ from, to }) => [splitTerminal(from).item, splitTerminal(to).item]));
  return items.flatMap(({ item, box }): RouteEnd[] => {
    const { side, offMm } = nearestSide(box, xMm, yMm);
    if (!own.has(item.id) || offMm > atItemMm) return [];
    return [{ item: item.id, side, alongMm: side === 'left' || side === 'right' ? yMm : xMm }];
  });
}
