import { ribRing } from '../../board/strength/rib.ts';
import type { OutlinePoint, PlanBoard, PlanHole, PlanPlacement, PlanRib } from '../../model/plan/index.ts';
import { strokeLetters } from './stroke-letters.ts';

/** A place on a board, metres from its datum, x right, y up. */
export interface BoardPlace {
  readonly xM: number;
  readonly yM: number;
}

/** A hole as a machine sees it; of no diameter where it is not known. */
export type DrilledHole = Pick<PlanHole, 'xM' | 'yM' | 'diameterM'>;

/** Whatever a machine does to a board, by tool: cut right through, drill, mark the face. */
export interface MachinePaths {
  /** Closed loops: the outline first, then each cut-out. */
  readonly cut: readonly (readonly OutlinePoint[])[];
  readonly drill: readonly DrilledHole[];
  /** Runs of single strokes. */
  readonly engrave: readonly (readonly BoardPlace[])[];
}

const numberHeightM = 0.005;
const nameHeightM = 0.008;
const clearM = 0.0015;

/**
 * What a machine needs of a board: its loops and holes as in the plan, and marks for the bench: the footprint of
 * each item with its id, ribs on the mounting side, and the number of each hole beside it, in single strokes.
 */
export function machinePaths(board: PlanBoard): MachinePaths {
  const xs = board.outline.map(({ xM }) => xM);
  const middleXM = ({ of }: PlanHole): number => {
    const item = board.placements.find((placement) => placement.item === of);
    return item ? item.xM + item.widthM / 2 : (Math.min(...xs) + Math.max(...xs)) / 2;
  };
  return {
    cut: [board.outline, ...board.cutouts],
    drill: board.holes,
    engrave: [
      ...board.placements.flatMap(footprintMarks),
      ...board.ribs.filter(({ face }) => face === 'mounting').map(ribMark),
      ...board.holes.flatMap((hole) => holeMarks(hole, middleXM(hole))),
    ],
  };
}

function footprintMarks({ item, xM, yM, widthM, depthM }: PlanPlacement): readonly (readonly BoardPlace[])[] {
  const corners = [
    { xM, yM },
    { xM: xM + widthM, yM },
    { xM: xM + widthM, yM: yM + depthM },
    { xM, yM: yM + depthM },
    { xM, yM },
  ];
  const heightM = Math.min(nameHeightM, depthM / 3);
  const lying = strokeLetters(item, { xM: 0, yM: 0 }, heightM);
  const fitM = Math.max(1e-6, widthM - 4 * clearM);
  const shrink = Math.min(1, fitM / Math.max(lying.widthM, 1e-6));
  const middle = {
    xM: xM + (widthM - lying.widthM * shrink) / 2,
    yM: yM + (depthM - heightM * shrink) / 2,
  };
  return [corners, ...strokeLetters(item, middle, heightM * shrink).strokes];
}

/** Where a rib on the mounting side is set down; one on the rear can't be marked from here. */
function ribMark(rib: PlanRib): readonly BoardPlace[] {
  const ring = ribRing(rib);
  return [...ring, ...ring.slice(0, 1)];
}

/** The number stands beside its hole, on the side of the middle: the board's, or that of the item it belongs to. */
function holeMarks({ n, xM, yM, diameterM }: PlanHole, middleXM: number): readonly (readonly BoardPlace[])[] {
  const figure = strokeLetters(String(n), { xM: 0, yM: yM + clearM }, numberHeightM);
  const awayM = diameterM / 2 + clearM;
  const leftM = xM <= middleXM ? xM + awayM : xM - awayM - figure.widthM;
  return strokeLetters(String(n), { xM: leftM, yM: yM + clearM }, numberHeightM).strokes;
}
