import { type Traced, traced } from '../../model/trace.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import type { Point, Ring } from '../shape/point.ts';
import { gapM, roomInsideM } from '../shape/ring-gap.ts';
import { type LaidRib, ribRing } from '../strength/rib.ts';
import { type Body, bodyOf, type Item, type Placement } from './item.ts';

/** Something in the mounting space that stays there: its outline in the space, and its height range from the back. */
export interface Obstacle {
  readonly id: string;
  readonly outline: Ring;
  readonly fromM: number;
  readonly toM: number;
}

/** The room in the vehicle that a board goes into, seen the way the board is seen, metres from its own datum. */
export interface MountingSpace {
  readonly outline: Ring;
  /** From the back plane to what stands in front. */
  readonly depthM: number;
  readonly obstacles: readonly Obstacle[];
}

/** How a board stands in its space: its datum, its turn (counter-clockwise), and its back over the back plane. */
export interface Pose extends Point {
  readonly turnDeg: number;
  readonly standoffM: number;
}

/** What goes into the space. */
export interface LoadedBoard {
  readonly shape: BoardShape;
  readonly thicknessM: number;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  /** Ribs on either face; left out: none. Their room in depth is judged by `ribFaults`. */
  readonly ribs?: readonly LaidRib[];
}

/** Room left round a board in its space, metres; below zero: it is missing. */
export interface Clearances {
  readonly toWallM: Traced<number>;
  readonly inDepthM: Traced<number>;
  readonly toObstaclesM: readonly { readonly obstacle: string; readonly clearance: Traced<number> }[];
}

/** A board in its space: room left, and what does not fit. */
export interface Fit {
  readonly clearances: Clearances;
  readonly faults: readonly BoardRemark[];
}

interface Slab {
  readonly of: string;
  readonly ring: Ring;
  /** Openings that an obstacle may stand in. */
  readonly openings: readonly Ring[];
  readonly minZ: number;
  readonly maxZ: number;
}

/** A point of the board in the space. */
function inSpace(p: Point, pose: Pose): Point {
  const angle = (pose.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { xM: pose.xM + p.xM * cos - p.yM * sin, yM: pose.yM + p.xM * sin + p.yM * cos };
}

function slabsOf(board: LoadedBoard, pose: Pose): Slab[] {
  const faceM = pose.standoffM + board.thicknessM;
  const moved = (ring: Ring) => ring.map((p) => inSpace(p, pose));
  const { outer, openings } = board.shape.region[0] ?? { outer: [], openings: [] };
  const items = board.placements.flatMap((at) => {
    const item = board.items.find(({ id }) => id === at.item);
    if (!item) return [];
    const body = bodyOf(item, at);
    const ring = moved(footprint(body));
    return [{ of: item.id, ring, openings: [], minZ: faceM + body.minZ, maxZ: faceM + body.maxZ }];
  });
  const sheet = { of: 'board', ring: moved(outer), openings: openings.map(moved) };
  return [{ ...sheet, minZ: pose.standoffM, maxZ: faceM }, ...items];
}

function ribSlabs({ ribs = [], thicknessM }: LoadedBoard, pose: Pose): Slab[] {
  return ribs.map((rib): Slab => {
    const fromM = rib.face === 'rear' ? pose.standoffM - rib.heightM : pose.standoffM + thicknessM;
    const ring = ribRing(rib).map((p) => inSpace(p, pose));
    return { of: rib.id, ring, openings: [], minZ: fromM, maxZ: fromM + rib.heightM };
  });
}

/** The footprint of a body as a ring. */
export function footprint({ minX, minY, maxX, maxY }: Body): Ring {
  const at = (xM: number, yM: number) => ({ xM, yM });
  return [at(minX, minY), at(maxX, minY), at(maxX, maxY), at(minX, maxY)];
}

/**
 * Whether a board with its items goes into a mounting space: inside its outline, in its depth, and clear of
 * its obstacles in three dimensions, with `clearanceM` to spare. Amounts are in metres.
 */
export function fitBoard(board: LoadedBoard, space: MountingSpace, pose: Pose, clearanceM: number): Fit {
  const slabs = slabsOf(board, pose);
  const walls = slabs.map((slab) => ({ slab, roomM: roomInsideM(slab.ring, space.outline) }));
  const depths = slabs.map((slab) => ({ slab, roomM: space.depthM - slab.maxZ }));
  const obstacles = space.obstacles.map((obstacle) => ({
    obstacle: obstacle.id,
    rooms: [...slabs, ...ribSlabs(board, pose)].map((slab) => ({
      slab,
      roomM: obstacleRoomM(slab, obstacle),
    })),
  }));
  const faults = [
    ...tightest(walls, 'space-too-small', 'edge of the space', clearanceM),
    ...tightest(depths, 'space-too-shallow', 'front of the space', clearanceM),
    ...obstacles.flatMap(({ obstacle, rooms }) =>
      tightest(rooms, 'obstacle-in-the-way', obstacle, clearanceM, [obstacle]),
    ),
  ];
  const clearances = {
    toWallM: leastRoom('space-room', 'least distance to the edge of the space', walls),
    inDepthM: leastRoom('space-depth', 'depth of the space - height of the front of the part', depths),
    toObstaclesM: obstacles.map(({ obstacle, rooms }) => ({
      obstacle,
      clearance: leastRoom('obstacle-room', 'least distance to the obstacle', rooms),
    })),
  };
  return { clearances, faults };
}

/** Apart in height, apart in plan, or neither: the room between a slab and an obstacle. */
function obstacleRoomM(slab: Slab, obstacle: Obstacle): number {
  const heightM = Math.max(slab.minZ - obstacle.toM, obstacle.fromM - slab.maxZ);
  const planM = Math.max(
    gapM(slab.ring, obstacle.outline),
    ...slab.openings.map((opening) => roomInsideM(obstacle.outline, opening)),
  );
  if (heightM > 0 && planM > 0) return Math.hypot(heightM, planM);
  return Math.max(heightM, planM);
}

interface Room {
  readonly slab: Slab;
  readonly roomM: number;
}

function leastRoom(rule: string, formula: string, rooms: readonly Room[]): Traced<number> {
  const least = rooms.reduce((best, room) => (room.roomM < best.roomM ? room : best));
  return traced(least.roomM, 'm', {
    rule,
    formula,
    citation: 'plane geometry',
    inputs: [
      ['part', least.slab.of, ''],
      ['its front', least.slab.maxZ, 'm'],
    ],
  });
}

function tightest(
  rooms: readonly Room[],
  rule: 'space-too-small' | 'space-too-shallow' | 'obstacle-in-the-way',
  what: string,
  clearanceM: number,
  others: readonly string[] = [],
): BoardRemark[] {
  return rooms
    .filter(({ roomM }) => roomM < clearanceM - 1e-9)
    .map(
      ({ slab, roomM }): BoardRemark => ({
        rule,
        level: roomM < 0 ? 'stop' : 'caution',
        of: [slab.of, ...others],
        message:
          roomM < 0
            ? phrase`${slab.of} reaches ${length('overlap', -roomM)} past the ${what}`
            : phrase`${slab.of} is ${length('room-free', roomM)} from the ${what}; ${length('room-asked', clearanceM)} is needed`,
        value: roomM,
        limit: clearanceM,
        unit: 'm',
        remedy: phrase`make the board or the part smaller, or move it by ${length('room-asked', clearanceM - roomM)}`,
      }),
    );
}
