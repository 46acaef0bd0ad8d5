import type { Box } from '../../shape/point.ts';
import type { Stretch } from '../route.ts';

/**
 * The lines that one wire may run on, and what each piece between two neighbouring crossings of lines is to it. By
 * `column * ys.length + row`: of a level piece its left end, of an upright one its lower end.
 */
export class DressGrid {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly width: number;
  readonly height: number;
  /** 1 where a level or an upright piece is shut. */
  readonly shut: readonly [Uint8Array, Uint8Array];
  /** Wires that a level or an upright piece crosses. */
  readonly crossed: readonly [Uint8Array, Uint8Array];
  /** 0 to 1: how far inside the distance of power and signal a piece runs. */
  readonly near: readonly [Float32Array, Float32Array];
  /** 1 where a piece does not run beside the other wire of a pair. */
  readonly stray: readonly [Uint8Array, Uint8Array];
  /** What crossing them costs besides, in crossings. */
  readonly toll: readonly [Float32Array, Float32Array];

  constructor(xs: Float64Array, ys: Float64Array, memory: GridMemory) {
    [this.xs, this.ys] = [xs, ys];
    [this.width, this.height] = [xs.length, ys.length];
    const size = this.width * this.height;
    this.shut = [memory.bytes(0, size), memory.bytes(1, size)];
    this.crossed = [memory.bytes(2, size), memory.bytes(3, size)];
    this.near = [memory.floats(0, size), memory.floats(1, size)];
    this.stray = [memory.bytes(4, size), memory.bytes(5, size)];
    this.toll = [memory.floats(2, size), memory.floats(3, size)];
  }

  /** Shuts what runs inside a box. */
  shutBox({ minX, minY, maxX, maxY }: Box): void {
    this.#fillShut(true, minX, maxX, minY, maxY);
    this.#fillShut(false, minX, maxX, minY, maxY);
  }

  /** Shuts what runs beside a stretch of another wire, nearer than both are thick. */
  shutBeside({ level, at, from, to }: Stretch, spacingM: number, mayShare: MayShare | null): void {
    const [s, e] = [spacingM - 1e-9, spacingM];
    if (mayShare === null) {
      if (level) this.#fillShut(true, from - e, to + e, at - s, at + s);
      else this.#fillShut(false, at - s, at + s, from - e, to + e);
      return;
    }
    const [columns, rows] = this.#range(
      level,
      level ? from - e : at - s,
      level ? to + e : at + s,
      level ? at - s : from - e,
      level ? at + s : to + e,
    );
    const shut = this.shut[level ? 0 : 1];
    for (let i = columns[0]; i < columns[1]; i += 1)
      for (let j = rows[0]; j < rows[1]; j += 1) {
        const [x, y] = [this.xs[i] ?? 0, this.ys[j] ?? 0];
        const isFree = level
          ? mayShare(x, y, this.xs[i + 1] ?? x, y)
          : mayShare(x, y, x, this.ys[j + 1] ?? y);
        if (!isFree) shut[i * this.height + j] = 1;
      }
  }

  /** Counts crossings on what passes a stretch at a right angle, and what that costs besides. */
  crossAt({ level, at, from, to }: Stretch, count: number, toll: number): void {
    const crossed = this.crossed[level ? 1 : 0];
    const tolls = this.toll[level ? 1 : 0];
    if (level) {
      const row = firstFrom(this.ys, at) - 1;
      if (row < 0) return;
      const end = firstFrom(this.xs, to - 1e-9);
      for (let i = firstFrom(this.xs, from + 1e-9); i < end; i += 1) {
        const e = i * this.height + row;
        crossed[e] = (crossed[e] ?? 0) + count;
        if (toll > 0) tolls[e] = (tolls[e] ?? 0) + toll;
      }
    } else {
      const column = firstFrom(this.xs, at) - 1;
      if (column < 0) return;
      const end = column * this.height + firstFrom(this.ys, to - 1e-9);
      for (let e = column * this.height + firstFrom(this.ys, from + 1e-9); e < end; e += 1) {
        crossed[e] = (crossed[e] ?? 0) + count;
        if (toll > 0) tolls[e] = (tolls[e] ?? 0) + toll;
      }
    }
  }

  /** Notes how near what runs beside a stretch comes to it. */
  nearTo({ level, at, from, to }: Stretch, apartM: number): void {
    const [columns, rows] = level
      ? this.#range(true, from, to, at - apartM, at + apartM)
      : this.#range(false, at - apartM, at + apartM, from, to);
    const near = this.near[level ? 0 : 1];
    for (let i = columns[0]; i < columns[1]; i += 1)
      for (let j = rows[0]; j < rows[1]; j += 1) {
        const share = 1 - Math.abs((level ? (this.ys[j] ?? 0) : (this.xs[i] ?? 0)) - at) / apartM;
        const e = i * this.height + j;
        if (share > (near[e] ?? 0)) near[e] = share;
      }
  }

  /** Notes what does not run beside any of some stretches. */
  strayFrom(mate: readonly Stretch[], besideM: number): void {
    for (const stray of this.stray) stray.fill(1, 0, this.width * this.height);
    for (const { level, at, from, to } of mate) {
      const [columns, rows] = level
        ? this.#range(true, from, to, at - besideM, at + besideM)
        : this.#range(false, at - besideM, at + besideM, from, to);
      const stray = this.stray[level ? 0 : 1];
      for (let i = columns[0]; i < columns[1]; i += 1)
        stray.fill(0, i * this.height + rows[0], i * this.height + Math.max(rows[0], rows[1]));
    }
  }

  #fillShut(level: boolean, minX: number, maxX: number, minY: number, maxY: number): void {
    const [columns, rows] = this.#range(level, minX, maxX, minY, maxY);
    const shut = this.shut[level ? 0 : 1];
    if (rows[0] >= rows[1]) return;
    for (let i = columns[0]; i < columns[1]; i += 1)
      shut.fill(1, i * this.height + rows[0], i * this.height + rows[1]);
  }

  /** The pieces that run inside a box, its sides left out: columns and rows, each from a first one to before an end. */
  #range(
    level: boolean,
    minX: number,
    maxX: number,
    minY: number,
    maxY: number,
  ): readonly [readonly [number, number], readonly [number, number]] {
    const { xs, ys } = this;
    return level
      ? [
          [Math.max(0, firstAbove(xs, minX) - 1), Math.min(firstFrom(xs, maxX), this.width - 1)],
          [firstAbove(ys, minY), firstFrom(ys, maxY)],
        ]
      : [
          [firstAbove(xs, minX), firstFrom(xs, maxX)],
          [Math.max(0, firstAbove(ys, minY) - 1), Math.min(firstFrom(ys, maxY), this.height - 1)],
        ];
  }
}

/** Whether a piece may lie beside another wire, for both end near there. */
export type MayShare = (x1: number, y1: number, x2: number, y2: number) => boolean;

/** Memory that one grid after the other is written in. */
export class GridMemory {
  readonly #bytes: Uint8Array[] = [];
  readonly #floats: Float32Array[] = [];

  bytes(at: number, size: number): Uint8Array {
    const known = this.#bytes[at];
    const own = known && known.length >= size ? known : new Uint8Array(2 * size);
    this.#bytes[at] = own;
    return own.fill(0, 0, size);
  }

  floats(at: number, size: number): Float32Array {
    const known = this.#floats[at];
    const own = known && known.length >= size ? known : new Float32Array(2 * size);
    this.#floats[at] = own;
    return own.fill(0, 0, size);
  }
}

/** Index of the first line at a value or above it. */
export function firstFrom(lines: Float64Array, value: number): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] ?? 0) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function firstAbove(lines: Float64Array, value: number): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] ?? 0) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
