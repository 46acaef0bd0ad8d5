import type { BuildPlan, PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import type { Beneath } from './wires-beneath.ts';

/** A raised part with what lies below it, and where it is cut. */
export interface RaisedScene {
  readonly plan: BuildPlan;
  readonly board: PlanBoard;
  readonly placement: PlanPlacement;
  readonly beneath: Beneath;
  readonly style: LengthStyle;
  /** The cutting plane: level across the board, at this height of it. */
  readonly cutM: number;
  readonly nameOf: (item: string) => string;
}
