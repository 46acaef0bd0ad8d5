import { boardArea, boardMass } from '../../board/area-and-mass.ts';
import { narrowestWeb } from '../../board/shape/web.ts';
import type { Board, Job } from '../../model/content/resolved-job.ts';
import type { PlanBook } from '../plan-book.ts';
import { boardFixings, boardHoles, datumInSpace, drilledShape } from './board-shape.ts';
import type { LaidBoard } from './laid-board.ts';
import { planRibs, ribScrewHoles } from './ribs/plan-ribs.ts';

/** A board with all its holes, those for the screws of its ribs too, which follow from the others. */
export function drillBoard(job: Job, laid: LaidBoard) {
  const { board, shape } = laid;
  const fixings = boardFixings(board, job.parts);
  const bare = boardHoles(board, shape, fixings, laid, job);
  const ribbing = planRibs(job, laid, bare.holes);
  const screws = ribScrewHoles(ribbing);
  const { holes, faults } = screws.length === 0 ? bare : boardHoles(board, shape, fixings, laid, job, screws);
  return { fixings, holes, faults, ribbing };
}

/** Area, mass and size of a board, its narrowest web; and its shape with every hole in it. */
export function bodyFigures(
  { board: { id, sheet }, shape, items }: LaidBoard,
  { holes, ribbing }: Pick<ReturnType<typeof drillBoard>, 'holes' | 'ribbing'>,
  book: PlanBook,
) {
  const at = `boards.${id}`;
  const drilled = drilledShape(shape, holes);
  const ribsKg = ribbing.ribs.reduce((sum, rib) => sum + rib.massKg, 0);
  const areaM2 = book.trace(`${at}.areaM2`, boardArea(shape));
  const massKg = book.trace(`${at}.massKg`, boardMass(shape, sheet.thickness, sheet.density, ribsKg));
  const web = narrowestWeb(drilled);
  const xs = shape.outline.map(({ xM }) => xM);
  const ys = shape.outline.map(({ yM }) => yM);
  const figures = {
    areaM2,
    massKg,
    loadedMassKg: massKg + items.reduce((sum, item) => sum + item.massKg, 0),
  };
  const size = {
    widthM: Math.max(...xs) - Math.min(...xs),
    heightM: Math.max(...ys) - Math.min(...ys),
    narrowestWebM: web.web ? book.trace(`${at}.narrowestWebM`, web) : null,
  };
  return { shape: drilled, ribsKg, figures, size };
}

/** What a board is called, where it goes, what it is cut from. */
export function sheetFigures({ id, given, spaceId, space, sheetId, sheet }: Board) {
  return {
    id,
    title: given.title ?? id,
    space: spaceId,
    spaceTitle: space.title,
    sheet: sheetId,
    sheetChosen: given.sheet === undefined ? ('computed' as const) : ('given' as const),
    sheetWidthM: sheet.width,
    sheetHeightM: sheet.height,
    material: sheet.material,
    thicknessM: sheet.thickness,
    sheetGrain: sheet.grain ?? null,
  };
}

/** The mounting space of a board, as drawings show it. */
export function spaceFigures(board: Board) {
  const { space } = board;
  return {
    datumInSpace: datumInSpace(board),
    spaceOutline: space.outline.map(([xM, yM]) => ({ xM, yM })),
    spaceDepthM: space.depth,
    obstacles: Object.entries(space.obstacles).map(([id, obstacle]) => {
      return {
        id,
        xM: obstacle.x,
        yM: obstacle.y,
        widthM: obstacle.width,
        heightM: obstacle.height,
        standsOutM: obstacle['stands-out'],
      };
    }),
    right: space.right,
    upward: space.upward,
  };
}
