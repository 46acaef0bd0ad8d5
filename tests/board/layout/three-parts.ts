import type { Side } from '../../../lib/board/layout/item.ts';
import { seeded } from '../../../lib/board/random.ts';
import type { RouteEnd, RouteWire } from '../../../lib/board/route/route.ts';
import type { Box, Point } from '../../../lib/board/shape/point.ts';
import { shapeOf } from '../shapes.ts';

type Terminal = Point & { readonly faces: Side };

/** A board of 400 mm by 280 mm with three parts on it. */
export const threeShape = shapeOf({ rectangle: { width: '400 mm', height: '280 mm' } });
export const threeBoxes: readonly Box[] = [
  { minX: 0.07, maxX: 0.13, minY: 0.07, maxY: 0.15 },
  { minX: 0.23, maxX: 0.31, minY: 0.05, maxY: 0.11 },
  { minX: 0.19, maxX: 0.27, minY: 0.19, maxY: 0.23 },
];
export const threeParts = threeBoxes.map((box, at) => ({ id: 'abc'.charAt(at), box }));

/** Terminals all round a part, the first of each side so far from its corner. */
function terminalsOf({ minX, minY, maxX, maxY }: Box, fromCornerM: number): Terminal[] {
  const along = (count: number) => [0, 0.02, 0.04].slice(0, count).map((value) => value + fromCornerM);
  return [
    ...along(3).flatMap((by): Terminal[] => [
      { xM: minX + by, yM: maxY, faces: 'top' },
      { xM: minX + by, yM: minY, faces: 'bottom' },
    ]),
    ...along(2).flatMap((by): Terminal[] => [
      { xM: minX, yM: minY + by, faces: 'left' },
      { xM: maxX, yM: minY + by, faces: 'right' },
    ]),
  ];
}

/** So many wires, each from a part to the next, between terminals drawn by lot. */
export function wiresAmong(seed: number, count: number, fromCornerM: number): RouteWire[] {
  const random = seeded(seed);
  const pools = threeBoxes.map((box) => terminalsOf(box, fromCornerM));
  const draw = (pool: Terminal[] | undefined) => pool?.splice(Math.floor(random() * pool.length), 1)[0];
  return Array.from({ length: count }, (_, at) => at).flatMap((at): RouteWire[] => {
    const first = Math.floor(random() * 3);
    const [from, to] = [draw(pools[first]), draw(pools[(first + 1) % 3])];
    return from && to ? [{ id: `w${at}`, from, to, layer: 'speaker', diameterM: 0.002 }] : [];
  });
}

/** One end of a wire: its part, and how far round it the end stands, 0 to 1, counter-clockwise. */
interface End {
  readonly part: number;
  readonly share: number;
}

function endOf(end: RouteEnd): End {
  if ('exit' in end) throw new Error('a wire among the parts leaves none of them out');
  const { xM, yM, faces } = end;
  const part = threeBoxes.findIndex(
    ({ minX, maxX, minY, maxY }) => xM >= minX && xM <= maxX && yM >= minY && yM <= maxY,
  );
  const { minX, maxX, minY, maxY } = threeBoxes[part] ?? { minX: 0, maxX: 1, minY: 0, maxY: 1 };
  const [w, d] = [maxX - minX, maxY - minY];
  const round = {
    bottom: xM - minX,
    right: w + yM - minY,
    top: w + d + maxX - xM,
    left: 2 * w + d + maxY - yM,
  };
  return { part, share: round[faces] / (2 * (w + d)) };
}

/** Whole turns that an end makes round its own part, one way or the other. */
type Turns = readonly [number, number];

/** Where the band of wires to another part leaves the ring round a part. */
function bandAt(part: number, other: number): number {
  return other === (part + 1) % 3 ? 0.25 : 0.75;
}

interface Strand {
  readonly ends: readonly [End, End];
  readonly turns: Turns;
}

/** How often two strands cross in the ring round a part that both end at; `aside`: which lies to the left in one band. */
function inRing(a: Strand, b: Strand, atA: 0 | 1, atB: 0 | 1, aside: number): number {
  const [endA, endB] = [a.ends[atA], b.ends[atB]];
  const outer = (one: Strand, at: 0 | 1) =>
    bandAt(one.ends[at].part, one.ends[at === 0 ? 1 : 0].part) + one.turns[at];
  return Math.abs(Math.floor(endA.share - endB.share) - Math.floor(outer(a, atA) + aside - outer(b, atB)));
}

/** The fewest crossings of two strands that make so many turns. */
function crossing(a: Strand, b: Strand): number {
  const shared = ([0, 1] as const).flatMap((atA) =>
    ([0, 1] as const).flatMap((atB) => (a.ends[atA].part === b.ends[atB].part ? [[atA, atB] as const] : [])),
  );
  const sum = (aside: number) =>
    shared.reduce((all, [atA, atB], at) => all + inRing(a, b, atA, atB, at === 0 ? aside : -aside), 0);
  return shared.length < 2 ? sum(0) : Math.min(sum(1e-4), sum(-1e-4));
}

/**
 * The fewest crossings that wires among three parts can have, over every way round the parts. Off the parts the board is
 * a sphere with three holes. There a wire from one hole to another can only go straight, but for whole turns round
 * either of its ends (Farb and Margalit, A Primer on Mapping Class Groups, 2.2, from memory). All wires can at once
 * cross no more often than each two of them must (Freedman, Hass and Scott 1982, from memory). So every choice of turns
 * from -2 to 2 is tried, none followed that has as many crossings as the best already; only differences of turns
 * count, so the first wire at a part makes none.
 */
export function fewestAmongThree(wires: readonly RouteWire[]): number {
  const turned = new Set<number>();
  const choices = wires.map(({ from, to }): Strand[] => {
    const ends = [endOf(from), endOf(to)] as const;
    const [one, other] = ends.map(({ part }) => {
      const free = turned.has(part) ? [0, 1, -1, 2, -2] : [0];
      turned.add(part);
      return free;
    });
    return (one ?? []).flatMap((a) => (other ?? []).map((b): Strand => ({ ends, turns: [a, b] })));
  });
  let fewest = Infinity;
  /** `added`: of each wire that is left, what each of its choices crosses of those that are chosen. */
  const go = (left: readonly (readonly Choice[])[], sum: number): void => {
    const least = left.map((own) => Math.min(...own.map(({ crossed }) => crossed)));
    if (least.reduce((all, one) => all + one, sum) >= fewest) return;
    // The wire that costs most is chosen first.
    const at = least.indexOf(Math.max(...least));
    const own = left[at];
    if (!own) {
      fewest = sum;
      return;
    }
    for (const { strand, crossed } of own.toSorted((a, b) => a.crossed - b.crossed))
      go(
        left.flatMap((others, index) =>
          index === at
            ? []
            : [others.map((one) => ({ ...one, crossed: one.crossed + crossing(strand, one.strand) }))],
        ),
        sum + crossed,
      );
  };
  go(
    choices.map((own) => own.map((strand) => ({ strand, crossed: 0 }))),
    0,
  );
  return fewest;
}

/** One way of a wire, and how often it crosses what is chosen. */
interface Choice {
  readonly strand: Strand;
  readonly crossed: number;
}
