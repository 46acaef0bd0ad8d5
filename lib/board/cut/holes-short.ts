import { type Item, onBoard, type Placement } from '../layout/item.ts';
import type { BoardShape } from '../shape/outline.ts';
import { type HoleLines, holeLines, holeRoom } from './hole-room.ts';

/** What the holes that items are mounted by keep away from, metres. */
export interface Drilling {
  /** From the rim of a hole to an edge of the outline or of a cut-out. */
  readonly toEdgeM: number;
  /** To a sharp corner of the outline; 0 where the sheet does not split there. */
  readonly toCornerM: number;
  /** What is drilled for a mounting hole of an item: its diameter, by the id of the hole; one that is left out as it is. */
  readonly drilledM: ReadonlyMap<string, number>;
}

/** The mounting holes of an item that stand too near to an edge or a corner: how many, and by how much in all. */
export interface HolesShort {
  readonly count: number;
  readonly shortM: number;
}

/** What the holes of one item, as drilled, are measured against on a board. */
export interface HoleGround {
  readonly lines: HoleLines;
  readonly drilling: Drilling;
}

/** The board that holes are drilled in, its lines worked out once. */
export function holeGround(shape: BoardShape, drilling: Drilling): HoleGround {
  return { lines: holeLines(shape), drilling };
}

/** The same item with its mounting holes as wide as they are drilled. */
export function asDrilled(item: Item, { drilledM }: Drilling): Item {
  const { mountingHoles = [] } = item;
  return {
    ...item,
    mountingHoles: mountingHoles.map((hole) => ({
      ...hole,
      diameterM: drilledM.get(hole.id) ?? hole.diameterM,
    })),
  };
}

/** What the holes of an item with holes as drilled lack where it is placed; one off the board lacks its way back too. */
export function holesShort(item: Item, at: Placement, { lines, drilling }: HoleGround): HolesShort {
  const sum = { count: 0, shortM: 0 };
  for (const { xM, yM, diameterM } of item.mountingHoles ?? []) {
    const hole = { ...onBoard(item, at, { xM, yM }), diameterM };
    const { toEdgeM, toCornerM } = holeRoom(hole, lines);
    const shortM = Math.max(drilling.toEdgeM - toEdgeM, drilling.toCornerM - toCornerM);
    if (shortM <= 1e-9) continue;
    sum.count += 1;
    sum.shortM += shortM;
  }
  return sum;
}
