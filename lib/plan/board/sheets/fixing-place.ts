import { groundAt, holeLines, holeRoom } from '../../../board/cut/hole-room.ts';
import { roomInFront } from '../../../board/layout/item.ts';
import { flatten } from '../../../board/shape/bulge.ts';
import { flattenM } from '../../../board/shape/flatten.ts';
import {
  type Box,
  boxOf,
  distance,
  insideRing,
  type Point,
  pointToRing,
  pointToSegment,
} from '../../../board/shape/point.ts';
import type { Rib } from '../../../board/strength/plate.ts';
import { ribRing } from '../../../board/strength/rib.ts';
import type { Stiffness } from '../../../board/strength/stiffness.ts';
import type { HouseRules } from '../../../model/house-rules.ts';
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

/** Rooms in which the head of a fixing is in the way. */
const hands: ReadonlySet<string> = new Set(['tool', 'control', 'connector']);

/**
 * Where one more fixing raises the first mode most, of places on a lattice that a tape shows (6 by 4): free of parts, of
 * the rooms of hands and plugs before them, of wires, of ribs, and of what stands out behind, and a good web from every edge
 * and hole. `ribs`: those of the board that count in its stiffness. Null where none of them raises it to `leastHz`.
 */
export function bestFixingPlace(soft: SoftBoard, ribs: readonly Rib[], leastHz: number): FixingPlace | null {
  const { job, laid, fixings, planned, wantedHz, keep } = soft;
  const build = buildOf(job, laid, ribs);
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
  const { minX, maxX, minY, maxY } = boxOf(flatten(planned.outline, flattenM));
  const { datumInSpace: datum } = planned;
  const stepped = (from: number, to: number, of: number, at: number, datumM: number) =>
    Math.round((from + ((to - from) * (at + 0.5)) / of + datumM) / stepM) * stepM - datumM;
  return Array.from({ length: along * across }, (_, at): Point => {
    return {
      xM: stepped(minX, maxX, along, at % along, datum.xM),
      yM: stepped(minY, maxY, across, Math.floor(at / along), datum.yM),
    };
  }).filter(
    (place) => isFree(place, planned, job.rules) && fixings.every((one) => distance(place, one) > 4 * headM),
  );
}

function isFree(place: Point, planned: PlanBoard, rules: HouseRules): boolean {
  const { routes, obstacles, datumInSpace: datum } = planned;
  const isClearOf = ({ minX, maxX, minY, maxY }: Box) =>
    place.xM < minX - headM || place.xM > maxX + headM || place.yM < minY - headM || place.yM > maxY + headM;
  return (
    hasWebs(place, planned, rules) &&
    isOffRibs(place, planned, rules) &&
    planned.placements.flatMap(roomsOf).every(isClearOf) &&
    obstacles.every(({ xM, yM, widthM, heightM }) => {
      const [x, y] = [xM - datum.xM, yM - datum.yM];
      return isClearOf({ minX: x, maxX: x + widthM, minY: y, maxY: y + heightM });
    }) &&
    routes.every(({ points, diameterM }) =>
      points
        .slice(1)
        .every((to, at) => pointToSegment(place, points[at] ?? to, to) > headM + (diameterM ?? 0) / 2),
    )
  );
}

/** True where the hole of a fixing, as wide as the widest of the others, leaves good webs and keeps off edges and corners. */
function hasWebs(place: Point, { outline, cutouts, holes }: PlanBoard, rules: HouseRules): boolean {
  const { 'web-good': good, 'hole-edge': edge, 'hole-corner': corner } = rules;
  const fixings = holes.filter(({ purpose }) => purpose === 'fixing');
  const hole = { ...place, diameterM: Math.max(0, ...fixings.map(({ diameterM }) => diameterM)) };
  const lines = holeLines({ outline, cutouts });
  const { toEdgeM, toCornerM } = holeRoom(hole, lines);
  return (
    groundAt(hole, lines) === 'material' &&
    toEdgeM >= Math.max(good.value, edge.value) &&
    toCornerM >= corner.value &&
    holes.every((one) => distance(hole, one) - (one.diameterM + hole.diameterM) / 2 >= good.value)
  );
}

/** True where the head of a fixing, and behind the board the pad of its spacer, keep the room that ribs ask for. */
function isOffRibs(place: Point, { ribs }: PlanBoard, rules: HouseRules): boolean {
  const atM = Math.max(headM, rules['spacer-pad'].value / 2) + rules['rib-clearance'].value;
  return ribs.every((rib) => {
    const ring = ribRing(rib);
    return !insideRing(place, ring) && pointToRing(place, ring) >= atM;
  });
}

/** What a part takes on the board, with the rooms before it that a hand or a plug needs. */
function roomsOf({ xM, yM, widthM, depthM, keepClear }: PlanBoard['placements'][number]): readonly Box[] {
  const body = { minX: xM, maxX: xM + widthM, minY: yM, maxY: yM + depthM, minZ: 0, maxZ: 0 };
  const rooms = keepClear.filter(({ kind }) => hands.has(kind));
  return [body, ...rooms.map(({ side, depthM: outM }) => roomInFront(body, side, outM))];
}
