import type { Side } from '../../../lib/board/layout/item.ts';
import { seeded } from '../../../lib/board/random.ts';
import type { RouteWire } from '../../../lib/board/route/route.ts';
import type { Barrier } from '../../../lib/board/route/track-grid.ts';
import type { Box, Point } from '../../../lib/board/shape/point.ts';

type Terminal = Point & { readonly faces: Side };

/** A board of 600 mm by 450 mm with terminal strips along its edges and one part in the middle. */
export const [boardWidthM, boardHeightM, stripM] = [0.6, 0.45, 0.03];
/** The part in the middle, and the room round it between the strips. */
export const part: Box = { minX: 0.22, maxX: 0.38, minY: 0.17, maxY: 0.28 };
export const room: Box = {
  minX: stripM,
  maxX: boardWidthM - stripM,
  minY: stripM,
  maxY: boardHeightM - stripM,
};

export const strips: readonly Barrier[] = [
  { id: 'part', box: part },
  { id: 'left', box: { minX: 0, maxX: room.minX, minY: 0, maxY: boardHeightM } },
  { id: 'right', box: { minX: room.maxX, maxX: boardWidthM, minY: 0, maxY: boardHeightM } },
  { id: 'low', box: { minX: 0, maxX: boardWidthM, minY: 0, maxY: room.minY } },
  { id: 'high', box: { minX: 0, maxX: boardWidthM, minY: room.maxY, maxY: boardHeightM } },
];

/** Terminals all round a box, so many on a long side and on a short one, that face the room between part and strips. */
function terminalsOf({ minX, minY, maxX, maxY }: Box, out: boolean, long: number, short: number): Terminal[] {
  const share = (at: number, of: number) => 0.12 + (0.76 * at) / (of - 1);
  const level = Array.from({ length: long }, (_, at) => minX + share(at, long) * (maxX - minX));
  const upright = Array.from({ length: short }, (_, at) => minY + share(at, short) * (maxY - minY));
  return [
    ...level.map((xM): Terminal => ({ xM, yM: maxY, faces: out ? 'top' : 'bottom' })),
    ...level.map((xM): Terminal => ({ xM, yM: minY, faces: out ? 'bottom' : 'top' })),
    ...upright.map((yM): Terminal => ({ xM: minX, yM, faces: out ? 'left' : 'right' })),
    ...upright.map((yM): Terminal => ({ xM: maxX, yM, faces: out ? 'right' : 'left' })),
  ];
}

/** So many wires from the part to the strips, each between two terminals drawn by lot. */
export function wiresByLot(seed: number, count: number): RouteWire[] {
  const random = seeded(seed);
  const draw = (from: Terminal[]) => from.splice(Math.floor(random() * from.length), 1);
  const [inner, outer] = [terminalsOf(part, true, 6, 4), terminalsOf(room, false, 6, 4)];
  const layers = ['signal', 'speaker', 'power', 'ground'] as const;
  return Array.from({ length: count }, (_, at) => at).flatMap((at): RouteWire[] => {
    const [[from], [to]] = [draw(inner), draw(outer)];
    const layer = layers[Math.floor(random() * 4)] ?? 'signal';
    return from && to ? [{ id: `w${at}`, from, to, layer, diameterM: 0.003 }] : [];
  });
}

/** How far round a box a point on its line stands, 0 to 1, counter-clockwise from its lower left corner. */
export function shareRound({ minX, minY, maxX, maxY }: Box, { xM, yM }: Point): number {
  const [w, h] = [maxX - minX, maxY - minY];
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-9;
  if (near(yM, minY)) return (xM - minX) / (2 * (w + h));
  if (near(xM, maxX)) return (w + yM - minY) / (2 * (w + h));
  if (near(yM, maxY)) return (w + h + maxX - xM) / (2 * (w + h));
  return (2 * w + h + maxY - yM) / (2 * (w + h));
}

/**
 * The fewest crossings that wires from the part to the strips can have, by trying every way round the part for each.
 * The room between is a ring. A wire goes from angle a within to angle b + w without, w counting its turns round the
 * part; two wires cross at least as often as whole turns lie between a1 - a2 and (b1 + w1) - (b2 + w2), and drawn
 * evenly they all cross no more often than that at once. Only differences of turns count, so the first wire makes none.
 */
export function fewestByWaysRound(wires: readonly RouteWire[]): number {
  const ends = wires.map(({ from, to }): readonly [number, number] =>
    'exit' in from || 'exit' in to ? [0, 0] : [shareRound(part, from), shareRound(room, to)],
  );
  let fewest = Infinity;
  const go = (laid: readonly (readonly [number, number])[], sum: number): void => {
    const next = ends[laid.length];
    if (sum >= fewest) return;
    if (!next) {
      fewest = sum;
      return;
    }
    for (const turns of laid.length === 0 ? [0] : [-3, -2, -1, 0, 1, 2, 3]) {
      const one = [next[0], next[1] + turns] as const;
      const crosses = laid.map((o) => Math.abs(Math.floor(one[0] - o[0]) - Math.floor(one[1] - o[1])));
      go(
        [...laid, one],
        crosses.reduce((all, count) => all + count, sum),
      );
    }
  };
  go([], 0);
  return fewest;
}
