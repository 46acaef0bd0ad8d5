import type { DressGrid } from './dress-grid.ts';

/** What a way of a wire costs, in metres of thin wire. */
export interface WayPrice {
  /** For each metre. */
  readonly metre: number;
  readonly bendM: number;
  readonly crossingM: number;
  /** For each metre beside what it should keep away from, at no distance. */
  readonly nearness: number;
  /** For each metre away from the other wire of its pair. */
  readonly stray: number;
  /** For leaving apart from the wires of its run. */
  readonly bundleM: number;
}

/** Where a way begins: at a crossing of lines, straight wire behind it (m). */
export interface DressStart {
  readonly node: number;
  readonly way: number;
  readonly stubM: number;
}

/** Where it ends: in a terminal, or over the edge wherever its line comes to it (m, NaN: nowhere), which may cost something besides. */
export type DressGoal =
  | { readonly node: number; readonly way: number; readonly stubM: number }
  | { readonly way: number; readonly edgesM: Float64Array; readonly tollsM: Float64Array };

export interface DressTask {
  readonly grid: DressGrid;
  readonly start: DressStart;
  readonly goal: DressGoal;
  readonly bendRadiusM: number;
  readonly price: WayPrice;
}
