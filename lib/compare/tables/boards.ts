import { buildPlanSchema, type PlanBoard, type PlanPlacement } from '../../model/plan/index.ts';
import { countCell, figureCell, lengthCell, textCell } from '../cells.ts';
import { planTable } from '../table.ts';
import { cornerText, tenths } from '../tenths.ts';

const board = buildPlanSchema.shape.boards.element.shape;
const placement = board.placements.element.shape;
const hole = board.holes.element.shape;
const corner = board.outline.element.shape;
const fixing = board.fixings.element.shape;

/** A thing on a board, with the board. */
interface Placed {
  readonly board: string;
  readonly placement: PlanPlacement;
}

/** Where every device stands on its board. */
export const placesTable = planTable<Placed>({
  id: 'places',
  title: 'Places',
  differs: 'moved',
  rows: ({ boards }) =>
    boards.flatMap(({ id, placements }) => placements.map((one) => ({ board: id, placement: one }))),
  key: ({ placement: { item } }) => item,
  keyLeaves: [placement.item],
  columns: [
    { id: 'board', title: 'Board', leaves: [board.id], cell: (one) => textCell(one.board) },
    {
      id: 'x',
      title: 'Right of the datum',
      leaves: [placement.xM],
      cell: (one, look) => lengthCell('position', one.placement.xM, look),
    },
    {
      id: 'y',
      title: 'Above the datum',
      leaves: [placement.yM],
      cell: (one, look) => lengthCell('position', one.placement.yM, look),
    },
    {
      id: 'turn',
      title: 'Turned',
      leaves: [placement.turnDeg],
      cell: (one) => figureCell('angle', one.placement.turnDeg),
    },
    {
      id: 'raised',
      title: 'Off the board',
      leaves: [placement.raisedM],
      cell: (one, look) => lengthCell('size', one.placement.raisedM, look),
    },
  ],
});

/** Every board: what it is cut from, its shape, and what follows of it. */
export const boardsTable = planTable<PlanBoard>({
  id: 'boards',
  title: 'Boards',
  rows: ({ boards }) => boards,
  key: ({ id }) => id,
  keyLeaves: [board.id],
  columns: [
    { id: 'title', title: 'Title', leaves: [board.title], cell: ({ title }) => textCell(title) },
    {
      id: 'space',
      title: 'Space',
      leaves: [board.space, board.spaceTitle],
      cell: ({ space, spaceTitle }) => ({ text: spaceTitle, value: space, exact: `${space} ${spaceTitle}` }),
    },
    { id: 'sheet', title: 'Sheet', leaves: [board.sheet], cell: ({ sheet }) => textCell(sheet) },
    {
      id: 'thickness',
      title: 'Thickness',
      leaves: [board.thicknessM],
      cell: ({ thicknessM }, look) => lengthCell('made', thicknessM, look),
    },
    {
      id: 'width',
      title: 'Width',
      leaves: [board.widthM],
      cell: ({ widthM }, look) => lengthCell('cut', widthM, look),
    },
    {
      id: 'height',
      title: 'Height',
      leaves: [board.heightM],
      cell: ({ heightM }, look) => lengthCell('cut', heightM, look),
    },
    {
      id: 'outline',
      title: 'Corners of its outline',
      leaves: Object.values(corner),
      cell: ({ outline }) => countCell(outline.length, JSON.stringify(outline.map(cornerText))),
    },
    {
      id: 'cut-outs',
      title: 'Cut-outs',
      leaves: Object.values(board.cutouts.element.element.shape),
      cell: ({ cutouts }) =>
        countCell(cutouts.length, JSON.stringify(cutouts.map((ring) => ring.map(cornerText)))),
    },
    {
      id: 'holes',
      title: 'Holes',
      leaves: [hole.xM, hole.yM, hole.diameterM, hole.depthM],
      cell: ({ holes }) =>
        countCell(
          holes.length,
          holes
            .map(({ xM, yM, diameterM, depthM }) =>
              [xM, yM, diameterM, depthM].map((one) => (one === null ? 'through' : tenths(one))).join(' '),
            )
            .toSorted()
            .join(', '),
        ),
    },
    {
      id: 'ribs',
      title: 'Ribs',
      leaves: [board.ribs.unwrap().element.shape.id],
      cell: ({ ribs }) =>
        countCell(
          ribs.length,
          ribs
            .map(({ id }) => id)
            .toSorted()
            .join(', '),
        ),
    },
    {
      id: 'mass',
      title: 'Mass, loaded',
      leaves: [board.loadedMassKg],
      cell: ({ loadedMassKg }) => figureCell('mass', loadedMassKg),
    },
    {
      id: 'first-mode',
      title: 'First mode',
      leaves: [board.firstModeHz],
      cell: ({ firstModeHz }) => figureCell('first-mode', firstModeHz),
    },
  ],
});

/** A fixing with the board that it holds. */
interface Held {
  readonly board: string;
  readonly fixing: PlanBoard['fixings'][number];
}

/** What holds every board, and where. */
export const fixingsTable = planTable<Held>({
  id: 'fixings',
  title: 'Fixings',
  rows: ({ boards }) => boards.flatMap(({ id, fixings }) => fixings.map((fixing) => ({ board: id, fixing }))),
  key: ({ board: id, fixing: { id: fixingId } }) => `${id}.${fixingId}`,
  keyLeaves: [board.id, fixing.id],
  columns: [
    { id: 'part', title: 'Part', leaves: [fixing.part], cell: (one) => textCell(one.fixing.part) },
    { id: 'point', title: 'Point', leaves: [fixing.point], cell: (one) => textCell(one.fixing.point) },
    {
      id: 'x',
      title: 'Right of the datum',
      leaves: [fixing.xM],
      cell: (one, look) => lengthCell('position', one.fixing.xM, look),
    },
    {
      id: 'y',
      title: 'Above the datum',
      leaves: [fixing.yM],
      cell: (one, look) => lengthCell('position', one.fixing.yM, look),
    },
  ],
});
