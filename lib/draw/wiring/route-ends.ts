import type { Side } from '../../board/layout/item.ts';
import type { BuildPlan, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import { type ItemOnBoard, nearestSide } from '../board/item-on-board.ts';
import { edgePoint } from '../board/panel-names.ts';
import type { PaperPoint } from '../paper.ts';
import { splitTerminal } from '../power/feed-tree.ts';

/** A point counts as at an item where it is no farther than this from its edge, millimetres of paper. */
const atItemMm = 1.5;

/** The wires that run along a route. */
export function wiresAlong({ wires }: Pick<BuildPlan, 'wires'>, route: PlanRoute): PlanWire[] {
  return route.along.flatMap((id) => wires.find((wire) => wire.id === id) ?? []);
}

/** Where one conductor of a route ends at an item: at its own terminal, or where the route ends if the part does not place it. */
export interface ConductorEnd {
  readonly wire: PlanWire;
  readonly onBoard: ItemOnBoard;
  readonly terminal: string;
  readonly side: Side;
  readonly alongMm: number;
  readonly point: PaperPoint;
}

/** The ends of conductors at the item that a route reaches at a point; none where it leaves the board there. */
export function endsAt(
  point: PaperPoint,
  wires: readonly PlanWire[],
  items: readonly ItemOnBoard[],
): ConductorEnd[] {
  const own = new Set(wires.flatMap(({ from, to }) => [splitTerminal(from).item, splitTerminal(to).item]));
  const near = items
    .map((onBoard) => ({ onBoard, ...nearestSide(onBoard.box, point.xMm, point.yMm) }))
    .filter(({ onBoard, offMm }) => own.has(onBoard.item.id) && offMm <= atItemMm);
  const [reached] = near.toSorted((a, b) => a.offMm - b.offMm);
  if (!reached) return [];
  return wires.flatMap((wire) => endOf(wire, reached.onBoard, reached.side, point));
}

function endOf(wire: PlanWire, onBoard: ItemOnBoard, side: Side, reached: PaperPoint): ConductorEnd[] {
  const { item, box } = onBoard;
  const along = ({ xMm, yMm }: PaperPoint): number => (side === 'left' || side === 'right' ? yMm : xMm);
  const names = [wire.from, wire.to]
    .map(splitTerminal)
    .filter((end) => end.item === item.id)
    .map(({ terminal }) => terminal);
  const ends = names.map((terminal): ConductorEnd => {
    const placed = item.terminals.find(({ name }) => name === terminal);
    const mark = placed ? onBoard.mark(placed.panel, placed.atM) : null;
    const alongMm = mark?.side === side && placed?.atM !== null ? mark.alongMm : along(reached);
    return { wire, onBoard, terminal, side, alongMm, point: edgePoint(box, side, alongMm, 0) };
  });
  // A wire from a part to the same part ends at the nearer of its terminals.
  return ends
    .toSorted((a, b) => Math.abs(a.alongMm - along(reached)) - Math.abs(b.alongMm - along(reached)))
    .slice(0, 1);
}
