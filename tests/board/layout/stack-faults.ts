import type { Item, Placement, Side } from '../../../lib/board/layout/item.ts';

interface Block {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** By how much two spans share a stretch; below zero where they are apart. */
const shared = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

const hair = 1e-6;
const inPlan = (a: Block, b: Block): boolean => shared(a.x, b.x) > hair && shared(a.y, b.y) > hair;
const meet = (a: Block, b: Block): boolean => inPlan(a, b) && shared(a.z, b.z) > hair;

function blockOf(item: Item, { xM, yM, turnDeg, heightM }: Placement): Block {
  const [wide, deep] =
    turnDeg === 90 || turnDeg === 270 ? [item.depthM, item.widthM] : [item.widthM, item.depthM];
  return { x: [xM, xM + wide], y: [yM, yM + deep], z: [heightM, heightM + item.heightM] };
}

/** Rails below the left and the right side of a raised item, from the board to its underside. */
function railsOf({ x, y, z }: Block, railM: number): Block[] {
  const wide = Math.min(railM, (x[1] - x[0]) / 2);
  const below: [number, number] = [0, z[0]];
  return [
    { x: [x[0], x[0] + wide], y, z: below },
    { x: [x[1] - wide, x[1]], y, z: below },
  ];
}

/** Room from a side outwards, and without end upwards: a hand comes from above. */
function roomBeside({ x, y, z }: Block, side: Side, deep: number): Block {
  const up: [number, number] = [z[0], Infinity];
  if (side === 'left') return { x: [x[0] - deep, x[0]], y, z: up };
  if (side === 'right') return { x: [x[1], x[1] + deep], y, z: up };
  return side === 'top' ? { x, y: [y[1], y[1] + deep], z: up } : { x, y: [y[0] - deep, y[0]], z: up };
}

/** The side by which one of an item faces once it is turned counter-clockwise by quarters. */
function facing(side: Side, turnDeg: number): Side {
  const round: readonly Side[] = ['right', 'top', 'left', 'bottom'];
  return round[(round.indexOf(side) + turnDeg / 90) % 4] ?? side;
}

/** What is wrong with a layout of raised parts, worked out afresh from the corners of blocks. */
export function stackFaults(
  items: readonly Item[],
  placements: readonly Placement[],
  railM: number,
): string[] {
  const all = placements.flatMap((at) => {
    const item = items.find(({ id }) => id === at.item);
    return item ? [{ item, at, block: blockOf(item, at) }] : [];
  });
  return all.flatMap((one) =>
    all.flatMap((other): string[] => {
      if (one === other) return [];
      const name = `${one.item.id} and ${other.item.id}`;
      const rails = one.at.heightM > 0 ? railsOf(one.block, railM) : [];
      const otherRails = other.at.heightM > 0 ? railsOf(other.block, railM) : [];
      const isOver = inPlan(one.block, other.block) && one.block.z[0] >= other.block.z[1] - hair;
      const freeM = one.block.z[0] - other.block.z[1];
      const airM = Math.max(other.item.beneath?.airM ?? 0, one.item.raising?.clearanceM ?? 0);
      const sides: readonly Side[] = ['left', 'right', 'top', 'bottom'];
      return [
        ...(meet(one.block, other.block) ? [`${name} overlap`] : []),
        ...(rails.some((rail) => meet(rail, other.block))
          ? [`${name}: a rail of the first in the other`]
          : []),
        ...(rails.some((rail) => otherRails.some((its) => meet(rail, its))) ? [`${name}: rails`] : []),
        ...(isOver && !other.item.beneath ? [`${name}: the other may not lie beneath`] : []),
        ...(isOver && freeM < airM - hair ? [`${name}: no air between`] : []),
        ...sides.flatMap((side) => {
          const accessM = other.item.rooms[side]?.accessM ?? 0;
          if (accessM === 0) return [];
          const room = roomBeside(other.block, facing(side, other.at.turnDeg), accessM);
          const covered = [one.block, ...rails].some((block) => meet(room, block));
          return covered ? [`${name}: controls at the ${side} of the other are covered`] : [];
        }),
      ];
    }),
  );
}
