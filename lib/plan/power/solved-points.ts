import type { OperatingPoint } from '../../model/plan/index.ts';
import { onceEach } from '../once-each.ts';
import { type NetworkInput, type PointDefinition, solvePoint } from './operating-points.ts';
import type { SupplyEnd } from './supply-spread.ts';

/** Gives solved points of one network: each is solved once for each end of its supply. */
export type SolvedPoints = (point: PointDefinition, end?: SupplyEnd) => OperatingPoint;

/** Solves the points of a network as they are asked for. */
export function solvedPoints(input: NetworkInput): SolvedPoints {
  const solved = onceEach(
    (point: PointDefinition) =>
      onceEach(
        (end: SupplyEnd | undefined) => solvePoint(input, point, end),
        (end) => end,
      ),
    (point) => point,
  );
  return (point, end) => solved(point)(end);
}
