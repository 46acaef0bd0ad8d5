import type { Box } from '../../shape/point.ts';
import type { Stretch } from '../route.ts';

/** What a piece may be: shut to the wire; dear, for it costs more than its length. */
export const [shutBit, dearBit] = [1, 2];

/**
 * The lines that one wire may run on, and what each piece between two neighbouring crossings of lines is to it. By
 * `column * ys.length + row`: of a level piece its left end, of an upright one its lower end.
 */
export class DressGrid {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly width: number;
  readonly height: number;
  /** Whether a level or an upright piece is shut, and whether it is dear; 0 for most. */
  readonly pieces: readonly [Uint8Array, Uint8Array];
  /** Wires that a level or an upright piece crosses. */
  readonly crossed: readonly [Uint8Array, Uint8Array];
  /** 0 to 1: how far inside the distance of power and signal a piece runs. */
  readonly near: readonly [Float32Array, Float32Array];
  /** 1 where a piece does not run beside the other wire of a pair; of what is not dear, `strays` tells it. */
  readonly stray: readonly [Uint8Array, Uint8Array];
  strays: 0 | 1 = 0;
  /** What crossing them costs besides, in crossings. */
  readonly toll: readonly [Float32Array, Float32Array];

  constructor(xs: Float64Array, ys: Float64Array, memory: GridMemory) {
    [this.xs, this.ys] = [xs, ys];
    [this.width, this.height] = [xs.length, ys.length];
    const size = this.width * this.height;
    this.pieces = [memory.bytes(0, size), memory.bytes(1, size)];
    this.crossed = [memory.bytes(2, size), memory.bytes(3, size)];
    this.near = [memory.floats(0, size), memory.floats(1, size)];
    this.stray = [memory.bytes(4, size), memory.bytes(5, size)];
    this.toll = [memory.floats(2, size), memory.floats(3, size)];
  }

  /** Shuts what runs inside a box. */
  shutBox({ minX, minY, maxX, maxY }: Box): void {
    const [left, right] = [firstAbove(this.xs, minX), firstFrom(this.xs, maxX)];
    const [low, high] = [firstAbove(this.ys, minY), firstFrom(this.ys, maxY)];
    this.#shut(0, Math.max(0, left - 1), Math.min(right, this.width - 1), low, high);
    this.#shut(1, left, right, Math.max(0, low - 1), Math.min(high, this.height - 1));
  }

  /** Shuts what runs beside a stretch of another wire, nearer than both are thick, but what they may share. */
  shutBeside({ level, at, from, to }: Stretch, spacingM: number, shared: SharedRoom | null): void {
    const [s, e] = [spacingM - 1e-9, spacingM];
    const [along, across] = level ? [this.xs, this.ys] : [this.ys, this.xs];
    const first = Math.max(0, firstAbove(along, from - e) - 1);
    const end = Math.min(firstFrom(along, to + e), along.length - 1);
    const [low, high] = [firstAbove(across, at - s), firstFrom(across, at + s)];
    if (shared === null) {
      if (level) this.#shut(0, first, end, low, high);
      else this.#shut(1, low, high, first, end);
      return;
    }
    const pieces = this.pieces[level ? 0 : 1];
    for (let line = low; line < high; line += 1)
      for (let piece = first; piece < end; piece += 1) {
        if (shared.mayHave(along, piece, across, line)) continue;
        pieces[level ? piece * this.height + line : line * this.height + piece] = shutBit;
      }
  }

  /** Counts crossings on what passes a stretch at a right angle, and what that costs besides. */
  crossAt({ level, at, from, to }: Stretch, count: number, toll: number): void {
    const [along, across] = level ? [this.xs, this.ys] : [this.ys, this.xs];
    const line = firstFrom(across, at) - 1;
    if (line < 0) return;
    const axis = level ? 1 : 0;
    const [crossed, tolls, pieces] = [this.crossed[axis], this.toll[axis], this.pieces[axis]];
    const [stride, first] = level ? [this.height, line] : [1, line * this.height];
    const end = first + stride * firstFrom(along, to - 1e-9);
    for (let e = first + stride * firstFrom(along, from + 1e-9); e < end; e += stride) {
      crossed[e] = (crossed[e] ?? 0) + count;
      if (toll > 0) tolls[e] = (tolls[e] ?? 0) + toll;
      pieces[e] = (pieces[e] ?? 0) | dearBit;
    }
  }

  /** Notes how near what runs beside a stretch comes to it. */
  nearTo(stretch: Stretch, apartM: number): void {
    const { level, at } = stretch;
    const [left, right, low, high] = this.#beside(stretch, apartM);
    const axis = level ? 0 : 1;
    const [near, pieces] = [this.near[axis], this.pieces[axis]];
    const across = level ? this.ys : this.xs;
    const shares = new Float64Array(across.length);
    for (let line = level ? low : left; line < (level ? high : right); line += 1)
      shares[line] = 1 - Math.abs((across[line] ?? 0) - at) / apartM;
    for (let i = left; i < right; i += 1)
      for (let j = low; j < high; j += 1) {
        const share = shares[level ? j : i] ?? 0;
        const e = i * this.height + j;
        if (share > (near[e] ?? 0)) {
          near[e] = share;
          pieces[e] = (pieces[e] ?? 0) | dearBit;
        }
      }
  }

  /** Notes what does not run beside any of some stretches. */
  strayFrom(mate: readonly Stretch[], besideM: number): void {
    this.strays = 1;
    for (const stray of this.stray) stray.fill(1, 0, this.width * this.height);
    for (const stretch of mate) {
      const [left, right, low, high] = this.#beside(stretch, besideM);
      const axis = stretch.level ? 0 : 1;
      const [stray, pieces] = [this.stray[axis], this.pieces[axis]];
      for (let i = left; i < right; i += 1)
        for (let e = i * this.height + low; e < i * this.height + high; e += 1) {
          stray[e] = 0;
          pieces[e] = (pieces[e] ?? 0) | dearBit;
        }
    }
  }

  #shut(axis: 0 | 1, left: number, right: number, low: number, high: number): void {
    const pieces = this.pieces[axis];
    for (let i = left; i < right; i += 1)
      for (let e = i * this.height + low; e < i * this.height + high; e += 1) pieces[e] = shutBit;
  }

  /** The pieces along a stretch that lie nearer to it than so far: columns and rows, each from a first one to before an end. */
  #beside({ level, at, from, to }: Stretch, apartM: number): readonly [number, number, number, number] {
    const [along, across] = level ? [this.xs, this.ys] : [this.ys, this.xs];
    const first = Math.max(0, firstAbove(along, from) - 1);
    const end = Math.min(firstFrom(along, to), along.length - 1);
    const [low, high] = [firstAbove(across, at - apartM), firstFrom(across, at + apartM)];
    return level ? [first, end, low, high] : [low, high, first, end];
  }
}

/** The room beside another wire that both may have, for they end near there. */
export interface SharedRoom {
  /** Whether the wire may have a piece, from a line along the other to the next, on a line across. */
  mayHave(along: Float64Array, piece: number, across: Float64Array, line: number): boolean;
}

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

/** Index of the first line above a value. */
export function firstAbove(lines: Float64Array, value: number): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] ?? 0) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
