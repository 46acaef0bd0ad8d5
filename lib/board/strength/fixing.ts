import type { Point } from '../shape/point.ts';

/** A screw, bolt or rivet nut that holds the board to the vehicle; metres from the board's datum. */
export interface Fixing extends Point {
  readonly id: string;
  /** Shank. */
  readonly diameterM: number;
  /** Length under the head. */
  readonly lengthM: number;
  /** What one holds in its point, in newtons: pulled out, and across. */
  readonly pullOutN?: number;
  readonly shearN?: number;
}

/** Order of ids that is the same on every machine. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
