import type { BuildPlan } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { fusesOnBoard } from './fuses-on-board.ts';
import { levelPlot } from './level-plot.ts';
import type { NumberedFuse } from './numbered-fuses.ts';
import { oneLine } from './one-line.ts';
import type { PacketDrawing } from './packet-drawing.ts';
import { placesInVehicle } from './places-in-vehicle.ts';
import { waysOfBlock } from './ways-of-block.ts';

/** The drawings that the packet adds to the picture of the board: made for who knows nothing of cables, and for everyone. */
export interface PacketDrawings {
  readonly vehicle: PacketDrawing;
  /** Of each board that holds fuses: where they are on it, then the order of the ways of its blocks. */
  readonly boards: readonly PacketDrawing[];
  readonly oneLine: PacketDrawing | null;
  readonly levels: PacketDrawing | null;
}

/** Draws them with the numbers that the tables of the packet have. */
export function packetDrawings(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
): PacketDrawings {
  return {
    vehicle: placesInVehicle(plan, metrics, fuses),
    boards: plan.boards.flatMap((board) =>
      [
        fusesOnBoard(plan, metrics, fuses, board),
        ...board.placements.flatMap((placement) => waysOfBlock(plan, metrics, fuses, board, placement)),
      ].filter((one) => one !== null),
    ),
    oneLine: oneLine(plan, metrics, fuses),
    levels: levelPlot(plan, metrics),
  };
}
