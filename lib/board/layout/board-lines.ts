import { flatten } from '../shape/bulge.ts';
import type { BoardShape } from '../shape/outline.ts';
import type { Box, Point, Ring } from '../shape/point.ts';
import { boxOf, edgesOf } from '../shape/point.ts';
import type { FixingHead } from './check-placements.ts';

/** The lines of a board that no item may stand across. */
export interface BoardLines {
  readonly box: Box;
  readonly outer: Ring;
  readonly openings: readonly Ring[];
  readonly edges: readonly (readonly [Point, Point])[];
  /** Round holes, and heads of fixings. */
  readonly holes: readonly (Point & { readonly diameterM: number })[];
}

/** The lines of a board, arcs flattened to a tenth of a millimetre. */
export function boardLinesOf(shape: BoardShape, heads: readonly FixingHead[] = []): BoardLines {
  const { outline, cutouts } = shape;
  const holes = [...shape.holes, ...heads.map(({ xM, yM, radiusM }) => ({ xM, yM, diameterM: 2 * radiusM }))];
  const [outer = [], ...openings] = [outline, ...cutouts].map((loop) => flatten(loop, 0.0001));
  return { box: boxOf(outer), outer, openings, edges: [outer, ...openings].flatMap(edgesOf), holes };
}
