import { type HoleSetUp, letteredHoles } from '../../../board/cut/hole-letters.ts';
import type { BuildPlan, PlanBoard } from '../../../model/plan/index.ts';
import { noFigure, printed } from '../../../model/printed/index.ts';
import { namesOf, type PlanNames } from '../../words/plan-names.ts';
import { counted, spelled, spelledWithin } from '../../words/words.ts';
import { bothForms, lengthOr, type Writer, type Written, writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { dense, type Fact, fact, groupedTable, strong, type Table, tableOf, tick } from '../table.ts';
import { ribTable } from './rib-table.ts';

/** What is cut and drilled of each board. */
export interface CutAndDrillSheet {
  readonly note: string;
  readonly boards: readonly BoardCut[];
}

interface BoardCut {
  readonly id: string;
  readonly title: string;
  readonly axes: string;
  readonly facts: readonly Fact[];
  readonly ribs: Table | null;
  readonly holes: Table | null;
  readonly points: Table | null;
}

/** How the edges are worked, all round and in the cut-outs. */
function edgesText({ edgeProfile }: PlanBoard, write: Writer): { text: string; beside?: string } | string {
  if (edgeProfile === null || edgeProfile.kind === 'square') return 'square, as sawn';
  const { kind, sizeM } = edgeProfile;
  if (sizeM === null) return spelledWithin(kind);
  const { text, beside } = write.short('cut', sizeM);
  return { text: `${spelledWithin(kind)} ${text}`, ...(beside === undefined ? {} : { beside }) };
}

/** Which way the grain runs on the board; nothing to say of a sheet that has none. */
function grainText({ grain, grainChosen, sheetGrain }: PlanBoard): Written {
  if (sheetGrain === null) return { text: 'none' };
  if (grain === null) return { text: 'either way' };
  const text = { level: 'left to right', upright: 'upwards' }[grain];
  return grainChosen === 'computed'
    ? { text, beside: 'chosen by the plan: its stiffness relies on it' }
    : { text };
}

/** The sheet, and whether the plan chose it. */
function sheetText({ sheet, material, sheetChosen }: PlanBoard): { text: string; beside?: string } {
  const text = `${sheet}, ${spelledWithin(material)}`;
  return sheetChosen === 'given' ? { text } : { text, beside: 'chosen by the plan' };
}

function gravityText({ centroid }: PlanBoard, write: Writer): string {
  return `x ${write.length('position', centroid.xM).text}, y ${write.length('position', centroid.yM).text}`;
}

function boardFacts(board: PlanBoard, write: Writer): Fact[] {
  return [
    fact('Sheet', sheetText(board)),
    fact('Thickness', write.length('made', board.thicknessM)),
    fact('Edges', edgesText(board, write)),
    fact('Grain', grainText(board)),
    fact('Width over all', write.length('cut', board.widthM)),
    fact('Height over all', write.length('cut', board.heightM)),
    fact('Area', {
      text: printed('area', board.areaM2),
      beside: board.cutouts.length === 0 ? 'no cut-outs' : `with ${counted(board.cutouts.length, 'cut-out')}`,
    }),
    fact(board.ribs.length > 0 ? 'Mass, with its ribs' : 'Mass, bare', {
      text: printed('mass', board.massKg),
      beside: `loaded ${printed('mass', board.loadedMassKg)}`,
    }),
    fact('Centre of gravity', gravityText(board, write)),
    fact(
      'Narrowest web',
      lengthOr(board.narrowestWebM, (lengthM) => write.length('room-free', lengthM)),
    ),
    fact('Sag, loaded', printed('sag', board.sagM === null ? null : board.sagM * 1000)),
    fact('First natural frequency', printed('first-mode', board.firstModeHz)),
  ];
}

type Hole = PlanBoard['holes'][number];

/** What the drill is set up for: its bit, how deep, and the screw that such a hole is the pilot of. */
function setUpText(
  { diameterM, depthM, pilotFor }: HoleSetUp,
  partOf: PlanNames['part'],
  write: Writer,
): string {
  const bit = `bit ${write.bore(diameterM, pilotFor === null ? 'clearance' : 'pilot')}`;
  const reach = depthM === null ? 'right through' : `${bothForms(write.short('depth-drilled', depthM))} deep`;
  if (pilotFor === null) return `${bit}, ${reach}`;
  return `${bit}, ${reach}: pilots of ${partOf(pilotFor)}`;
}

/** What a bit meets: a hole that ends in the board meets nothing else; of one that goes through, nothing told is no promise. */
function behindText({ behind, depthM }: Hole): string {
  if (behind !== null) return spelledWithin(behind);
  return depthM === null ? 'not told: look' : 'board only';
}

/** The holes of one bit and one depth together, so that the drill is set up once for each. */
function drillTable(board: PlanBoard, partOf: PlanNames['part'], write: Writer): Table | null {
  if (board.holes.length === 0) return null;
  const groups = letteredHoles(board.holes).map(({ letter, setUp, holes }) => ({
    title: `${letter}: ${setUpText(setUp, partOf, write)}: ${counted(holes.length, 'hole')}`,
    things: holes.map((hole) => ({ ...hole, name: `${letter}${hole.n}` })),
  }));
  return dense(
    groupedTable(
      `Drill table, ${board.title}: ${counted(board.holes.length, 'hole')}`,
      groups,
      [
        { title: 'Hole', cell: ({ name }) => strong(name) },
        { title: `x, ${write.unit}`, kind: 'figure', cell: (hole) => write.bare('position', hole.xM) },
        { title: `y, ${write.unit}`, kind: 'figure', cell: (hole) => write.bare('position', hole.yM) },
        { title: 'For', cell: (hole) => ({ text: spelled(hole.purpose), beside: hole.of }) },
        { title: 'Behind it', cell: (hole) => behindText(hole) },
        tick('Done'),
      ],
      (hole) => hole.of,
    ),
  );
}

/** What is drilled into the vehicle: the points of a board that are not there yet, from the corner of their space. */
function pointTable(board: PlanBoard, partOf: PlanNames['part'], write: Writer): Table | null {
  const { datumInSpace, space } = board;
  const made = board.fixings.flatMap((fixing) => (fixing.made ? [{ ...fixing, made: fixing.made }] : []));
  if (made.length === 0) return null;
  return dense(
    tableOf(
      `Points to make in ${space}, from its lower left corner`,
      made,
      [
        { title: 'Point', cell: ({ point }) => strong(point) },
        {
          title: `x, ${write.unit}`,
          kind: 'figure',
          cell: ({ xM }) => write.bare('position', xM + datumInSpace.xM),
        },
        {
          title: `y, ${write.unit}`,
          kind: 'figure',
          cell: ({ yM }) => write.bare('position', yM + datumInSpace.yM),
        },
        {
          title: 'Drill',
          cell: ({ made: { holeM } }) => (holeM === null ? noFigure : write.bore(holeM, 'clearance')),
        },
        { title: 'Set', cell: ({ made: { part } }) => (part === null ? noFigure : partOf(part)) },
        {
          title: 'Behind it',
          cell: ({ made: { behind, freeM } }) => ({
            text: spelledWithin(behind),
            ...(freeM !== null && { beside: `${write.length('room-free', freeM).text} free` }),
          }),
        },
        tick('Done'),
      ],
      ({ point }) => point,
    ),
  );
}

function cutModel(plan: BuildPlan): CutAndDrillSheet | null {
  if (plan.boards.length === 0) return null;
  const write = writerFor(plan.shop);
  const { part } = namesOf(plan);
  return {
    note: write.note,
    boards: plan.boards.map((board) => ({
      id: board.id,
      title: board.title,
      axes: `Measured from the datum, the lower left corner, seen from the mounting side: x to the right (${board.right} in the vehicle), y upwards (${board.upward} in the vehicle).`,
      facts: boardFacts(board, write),
      ribs: ribTable(board, part, write),
      holes: drillTable(board, part, write),
      points: pointTable(board, part, write),
    })),
  };
}

export const cutAndDrill = builderSheet('cut-and-drill', 'Cut and drill', cutModel, {
  cautions: ['drilling'],
});
