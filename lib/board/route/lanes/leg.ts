/** A straight piece of a wire, level or upright, in a row or column of the map. */
export interface Leg {
  readonly wire: number;
  /** Which of the wire's legs it is. */
  readonly nth: number;
  readonly level: boolean;
  /** The row of a level leg, the column of an upright one. */
  readonly line: number;
  /** Where it has to lie, y of a level one and x of an upright one (m): it begins or ends at a terminal; NaN: anywhere. */
  readonly fixedM: number;
  /**
   * Its place among all that run like it: its row or column, and a share of one that tells the order inside. Only the
   * order counts.
   */
  readonly rank: number;
}

/** A leg before its place among others is known, with the cells that it runs through. */
export interface BareLeg extends Omit<Leg, 'rank'> {
  readonly cells: readonly number[];
}

/** One number for a leg of a wire. */
export function keyOf({ wire, nth }: Pick<Leg, 'wire' | 'nth'>): number {
  return wire * 512 + nth;
}
