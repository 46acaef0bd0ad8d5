import type { Phrase } from '../../model/phrase.ts';
import { length, phrase } from '../remark.ts';
import { type Growth, grownRectangle } from './grown-rectangle.ts';
import { holeWebs } from './hole-webs.ts';
import type { BoardShape, RoundHole } from './outline.ts';
import { distance, type Point } from './point.ts';
import { insideRegion } from './region.ts';
import { sideOf, toldM } from './side-of.ts';
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
  /** Whether it is with some sides so much further out; never for a board that is no rectangle. */
  readonly isFreeGrown: (growth: readonly Growth[]) => boolean;
  /** The spacer on which it is, as a job writes it, where it is not as it stands; null for none. */
  readonly spacerToGrow: (growth: readonly Growth[]) => string | null;
}

/** What a tape may add to a way that is told, metres: half of a sixteenth of an inch. */
const tapeM = 0.0016;

/** A hole that would become smaller than this share of itself no longer takes what it is for. */
const leastShare = 0.5;

/** A hole of a shape with webs too narrow, and how wide they are to be, metres. */
interface Aim {
  readonly shape: BoardShape;
  /** Those of one hole that are narrower than aimed at. */
  readonly webs: readonly Web[];
  readonly aimM: number;
  readonly ground: WebGround | null;
}

/**
 * The ways out of a web that is too narrow: what to move by how much and whither, what to make smaller or larger, each
 * tried on the shape before it is told: every web of its hole is then wide enough, and no other one is too narrow that
 * was not. Aims at the first of the widths that any way reaches, metres. Where none does by itself, that is told with
 * what is left.
 */
export function webWaysOut(
  shape: BoardShape,
  web: Web,
  aimsM: readonly number[],
  ground: WebGround | null,
): Phrase {
  const holes = web.between.flatMap((name) => shape.holes.find(({ id }) => id === name) ?? []);
  if (holes.length === 0) return notOfHoles(web, aimsM[0] ?? web.widthM);
  const waysTo = (aimM: number) =>
    holes.flatMap((hole) => waysOf(hole, { shape, webs: holeWebs(shape, hole, aimM), aimM, ground }));
  const ways = firstReached(aimsM, waysTo);
  return joined([...ways, ...holes.flatMap((hole) => otherPoint(hole, shape, aimsM, ground))]);
}

function firstReached(
  aimsM: readonly number[],
  waysTo: (aimM: number) => readonly Phrase[],
): readonly Phrase[] {
  for (const aimM of aimsM) {
    const ways = waysTo(aimM);
    if (ways.length > 0) return ways;
  }
  return [];
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

function waysOfCut(hole: RoundHole, { shape, webs, aimM }: Aim): Phrase[] {
  const by = awayFrom(webs, aimM);
  const mended = mender(shape, hole, aimM);
  const ways: Phrase[] = [];
  if (by && mended(withHoles(shape, [hole.id], by))) ways.push(phrase`move ${hole.id} ${whither(by)}`);
  const diameterM = hole.diameterM - 2 * Math.max(0, ...webs.map(({ widthM }) => aimM - widthM));
  const smaller = shape.holes.map((one) => (one.id === hole.id ? { ...one, diameterM } : one));
  if (diameterM >= hole.diameterM * leastShare - 1e-9 && mended([{ ...shape, holes: smaller }]))
    ways.push(phrase`make ${hole.id} at most ${length('at-most', diameterM)} wide`);
  return ways;
}

function waysOfFixing(hole: RoundHole, { shape, webs, aimM }: Aim, ground: WebGround): Phrase[] {
  const by = awayFrom(webs, aimM);
  const mended = mender(shape, hole, aimM);
  const ways: Phrase[] = [];
  const isFree = by && mended(withHoles(shape, [...ground.points.keys()], by));
  if (isFree && ground.isFreeMoved(scaled(by, -withTape(by))))
    ways.push(phrase`move ${ground.board} in ${ground.space} ${whither(scaled(by, -1))}`);
  const sides = webs.flatMap(({ between: [, other], from, to, widthM }): Growth[] => {
    const side = sideOf(from, to);
    return other === 'edge' && side ? [{ side, byM: aimM - widthM }] : [];
  });
  const grown = grownRectangle(shape, sides);
  const taped = sides.map(({ side, byM }) => ({ side, byM: byM + tapeM }));
  if (sides.length > 0 && grown && mended([grown])) {
    const larger = phrase`make ${ground.board} ${growthText(sides)}`;
    const isFree = ground.isFreeGrown(taped);
    const spacer = isFree ? null : ground.spacerToGrow(taped);
    if (isFree) ways.push(larger);
    else if (spacer !== null)
      ways.push(phrase`${larger}, with spacer: ${spacer} to pass over what is in the way`);
  }
  return ways;
}

/** `10 mm larger at its left edge and 4 mm at its top edge`. */
function growthText(growth: readonly Growth[]): Phrase {
  return growth.flatMap(
    ({ side, byM }, at) =>
      phrase`${at === 0 ? '' : ' and '}${length('room-asked', byM)}${at === 0 ? ' larger' : ''} at its ${side} edge`,
  );
}

/** Another point is always a way; where this one stands too near the edge of its space, no board mends it. */
function otherPoint(
  hole: RoundHole,
  shape: BoardShape,
  aimsM: readonly number[],
  ground: WebGround | null,
): Phrase[] {
  const { id, diameterM } = hole;
  const own = ground?.points.get(id);
  if (!own || !ground) return [];
  const leastM = Math.min(...aimsM);
  const isAtEdge = holeWebs(shape, hole, Math.max(...aimsM)).some(({ between }) => between.includes('edge'));
  const tooNear = isAtEdge && own.toSpaceEdgeM - diameterM / 2 < leastM - 1e-9;
  const why = tooNear
    ? phrase`; no larger board mends it, since ${own.point} itself is ${length('room-free', own.toSpaceEdgeM)} from the edge of ${ground.space}`
    : '';
  return [phrase`use another sound point than ${own.point} for ${id}, or leave ${id} out${why}`];
}

/** Rounds in which a move that meets each web is corrected by the others; webs along the axes need one or two. */
const rounds = 40;

/** The move of a hole that makes its webs as wide as aimed at, metres; null where none does. */
function awayFrom(webs: readonly Web[], aimM: number): Point | null {
  let by: Point = { xM: 0, yM: 0 };
  for (let round = 0; round < rounds; round += 1)
    for (const { from, to, widthM } of webs) {
      const apartM = distance(from, to);
      const away =
        apartM < 1e-9 ? { xM: 1, yM: 0 } : { xM: (from.xM - to.xM) / apartM, yM: (from.yM - to.yM) / apartM };
      const lackM = aimM - widthM - (away.xM * by.xM + away.yM * by.yM);
      if (lackM > 0) by = { xM: by.xM + away.xM * lackM, yM: by.yM + away.yM * lackM };
    }
  return Math.hypot(by.xM, by.yM) < 1e-9 ? null : by;
}

/** By how much a tape may make a move longer, as a ratio. */
function withTape({ xM, yM }: Point): number {
  return 1 + tapeM / Math.hypot(xM, yM);
}

function scaled({ xM, yM }: Point, by: number): Point {
  return { xM: xM * by, yM: yM * by };
}

/** The shape with some holes moved, as told and by what a tape may add. */
function withHoles(shape: BoardShape, ids: readonly string[], by: Point): BoardShape[] {
  return [1, withTape(by)].map((share) => {
    const { xM, yM } = scaled(by, share);
    const holes = shape.holes.map((one) =>
      ids.includes(one.id) ? { ...one, xM: one.xM + xM, yM: one.yM + yM } : one,
    );
    return { ...shape, holes };
  });
}

/**
 * Tells whether shapes mend the webs of a hole: each as wide as aimed at, and none elsewhere narrower than that which
 * was not as narrow before. A hole that left the board has no web: it mends nothing.
 */
function mender(
  shape: BoardShape,
  hole: RoundHole,
  aimM: number,
): (shapes: readonly BoardShape[]) => boolean {
  const rest = narrowestWeb({ ...shape, holes: shape.holes.filter(({ id }) => id !== hole.id) });
  const leastM = Math.min(aimM, rest.web ? rest.value : aimM);
  return (shapes) =>
    shapes.every(
      (one) =>
        one.holes.every((each) => insideRegion(each, one.region)) &&
        narrowestWeb(one).value >= leastM - 1e-6 &&
        one.holes.every((each) => each.id !== hole.id || holeWebs(one, each, aimM - 1e-6).length === 0),
    );
}

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
