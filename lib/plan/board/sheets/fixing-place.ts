import { roomInFront } from '../../../board/layout/item.ts';
import {
  type Box,
  boxOf,
  distance,
  insideRing,
  type Point,
  pointToRing,
  pointToSegment,
} from '../../../board/shape/point.ts';
import type { Stiffness } from '../../../board/strength/stiffness.ts';
import type { PlanBoard } from '../../../model/plan/index.ts';
import { onFixings, stiffnessStep } from '../board-steps.ts';
import { buildOf } from './sheet-build.ts';
import type { SoftBoard } from './soft-board.ts';

/** A place for one more fixing, in the space, and what the board comes to with it. */
export interface FixingPlace extends Point {
  readonly stiffness: Stiffness;
}

/** How many places are tried along a board and across it (house judgement). */
const [along, across] = [6, 4];
/** Round the middle of a fixing: its head and a tool on it (house judgement). */
const headM = 0.015;
/** From the middle of a fixing to an edge (house judgement: a good web). */
const edgeM = 0.03;

/** Rooms in which the head of a fixing is in the way. */
const hands: ReadonlySet<string> = new Set(['tool', 'control', 'connector']);

/**
 * Where one more fixing raises the first mode most, of places on a lattice that a tape shows (6 by 4): free of parts, of
 * the rooms of hands and plugs before them, of wires, and of what stands out behind. Null where none of
 * them raises it to `leastHz`.
 */
export function bestFixingPlace(soft: SoftBoard, leastHz: number): FixingPlace | null {
  const { job, laid, fixings, planned, wantedHz, keep } = soft;
  const build = buildOf(job, laid, []);
  const { datumInSpace: datum } = planned;
  const found = freePlaces(soft).flatMap((place): FixingPlace[] => {
    const supports = [...fixings, place];
    const board = onFixings(laid, supports);
    const stiffness = keep(stiffnessStep, { board, build, aim: { wantedHz } });
    const inSpace = { xM: place.xM + datum.xM, yM: place.yM + datum.yM };
    return stiffness ? [{ ...inSpace, stiffness }] : [];
  });
  const [best] = found.toSorted((a, b) => b.stiffness.firstModeHz.value - a.stiffness.firstModeHz.value);
  return best && best.stiffness.firstModeHz.value >= leastHz ? best : null;
}

/** Places on the board for a fixing, from its datum. */
function freePlaces({ job, fixings, planned }: SoftBoard): readonly Point[] {
  const stepM = job.shop.units === 'inch' ? 0.0127 : 0.01;
  const { minX, maxX, minY, maxY } = boxOf(planned.outline);
  const { datumInSpace: datum } = planned;
  const stepped = (from: number, to: number, of: number, at: number, datumM: number) =>
    Math.round((from + ((to - from) * (at + 0.5)) / of + datumM) / stepM) * stepM - datumM;
  return Array.from({ length: along * across }, (_, at): Point => {
    return {
      xM: stepped(minX, maxX, along, at % along, datum.xM),
      yM: stepped(minY, maxY, across, Math.floor(at / along), datum.yM),
    };
  }).filter((place) => isFree(place, planned) && fixings.every((one) => distance(place, one) > 4 * headM));
}

function isFree(place: Point, planned: PlanBoard): boolean {
  const { outline, cutouts, holes, routes, obstacles, datumInSpace: datum } = planned;
  const isOnBoard =
    insideRing(place, outline) &&
    [outline, ...cutouts].every((ring) => pointToRing(place, ring) >= edgeM) &&
    cutouts.every((ring) => !insideRing(place, ring));
  const isClearOf = ({ minX, maxX, minY, maxY }: Box) =>
    place.xM < minX - headM || place.xM > maxX + headM || place.yM < minY - headM || place.yM > maxY + headM;
  const wires = routes.flatMap(({ points }) =>
    points.slice(1).map((to, at) => [points[at] ?? to, to] as const),
  );
  return (
    isOnBoard &&
    planned.placements.flatMap(roomsOf).every(isClearOf) &&
    obstacles.every(({ xM, yM, widthM, heightM }) => {
      const [x, y] = [xM - datum.xM, yM - datum.yM];
      return isClearOf({ minX: x, maxX: x + widthM, minY: y, maxY: y + heightM });
    }) &&
    holes.every((one) => distance(place, one) > one.diameterM / 2 + edgeM) &&
    wires.every(([from, to]) => pointToSegment(place, from, to) > headM)
  );
}

/** What a part takes on the board, with the rooms before it that a hand or a plug needs. */
function roomsOf({ xM, yM, widthM, depthM, keepClear }: PlanBoard['placements'][number]): readonly Box[] {
  const body = { minX: xM, maxX: xM + widthM, minY: yM, maxY: yM + depthM, minZ: 0, maxZ: 0 };
  const rooms = keepClear.filter(({ kind }) => hands.has(kind));
  return [body, ...rooms.map(({ side, depthM: outM }) => roomInFront(body, side, outM))];
}
