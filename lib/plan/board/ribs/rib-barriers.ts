import type { Item, Placement } from '../../../board/layout/item.ts';
import type { Barrier } from '../../../board/route/track-grid.ts';
import { type Box, boxOf } from '../../../board/shape/point.ts';
import { type LaidRib, ribLengthM, ribRing, ringsAlong } from '../../../board/strength/rib.ts';

/** What parts and wires call a rib on their face. */
const prefix = 'rib ';

/** The ribs on the mounting side as things that stand there: parts keep their gap to the box of each. */
export function ribsAsItems(
  ribs: readonly LaidRib[],
  clearanceM: number,
): {
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
} {
  const standing = onMountingSide(ribs).map((rib) => {
    const { minX, minY, maxX, maxY } = boxOf(ribRing(rib));
    const size = { widthM: maxX - minX, depthM: maxY - minY, heightM: rib.heightM };
    const id = `${prefix}${rib.id}`;
    const item: Item = { id, ...size, massKg: 0, rooms: {}, gapM: clearanceM, terminals: [] };
    const at: Placement = { item: id, xM: minX, yM: minY, turnDeg: 0, heightM: 0 };
    return { item, at };
  });
  return { items: standing.map(({ item }) => item), placements: standing.map(({ at }) => at) };
}

/** True for what is told of ribs alone: where these run has rules of its own. */
export function isOfRibs(of: readonly string[]): boolean {
  return of.every((id) => id.startsWith(prefix));
}

/** The ribs on the mounting side as wires see them: a box, or where they run aslant boxes along them. */
export function ribBarriers(ribs: readonly LaidRib[]): Barrier[] {
  return onMountingSide(ribs).flatMap((rib) =>
    boxesAlong(rib).map((box): Barrier => ({ id: `${prefix}${rib.id}`, box })),
  );
}

function boxesAlong(rib: LaidRib): Box[] {
  const { from, to, widthM } = rib;
  if (Math.abs(to.xM - from.xM) < 1e-9 || Math.abs(to.yM - from.yM) < 1e-9) return [boxOf(ribRing(rib))];
  return ringsAlong(rib, Math.max(1, Math.ceil(ribLengthM(rib) / widthM))).map(boxOf);
}

function onMountingSide(ribs: readonly LaidRib[]): LaidRib[] {
  return ribs.filter(({ face }) => face === 'mounting');
}
