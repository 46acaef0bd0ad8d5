import type { PassRange } from './pass.ts';

/** What an edge between two cells of the map is: the way to the next cell, off the board, or into a part. */
export type MapEdgeKind = 'portal' | 'exit' | 'wall';

/** One side of a cell. Wires pass it in an order: from below where it is upright, from the left where it is level. */
export interface MapEdge {
  readonly kind: MapEdgeKind;
  readonly upright: boolean;
  /** Of an exit: the side of the board, as `sides` counts them. */
  readonly side: number;
  /** x of an upright edge, y of a level one; and how far it goes. */
  readonly lineM: number;
  readonly fromM: number;
  readonly toM: number;
  /** The cell left of it or below it, and the one beyond; -1: none. */
  readonly cells: readonly [number, number];
  /** The narrow places that it belongs to. */
  readonly cuts: readonly number[];
  /** What stands at both ends of its narrow place (m). */
  readonly between: PassRange;
}
