import type { Phrase } from '../../model/phrase.ts';
import { type Side, sides } from '../layout/item.ts';
import { length, phrase } from '../remark.ts';
import type { BoardShape, RoundHole } from './outline.ts';
import { distance, type Point } from './point.ts';
import { insideRegion } from './region.ts';
import { narrowestWeb, type Web } from './web.ts';

/** A sound point that a fixing of the board goes into. */
export interface WebPoint {
  readonly point: string;
  /** From its middle to the edge of the space, metres. */
  readonly toSpaceEdgeM: number;
}

/** What the space of a board lets move. Nothing of it is known for a shape by itself. */
export interface WebGround {
  readonly board: string;
  readonly space: string;
  /** The points of the fixings, by the ids of their holes. */
  readonly points: ReadonlyMap<string, WebPoint>;
  /** Whether the board is free where it lies moved by so much, metres. */
  readonly isFreeMoved: (by: Point) => boolean;
  /** Whether it is with one side so much further out; never for a board that is no rectangle. */
  readonly isFreeGrown: (side: Side, byM: number) => boolean;
}

/** What a tape may add to a way that is told, metres: half of a sixteenth of an inch. */
const tapeM = 0.0016;

/** A hole that would become smaller than this share of itself no longer takes what it is for. */
const leastShare = 0.5;

/** What is told of a way out, and whether the web is as wide as it is aimed at once it is gone. */
interface Aim {
  readonly shape: BoardShape;
  readonly web: Web;
  readonly aimM: number;
  readonly ground: WebGround | null;
}

/**
 * The ways out of a web that is too narrow: what to move by how much and whither, what to make smaller or larger, each
 * tried on the shape before it is told. Aims at the first of the widths that any way reaches, metres. Where none does by
 * itself, that is told with what is left.
 */
export function webWaysOut(
  shape: BoardShape,
  web: Web,
  aimsM: readonly number[],
  ground: WebGround | null,
): Phrase {
  const holes = web.between.flatMap((name) => shape.holes.find(({ id }) => id === name) ?? []);
  if (holes.length === 0) return notOfHoles(web, aimsM[0] ?? web.widthM);
  const [ways = []] = aimsM
    .map((aimM) => holes.flatMap((hole) => waysOf(hole, { shape, web, aimM, ground })))
    .filter((found) => found.length > 0);
  return joined([...ways, ...holes.flatMap((hole) => otherPoint(hole, web, aimsM, ground))]);
}

function notOfHoles({ between, widthM }: Web, aimM: number): Phrase {
  const byM = length('room-asked', aimM - widthM);
  const [one, other] = between;
  return one === other
    ? phrase`cut ${byM} less deep at this neck`
    : phrase`move ${one} and ${other} ${byM} further apart, or make one that much smaller on this side`;
}

function joined(ways: readonly Phrase[]): Phrase {
  if (ways.length === 0) return 'neither of the two mends it by itself: make both smaller, or take one out';
  return ways.flatMap((way, at) => phrase`${at === 0 ? '' : '; or '}${way}`);
}

/** What is done at one hole: it is moved where the job has it, and made smaller; a fixing's board is moved and grows. */
function waysOf(hole: RoundHole, aim: Aim): Phrase[] {
  const point = aim.ground?.points.get(hole.id);
  return point && aim.ground ? waysOfFixing(hole, aim, aim.ground) : waysOfCut(hole, aim);
}

function waysOfCut(hole: RoundHole, { shape, web, aimM }: Aim): Phrase[] {
  const shortM = aimM - web.widthM;
  const by = awayFrom(hole, web, shortM);
  const ways: Phrase[] = [];
  if (mends(withHoles(shape, [hole.id], by, shortM), aimM)) ways.push(phrase`move ${hole.id} ${whither(by)}`);
  const diameterM = hole.diameterM - 2 * shortM;
  const smaller = shape.holes.map((one) => (one.id === hole.id ? { ...one, diameterM } : one));
  if (diameterM >= hole.diameterM * leastShare - 1e-9 && mends([{ ...shape, holes: smaller }], aimM))
    ways.push(phrase`make ${hole.id} at most ${length('at-most', diameterM)} wide`);
  return ways;
}

function waysOfFixing(hole: RoundHole, { shape, web, aimM }: Aim, ground: WebGround): Phrase[] {
  const shortM = aimM - web.widthM;
  const by = awayFrom(hole, web, shortM);
  const moved = scaled(by, -(shortM + tapeM) / shortM);
  const fixings = [...ground.points.keys()];
  const ways: Phrase[] = [];
  if (mends(withHoles(shape, fixings, by, shortM), aimM) && ground.isFreeMoved(moved))
    ways.push(phrase`move ${ground.board} in ${ground.space} ${whither(scaled(by, -1))}`);
  const side = sides.find((one) => one === sideOf(scaled(by, -1)));
  if (side && web.between.includes('edge') && ground.isFreeGrown(side, shortM + tapeM))
    ways.push(phrase`make ${ground.board} ${length('room-asked', shortM)} larger at its ${side} edge`);
  return ways;
}

/** Another point is always a way; where this one stands too near the edge of its space, no board mends it. */
function otherPoint(
  { id, diameterM }: RoundHole,
  { between }: Web,
  aimsM: readonly number[],
  ground: WebGround | null,
): Phrase[] {
  const own = ground?.points.get(id);
  if (!own || !ground) return [];
  const leastM = Math.min(...aimsM);
  const tooNear = between.includes('edge') && own.toSpaceEdgeM - diameterM / 2 < leastM - 1e-9;
  const why = tooNear
    ? phrase`; no larger board mends it, since ${own.point} itself is ${length('room-free', own.toSpaceEdgeM)} from the edge of ${ground.space}`
    : '';
  return [phrase`use another sound point than ${own.point} for ${id}, or leave ${id} out${why}`];
}

/** From the other end of a web to a hole, as long as told, metres. */
function awayFrom(hole: RoundHole, { from, to }: Web, byM: number): Point {
  const other = distance(hole, from) < distance(hole, to) ? to : from;
  const apartM = distance(hole, other);
  return apartM < 1e-9
    ? { xM: byM, yM: 0 }
    : scaled({ xM: hole.xM - other.xM, yM: hole.yM - other.yM }, byM / apartM);
}

function scaled({ xM, yM }: Point, by: number): Point {
  return { xM: xM * by, yM: yM * by };
}

/** The shape with some holes moved, as told and by what a tape may add. */
function withHoles(shape: BoardShape, ids: readonly string[], by: Point, byM: number): BoardShape[] {
  return [1, (byM + tapeM) / byM].map((share) => {
    const { xM, yM } = scaled(by, share);
    const holes = shape.holes.map((one) =>
      ids.includes(one.id) ? { ...one, xM: one.xM + xM, yM: one.yM + yM } : one,
    );
    return { ...shape, holes };
  });
}

/** True where every web is as wide as aimed at. A hole that left the board has no web: it mends nothing. */
function mends(shapes: readonly BoardShape[], aimM: number): boolean {
  return shapes.every(
    (shape) =>
      shape.holes.every((hole) => insideRegion(hole, shape.region)) &&
      narrowestWeb(shape).value >= aimM - 1e-6,
  );
}

/** Less than this is not told as a move along an axis, metres. */
const toldM = 0.0002;

/** A move in words, along the axes of the board. */
function whither({ xM, yM }: Point): Phrase {
  const along = [
    { byM: xM, words: xM < 0 ? 'to the left' : 'to the right' },
    { byM: yM, words: yM < 0 ? 'down' : 'up' },
  ].filter(({ byM }) => Math.abs(byM) > toldM);
  return along.flatMap(
    ({ byM, words }, at) => phrase`${at === 0 ? '' : ' and '}${length('room-asked', Math.abs(byM))} ${words}`,
  );
}

/** The side that a move along one axis goes to; null for one across both. */
export function sideOf({ xM, yM }: Point): Side | null {
  if (Math.abs(xM) > toldM && Math.abs(yM) > toldM) return null;
  if (Math.abs(xM) > Math.abs(yM)) return xM < 0 ? 'left' : 'right';
  return yM < 0 ? 'bottom' : 'top';
}
