import type { BuildPlan, PlanBoard } from '../../../lib/model/plan/index.ts';
import { counted, figure, listed, metres, type Section, tapeOf } from './words.ts';

/** One section a board: what it is cut from, weighs and bears, what stands where on it, and how its wires run. */
export function boardSections(plan: BuildPlan): Section[] {
  const tape = tapeOf(plan);
  return plan.boards.map((board) => ({
    heading: `Board ${board.id}`,
    lines: [...wholeLines(board, tape), ...carriedLines(board, tape), ...wireLines(board, tape)],
  }));
}

type Tape = (lengthM: number) => string;

function wholeLines(board: PlanBoard, tape: Tape): string[] {
  const holes = new Map<string, number>();
  for (const { purpose } of board.holes) holes.set(purpose, (holes.get(purpose) ?? 0) + 1);
  const kinds = [...holes].map(([purpose, count]) => `${count} ${purpose}`);
  return [
    `cut from ${board.sheet} (${board.sheetChosen}): ${tape(board.widthM)} by ${tape(board.heightM)}, ${figure(board.areaM2, 3)} m2`,
    `mass ${figure(board.massKg, 2)} kg bare, ${figure(board.loadedMassKg, 2)} kg loaded, centroid at ${tape(board.centroid.xM)}, ${tape(board.centroid.yM)}`,
    `first mode ${figure(board.firstModeHz, 1)} Hz, sag ${figure(board.sagM === null ? null : board.sagM * 1000, 3)} mm, held to ${figure(board.retentionG, 0)} g, narrowest web ${board.narrowestWebM === null ? '-' : tape(board.narrowestWebM)}`,
    `${counted(board.holes.length, 'hole')}: ${listed(...kinds)}`,
    `${counted(board.proposals.length, 'layout')} proposed`,
  ];
}

function carriedLines(board: PlanBoard, tape: Tape): string[] {
  return [
    ...board.fixings.map(
      ({ id, part, xM, yM, spacerM }) =>
        `fixing ${id}: ${part} at ${tape(xM)}, ${tape(yM)}, ${tape(spacerM)} off`,
    ),
    ...board.placements.map(
      ({ item, xM, yM, turnDeg, raisedM, chosen }) =>
        `place ${item}: ${tape(xM)}, ${tape(yM)}, turned ${turnDeg} deg, ${listed(raisedM > 0 && `raised ${tape(raisedM)}`, chosen)}`,
    ),
    ...board.pieces.map(({ id, count, widthM, lengthM, layers, parts, packM }) => {
      const bought = parts.map((part) => `${part.count} ${part.part}`);
      const cut =
        count > 0 && `${count} of ${tape(widthM)} by ${tape(lengthM)} in ${counted(layers, 'layer')}`;
      return `riser ${id}: ${listed(cut, ...bought, packM > 0 && `packing ${figure(packM * 1000, 1)} mm`)}`;
    }),
    ...board.ribs.map(({ id, face, lengthM, widthM, heightM, form, strips, joint, screw }) => {
      const screws = screw ? `${screw.count} ${screw.part}` : 'no screw';
      return `rib ${id}: ${listed(face, `${tape(lengthM)} by ${tape(widthM)} by ${tape(heightM)}`, `${strips} ${form}`, joint, screws)}`;
    }),
  ];
}

function wireLines(board: PlanBoard, tape: Tape): string[] {
  const wholeM = board.routes.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const bends = board.routes.reduce((sum, route) => sum + route.bends, 0);
  return [
    `${counted(board.crossings, 'crossing')}, ${metres(wholeM)} of routes, ${counted(bends, 'bend')}`,
    ...board.routes.map(
      ({ wire, along, lengthM, bends: own, layer }) =>
        `route ${wire}: ${listed(layer, metres(lengthM), counted(own, 'bend'), along.length > 1 && `${along.length} wires`)}`,
    ),
    ...board.exits.map(({ wire, edge, xM, yM }) => `exit ${wire}: ${edge} edge at ${tape(xM)}, ${tape(yM)}`),
  ];
}
