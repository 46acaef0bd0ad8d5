import { type Ring, ringArea } from '../../board/shape/point.ts';
import type { Piece } from '../../board/shape/region.ts';
import { type SpacePoint, seen, sight } from './axonometry.ts';

/** A body with straight sides: an outline on the board, from one height off its mounting side to another, metres. */
export interface Prism {
  /** The thing of the plan that it is, or is a part of. */
  readonly subject: string;
  readonly outline: Piece;
  readonly fromM: number;
  readonly toM: number;
}

/** A stroke in space. */
export interface Stroke {
  readonly from: SpacePoint;
  readonly to: SpacePoint;
}

/** A face that is turned to the eye: its rings as they are seen, and the plane that it lies in. */
export interface Face {
  readonly rings: readonly Ring[];
  /** Off whichever point of the plane, towards the eye along the normal, metres. */
  readonly off: (place: SpacePoint) => number;
  /** How much of a step towards the eye leads along the normal: 1 for a face that is seen square. */
  readonly towards: number;
}

/** Neighbouring sides that turn by less are one round side: no edge stands between them. */
const creaseRad = Math.PI / 6;

/** An upright side over one edge of a ring, with its normal on the board. */
interface Side {
  readonly from: Ring[number];
  readonly to: Ring[number];
  readonly xN: number;
  readonly yN: number;
}

/** Rings with material to the left of every edge. */
function ringsOf({ outline: { outer, openings } }: Prism): Ring[] {
  const turned = (ring: Ring, sense: 1 | -1): Ring =>
    ringArea(ring) * sense < 0 ? ring.toReversed() : [...ring];
  return [turned(outer, 1), ...openings.map((ring) => turned(ring, -1))];
}

function sidesOf(ring: Ring): Side[] {
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length];
    const length = to ? Math.hypot(to.xM - from.xM, to.yM - from.yM) : 0;
    if (!to || length === 0) return [];
    return [{ from, to, xN: (to.yM - from.yM) / length, yN: (from.xM - to.xM) / length }];
  });
}

const facing = ({ xN, yN }: Side): number => xN * sight[0] + yN * sight[1];
const lifted = ({ xM, yM }: Ring[number], zM: number): SpacePoint => ({ xM, yM, zM });

/** The faces of a body that are turned to the eye: its upper one, and some of its sides; never the lower one. */
export function facesOf(prism: Prism): Face[] {
  const { fromM, toM } = prism;
  const rings = ringsOf(prism);
  const top: Face = {
    rings: rings.map((ring) => ring.map((point) => seen(lifted(point, toM)))),
    off: ({ zM }) => zM - toM,
    towards: sight[2],
  };
  const sides = rings.flatMap(sidesOf).filter((side) => facing(side) > 1e-9);
  return [
    top,
    ...sides.map((side): Face => {
      const { from, to, xN, yN } = side;
      const corners = [lifted(from, fromM), lifted(to, fromM), lifted(to, toM), lifted(from, toM)];
      return {
        rings: [corners.map(seen)],
        off: ({ xM, yM }) => xN * (xM - from.xM) + yN * (yM - from.yM),
        towards: facing(side),
      };
    }),
  ];
}

/** The edges round the upper face of a body: all that is drawn of one that is flat. */
export function rimOf(prism: Prism): Stroke[] {
  return ringsOf(prism).flatMap((ring) =>
    sidesOf(ring).map(({ from, to }) => ({ from: lifted(from, prism.toM), to: lifted(to, prism.toM) })),
  );
}

/** The edges of a body at which some face of it is turned to the eye; none along a round side, save its rim. */
export function edgesOf(prism: Prism): Stroke[] {
  const { fromM, toM } = prism;
  return ringsOf(prism).flatMap((ring) => {
    const sides = sidesOf(ring);
    return sides.flatMap((side, index) => {
      const { from, to } = side;
      const before = sides.at(index - 1) ?? side;
      const upper = { from: lifted(from, toM), to: lifted(to, toM) };
      const lower = { from: lifted(from, fromM), to: lifted(to, fromM) };
      const upright = { from: lifted(from, fromM), to: lifted(from, toM) };
      return [upper, ...(facing(side) > 0 ? [lower] : []), ...(hasEdge(before, side) ? [upright] : [])];
    });
  });
}

function hasEdge(before: Side, side: Side): boolean {
  const [a, b] = [facing(before) > 0, facing(side) > 0];
  if (!a && !b) return false;
  return a !== b || before.xN * side.xN + before.yN * side.yN < Math.cos(creaseRad);
}
