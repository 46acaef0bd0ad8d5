import { type Box, distanceToBox } from '../../shape/point.ts';
import type { BoardLines } from '../board-lines.ts';
import type { FixingHead } from '../check-placements.ts';
import { type Body, outward, roomInFront, type Side, sides } from '../item.ts';
import { freeToSideM, type PlacedItem } from '../placed.ts';

/** What lies round the parts of a board: its box, and every straight line of its outline and its openings. */
export interface Surroundings {
  readonly box: Box;
  readonly lines: readonly Box[];
  readonly heads: readonly FixingHead[];
}

/** What lies round the parts of a board. */
export function surroundingsOf({ box, edges }: BoardLines, heads: readonly FixingHead[]): Surroundings {
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

/** Half the width that a wire is looked for straight out of its terminal, metres (house judgement: sizes come later). */
const halfWireM = { signal: 0.004, speaker: 0.004, power: 0.01, ground: 0.01 } as const;

/** The terminals of a part whose way straight out is closed by the head of a fixing, as far as plugs and bends need it. */
export function closedEnds({ heads }: Surroundings, { body, terminals, mouths }: PlacedItem): number {
  if (heads.length === 0) return 0;
  let count = 0;
  for (const { xM, yM, faces, layer } of terminals.values()) {
    const depthM = mouths.find(({ side }) => side === faces)?.neededM ?? 0;
    const level = faces === 'left' || faces === 'right';
    for (const head of heads) {
      const [dx, dy] = [head.xM - body.minX - xM, head.yM - body.minY - yM];
      const out = dx * outward[faces].xM + dy * outward[faces].yM;
      const asideM = Math.abs(level ? dy : dx);
      if (out <= 0 || out - head.radiusM >= depthM || asideM >= head.radiusM + halfWireM[layer]) continue;
      count += 1;
      break;
    }
  }
  return count;
}
