import type { Ring } from '../shape/point.ts';
import { freeToRingM } from './free-to-wall.ts';
import { type Side, sides } from './item.ts';
import type { PlacedItem } from './placed.ts';

/** What stands before the sides of parts once the board is in its space: a wall of the space, or what juts into it. */
export interface Wall {
  /** Its line in the axes of the board, metres. */
  readonly ring: Ring;
  /** The sides of a part that it is held against. */
  readonly sides: readonly Side[];
  /** How high it reaches over the face of the board, metres: it is in nobody's way above that. */
  readonly toM: number;
  /** False where nobody said whether a hand comes in there. */
  readonly certain: boolean;
}

/** The rooms that an item lacks up to the walls of the space. */
export interface WallsShort {
  /** Weighed by what a rule says of each side: a control that no hand reaches stops a job. */
  readonly count: number;
  readonly shortM: number;
}

/** As many cautions as one side counts whose controls are surely out of reach: more than a layout has otherwise. */
const outOfReach = 100;

/**
 * Hand, tool and plug room that a placed item lacks up to the walls of its space, by the nearest of them on each side.
 * Air is not among it: the heat of the space weighs it.
 */
export function wallsShort({ body, rooms }: PlacedItem, walls: readonly Wall[]): WallsShort {
  let [count, shortM] = [0, 0];
  for (const side of sides) {
    const room = rooms[side];
    const [handM, otherM] = [room?.accessM ?? 0, Math.max(room?.toolM ?? 0, room?.bendM ?? 0)];
    if (Math.max(handM, otherM) <= 0) continue;
    const near = nearestWall(body, side, walls);
    const missingM = Math.max(handM, otherM) - near.freeM;
    if (missingM <= 1e-6) continue;
    count += near.certain && near.freeM < handM - 1e-6 ? outOfReach : 1;
    shortM += missingM;
  }
  return { count, shortM };
}

function nearestWall(body: PlacedItem['body'], side: Side, walls: readonly Wall[]) {
  let near = { freeM: Infinity, certain: true };
  for (const { ring, sides: held, toM, certain } of walls) {
    if (!held.includes(side) || toM <= body.minZ + 1e-9) continue;
    const freeM = freeToRingM(body, side, ring);
    if (freeM < near.freeM) near = { freeM, certain };
  }
  return near;
}
