import type { Side } from '../../board/layout/item.ts';
import type { PlanItem, PlanPlacement } from '../../model/plan/index.ts';
import { type ItemOnBoard, itemOnBoard } from '../board/item-on-board.ts';
import { at } from '../paper.ts';
import { dimetric, type SpacePoint } from './axonometry.ts';
import type { Stroke } from './prism.ts';

/** Where something stands on a panel of a part as it is turned on its board. */
interface PanelPlace {
  readonly side: Side;
  /** Along the side from its left or lower end, metres on the board. */
  readonly alongM: number;
  readonly isControl: boolean;
}

/** At full size, a millimetre of paper is a millimetre of the board, y down. */
const fullSize = { ratio: 1, datum: at(0, 0), mirrored: false } as const;

function placesOf(item: PlanItem, placement: PlanPlacement): PanelPlace[] {
  const onBoard = itemOnBoard(item, placement, fullSize);
  const placed = (one: PlanItem['terminals'][number] | PlanItem['controls'][number]) =>
    placeOf(onBoard, one.panel, one.atM);
  const terminals = item.terminals.flatMap((terminal) => {
    const place = placed(terminal);
    return place ? [{ ...place, isControl: false }] : [];
  });
  const controls = item.controls.flatMap((control) => {
    const place = placed(control);
    return place ? [{ ...place, isControl: true }] : [];
  });
  return [...terminals, ...controls];
}

function placeOf(
  onBoard: ItemOnBoard,
  panel: PlanItem['terminals'][number]['panel'],
  atM: number | null,
): Pick<PanelPlace, 'side' | 'alongM'> | null {
  const mark = onBoard.mark(panel, atM);
  if (!mark) return null;
  const { side, alongMm } = mark;
  return { side, alongM: side === 'left' || side === 'right' ? -alongMm / 1000 : alongMm / 1000 };
}

/**
 * Marks on the panels of a part: a stroke at each terminal, a square at each control. Those of a panel that is seen stand
 * on it, those of one that is turned away on the upper face beside it. `reachM`: how far a mark goes from the edge.
 */
export function panelMarks(item: PlanItem, placement: PlanPlacement, reachM: number): Stroke[] {
  return placesOf(item, placement).flatMap(({ side, alongM, isControl }) => {
    const place = (asideM: number, depthM: number): SpacePoint =>
      onPanel(placement, side, alongM + asideM, depthM);
    if (!isControl) return [{ from: place(0, 0), to: place(0, reachM) }];
    const halfM = reachM / 2;
    const corners = [place(-halfM, 0), place(-halfM, reachM), place(halfM, reachM), place(halfM, 0)];
    return corners.slice(1).flatMap((to, index) => {
      const from = corners[index];
      return from ? [{ from, to }] : [];
    });
  });
}

/** So much of the height of a panel its marks take at most. */
const panelShare = 0.7;

/** A place so far along a side of a part and so deep from its upper edge: down its panel, or in on its upper face. */
function onPanel(
  { xM, yM, widthM, depthM, heightM, raisedM }: PlanPlacement,
  side: Side,
  alongM: number,
  deepM: number,
): SpacePoint {
  const zM = raisedM + heightM;
  // A panel is seen in half scale: a mark on it goes twice as far.
  const downM = zM - Math.min(deepM / dimetric.z.scale, panelShare * heightM);
  if (side === 'right') return { xM: xM + widthM, yM: alongM, zM: downM };
  if (side === 'top') return { xM: alongM, yM: yM + depthM, zM: downM };
  if (side === 'left') return { xM: xM + deepM, yM: alongM, zM };
  return { xM: alongM, yM: yM + deepM, zM };
}
