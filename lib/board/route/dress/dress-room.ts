import { remembered } from '../../../model/once-for.ts';
import { type Side, sides } from '../../layout/item.ts';
import { flatten } from '../../shape/bulge.ts';
import type { BoardShape } from '../../shape/outline.ts';
import { type Box, boxOf, edgesOf, type Point } from '../../shape/point.ts';
import type { Barrier } from '../track-grid.ts';
import { exitEdge, faces, type Walls, wallsOf } from '../walls.ts';

/** What a wire's middle line keeps out of: boxes that open inward, so that it may run along their sides. */
export interface DressRoom {
  readonly boxes: readonly Box[];
  /** Where level and upright lines lie that touch them (m). */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** Slanted edges of a board are kept away from in pieces so long (m). */
const pieceM = 0.004;
/** Lines lie so far off what they touch that rounding never puts them inside (m). */
export const offM = 2e-7;

/** The free room of a board for wires of each thickness. */
export class DressRooms {
  readonly walls: Walls;
  /** How far the board reaches. */
  readonly box: Box;
  readonly #things: readonly Box[];
  readonly #edges: readonly Box[];
  readonly #isStraight: readonly boolean[];
  readonly #clearanceM: number;
  readonly #holds = new Map<number, readonly Hold[]>();
  readonly #known = new Map<number, DressRoom>();
  /** By side, diameter and line: what was asked before, since most lines stay from one way to the next. */
  readonly #exits: Readonly<Record<Side, Map<number, Map<number, DressExit | null>>>> = {
    right: new Map(),
    top: new Map(),
    left: new Map(),
    bottom: new Map(),
  };

  constructor(shape: BoardShape, barriers: readonly Barrier[], clearanceM: number) {
    this.walls = wallsOf(shape, barriers);
    this.box = boxOf(this.walls.edges.map(({ a }) => a));
    this.#things = this.walls.boxes;
    this.#edges = [shape.outline, ...shape.cutouts].flatMap((loop) =>
      edgesOf(flatten(loop, 0.0002)).flatMap(([a, b]) => piecesOf(a, b)),
    );
    this.#isStraight = this.#edges.map(
      ({ minX, minY, maxX, maxY }) => maxX - minX < 1e-9 || maxY - minY < 1e-9,
    );
    this.#clearanceM = clearanceM;
  }

  /** Half a wire and the room beside it (m). */
  needM(diameterM: number): number {
    return diameterM / 2 + this.#clearanceM;
  }

  roomFor(diameterM: number): DressRoom {
    const known = this.#known.get(diameterM);
    if (known) return known;
    const needM = this.needM(diameterM);
    const boxes = [...this.#things, ...this.#edges].map(({ minX, minY, maxX, maxY }) => {
      return { minX: minX - needM, minY: minY - needM, maxX: maxX + needM, maxY: maxY + needM };
    });
    // Along the pieces of a slant no wire runs.
    const along = boxes.filter(
      (_, at) => at < this.#things.length || this.#isStraight[at - this.#things.length],
    );
    const room = {
      boxes,
      xs: distinct(along.flatMap(({ minX, maxX }) => [minX - offM, maxX + offM])),
      ys: distinct(along.flatMap(({ minY, maxY }) => [minY - offM, maxY + offM])),
    };
    this.#known.set(diameterM, room);
    return room;
  }

  /** The way over a side of the board by each of some lines, the first and the last left out; null where there is none. */
  exitsOn(diameterM: number, side: Side, lines: Float64Array): (DressExit | null)[] {
    const number = sides.indexOf(side);
    const known = remembered(this.#exits[side], diameterM, () => new Map<number, DressExit | null>());
    const found: (DressExit | null)[] = [null];
    for (let line = 1; line < lines.length - 1; line += 1) {
      const lineM = lines[line] ?? 0;
      found.push(remembered(known, lineM, () => this.#exitOn(diameterM, number, lineM)));
    }
    return found;
  }

  #exitOn(diameterM: number, number: number, lineM: number): DressExit | null {
    const { lineM: edgeM, isSlanted } = exitEdge(this.walls, number, lineM);
    if (!Number.isFinite(edgeM)) return null;
    const { minX, minY, maxX, maxY } = this.box;
    const outermostM = [maxX, maxY, minX, minY][number] ?? edgeM;
    const cornerM = isSlanted ? Math.abs(outermostM - edgeM) : 0;
    const needM = this.needM(diameterM);
    const sign = number < 2 ? 1 : -1;
    let fromM = -Infinity;
    for (const { lowM, highM, beginM, endM } of this.#holdsOn(number)) {
      if (lineM <= lowM - needM || lineM >= highM + needM) continue;
      if (beginM - needM < sign * edgeM) fromM = Math.max(fromM, endM + needM);
    }
    return { edgeM, fromM: sign * fromM, cornerM };
  }

  /** What may stand in the way to a side: its breadth across that way, and from where to where along it, outward. */
  #holdsOn(side: number): readonly Hold[] {
    const known = this.#holds.get(side);
    if (known) return known;
    const level = (side & 1) === 0;
    const edges = this.walls.edges.filter(({ a, b, isOuter }) => !(isOuter && faces(a, b, side)));
    const boxes = [...this.#things, ...edges.flatMap(({ a, b }) => piecesOf(a, b))];
    const holds = boxes.map(({ minX, minY, maxX, maxY }): Hold => {
      const [lowM, highM, first, last] = level ? [minY, maxY, minX, maxX] : [minX, maxX, minY, maxY];
      return { lowM, highM, beginM: side < 2 ? first : -last, endM: side < 2 ? last : -first };
    });
    this.#holds.set(side, holds);
    return holds;
  }
}

/**
 * Where a wire comes to the edge of its board, and from where on nothing stands in its way (m along its line); and how
 * much further the board reaches to that side where the edge is slanted, as round a corner.
 */
export interface DressExit {
  readonly edgeM: number;
  readonly fromM: number;
  readonly cornerM: number;
}

interface Hold {
  readonly lowM: number;
  readonly highM: number;
  readonly beginM: number;
  readonly endM: number;
}

function distinct(values: readonly number[]): number[] {
  return [...new Set(values.map((value) => Math.round(value * 1e8) / 1e8))];
}

/** An edge of the board as boxes: one along x or y, several along a slant. */
function piecesOf(a: Point, b: Point): Box[] {
  const isStraight = Math.abs(a.xM - b.xM) < 1e-9 || Math.abs(a.yM - b.yM) < 1e-9;
  const count = isStraight ? 1 : Math.max(1, Math.ceil(Math.hypot(b.xM - a.xM, b.yM - a.yM) / pieceM));
  return Array.from({ length: count }, (_, at) => {
    const [p, q] = [at / count, (at + 1) / count];
    const [x1, x2] = [a.xM + p * (b.xM - a.xM), a.xM + q * (b.xM - a.xM)];
    const [y1, y2] = [a.yM + p * (b.yM - a.yM), a.yM + q * (b.yM - a.yM)];
    return { minX: Math.min(x1, x2), maxX: Math.max(x1, x2), minY: Math.min(y1, y2), maxY: Math.max(y1, y2) };
  });
}
