import type { PlanBoard } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import type { LaidBoard } from './board-layout.ts';
import type { SizedConductor } from './conductor-sizing.ts';

/** The wires of a board as they run on it. */
export interface RoutedBoard {
  readonly routes: PlanBoard['routes'];
  readonly crossings: number;
  readonly exits: PlanBoard['exits'];
}

/** Routes the wires of every board. */
export function routeBoards(
  _job: Job,
  laid: readonly LaidBoard[],
  _sized: ReadonlyMap<string, SizedConductor>,
): RoutedBoard[] {
  return laid.map(() => ({ routes: [], crossings: 0, exits: [] }));
}
