import { type Box, distanceToBox } from '../shape/point.ts';
import type { Grounds } from './grounds.ts';
import { type Body, roomInFront, type Side, sides } from './item.ts';
import { freeToSideM, type PlacedItem } from './placed.ts';
import type { FixingHead } from './placement.ts';

/** What lies round the parts of a board: its box, and every straight line of its outline and its openings. */
export interface Surroundings {
  readonly box: Box;
  readonly lines: readonly Box[];
  readonly heads: readonly FixingHead[];
}

/** What lies round the parts of a board. */
export function surroundingsOf({ box, edges }: Grounds, heads: readonly FixingHead[]): Surroundings {
  const lines = edges.map(([a, b]): Box => {
    const [minX, maxX] = [Math.min(a.xM, b.xM), Math.max(a.xM, b.xM)];
    return { minX, maxX, minY: Math.min(a.yM, b.yM), maxY: Math.max(a.yM, b.yM) };
  });
  return { box, lines, heads };
}

/** The margin that a part lacks: to each side of the board, and to the line of the outline or an opening that is nearest, metres. */
export function marginShortM({ box, lines }: Surroundings, body: Body, marginM: number): number {
  let [sum, most] = [0, 0];
  for (const side of sides) {
    const shortM = Math.max(0, marginM - Math.max(0, freeToSideM(body, side, box)));
    sum += shortM;
    most = Math.max(most, shortM);
  }
  let nearM = Infinity;
  for (const line of lines) {
    const dx = Math.max(line.minX - body.maxX, body.minX - line.maxX, 0);
    const dy = Math.max(line.minY - body.maxY, body.minY - line.maxY, 0);
    if (dx < marginM && dy < marginM) nearM = Math.min(nearM, Math.max(dx, dy));
  }
  // A line of the box counts once, as a side.
  return sum + Math.max(0, Math.min(marginM, marginM - nearM) - most);
}

/** Straight room before a panel with terminals or controls that no head of a fixing should stand in at least, metres. */
const leastPanelM = 0.04;

/** How much heads of fixings stand before the panels of a part: 1 for one at a panel, less the further off it is. */
export function headsBefore({ heads }: Surroundings, { body, rooms, mouths }: PlacedItem): number {
  if (heads.length === 0) return 0;
  let sum = 0;
  for (const side of sides) {
    const depthM = panelRoomM(rooms[side], mouths, side);
    if (depthM <= 0) continue;
    const room = roomInFront(body, side, depthM);
    for (const head of heads) {
      if (distanceToBox(head, room) >= head.radiusM) continue;
      const awayM = Math.max(0, distanceToBox(head, body) - head.radiusM);
      sum += Math.max(0, 1 - awayM / depthM);
    }
  }
  return sum;
}

/** How deep the room before a panel is; 0 where a side has neither terminals nor controls. */
function panelRoomM(room: PlacedItem['rooms'][Side], mouths: PlacedItem['mouths'], side: Side): number {
  const mouthM = mouths.find((one) => one.side === side)?.neededM ?? 0;
  const askedM = Math.max(room?.accessM ?? 0, room?.toolM ?? 0, room?.bendM ?? 0, mouthM);
  const isPanel = mouthM > 0 || (room?.accessM ?? 0) > 0;
  return isPanel ? Math.max(leastPanelM, askedM) : 0;
}
