import type { Side } from '../../board/layout/item.ts';
import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { type ConductorRole, conductorRoleSchema } from '../../model/vocabulary.ts';
import { drawBase, drawItemOutline, isWhole, itemsOf, shownBox } from '../board/board-base.ts';
import { boardSheets } from '../board/board-sheets.ts';
import { windowRound } from '../board/board-view.ts';
import { clippedLine, pointIn } from '../board/clip.ts';
import { drawExits, type Exit, type ExitText, exitMargins } from '../board/exits.ts';
import { bodiesOf, type ItemLettering, letterOutside } from '../board/item-lettering.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { letterMiddle } from '../board/item-title.ts';
import { labelsText } from '../board/merge-names.ts';
import { letterPanels } from '../board/panel-lettering.ts';
import type { PanelName } from '../board/panel-names.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import { ribLabels } from '../board/ribs-on-board.ts';
import { type RouteOnBoard, routesOnBoard, wiresAlong } from '../board/routes-on-board.ts';
import {
  type BoardPicture,
  type BoardScene,
  type Margins,
  sheetFor,
  sheetRooms,
} from '../board/scaled-sheet.ts';
import { itemsBeneath } from '../board/stacked-items.ts';
import { drawConductor } from '../conductor-line.ts';
import { shortName } from '../feed/feed-words.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels } from '../lettering/view-labels.ts';
import { at, type PaperBox, type PaperSegment, segmentsCross } from '../paper.ts';
import type { Parent } from '../pen.ts';
import { drawRoleStrip, roleStripHeightMm } from '../role-strip.ts';
import { onPaper, type ScaleRatio } from '../sheet/scale.ts';
import { inks, lines, type TypeStyle, types } from '../style.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import type { DrawingKind } from './kind.ts';

/** Wiring of each board: its routes in the lines of their roles, with the labels of their wires at both ends. */
export const wiring: DrawingKind = {
  sheet: 'board-wiring',
  pages: (plan, metrics) =>
    plan.boards
      .filter(({ routes }) => routes.length > 0)
      .flatMap((board) => boardSheets(plan, metrics, board, picture(plan, metrics, board))),
};

function picture(plan: BuildPlan, metrics: TextMetrics, board: PlanBoard): BoardPicture {
  const { routes, crossings } = board;
  const base = {
    id: `wiring-${board.id}`,
    title: `${board.title}: wiring`,
    subject: board.spaceTitle,
    documentType: 'Wiring',
    description: `${board.title} with ${routes.length} routes, each labelled at both ends; ${crossings} crossings.`,
    projection: null,
    notes: [
      'Labels stand at both ends',
      'P1 +- is P1+ and P1-',
      `Crossings: ${crossings}; the broken line passes below`,
    ],
  };
  const keyMm = roleStripHeightMm(metrics, rolesOf(board), narrowMm) + 1;
  const rooms = sheetRooms(plan, metrics, base);
  // Smaller labels at the edges where these let the whole board stand on one sheet at a larger scale.
  const choices = [types.wireLabel, types.terminal].map((type) => {
    const margins = (ratio: ScaleRatio): Margins => {
      const own = exitMargins({ metrics }, board, exitTexts(plan, board), ratio, type);
      return { ...own, top: own.top + keyMm };
    };
    const ratio = sheetFor(rooms, windowRound(board.outline), margins)?.ratio ?? 100;
    return { type, margins, ratio };
  });
  const { type, margins } = choices.reduce((best, each) => (each.ratio < best.ratio ? each : best));
  return { base, margins, paint: (drawing, scene) => paintWiring(drawing, scene, type) };
}

/** The narrowest room of a sheet, that of an upright A4 or Letter. */
const narrowMm = 172;

function rolesOf({ routes }: PlanBoard): ConductorRole[] {
  return conductorRoleSchema.options.filter((role) => routes.some(({ layer }) => layer === role));
}

function exitTexts(plan: BuildPlan, board: PlanBoard): ExitText[] {
  return board.exits.flatMap(({ wire, edge, xM, yM }): ExitText[] => {
    const route = board.routes.find((each) => each.wire === wire);
    const own = route ? wiresAlong(plan, route) : plan.wires.filter(({ id }) => id === wire);
    const side = sideOf(edge);
    return side ? [{ edge: side, xM, yM, text: labelsText(own.map(({ label }) => label)) }] : [];
  });
}

function sideOf(edge: string): Side | null {
  return edge === 'left' || edge === 'right' || edge === 'top' || edge === 'bottom' ? edge : null;
}

function paintWiring(drawing: Drawing, scene: BoardScene, exitType: TypeStyle): string[] {
  const { plan, board, view, clip, room } = scene;
  const items = itemsOf(scene);
  const routes = routesOnBoard(scene, items);
  drawBase(drawing, scene, lines.seen);
  const itemGroup = openGroup(drawing, drawing.svg, 'items');
  for (const item of items)
    drawItemOutline(openSubject(drawing, itemGroup, item.item.id), scene, item, items);
  drawRoutes(drawing, openGroup(drawing, drawing.svg, 'routes'), routes, scene);
  const lettered = items.map((item) =>
    letterItem(
      drawing,
      itemGroup,
      scene,
      item,
      routes,
      itemsBeneath(item, items).map(({ box }) => box),
    ),
  );
  const exits = exitTexts(plan, board).flatMap(({ edge, xM, yM, text }, index): Exit[] => {
    const point = onPaper(view, { xM, yM });
    const subject = board.exits[index]?.wire ?? board.id;
    return pointIn(point, clip) ? [{ subject, side: edge, point, text }] : [];
  });
  const box = shownBox(scene);
  const left = drawExits(drawing, openGroup(drawing, drawing.svg, 'exits'), exits, box, exitType);
  drawRoleStrip(drawing, drawing.svg, room, rolesOf(board));
  const arrows = placeDirectionArrows(drawing, scene.board, scene.room, frontView);
  const ribs = { ...scene, board: { ...board, ribs: board.ribs.filter(({ face }) => face === 'mounting') } };
  const labels = [
    ...letterOutside(drawing, scene, items, lettered),
    ...ribLabels({ ...ribs, seenFrom: 'mounting' }, [], () => []),
  ];
  const group = openGroup(drawing, drawing.svg, 'labels');
  return [...left, ...arrows, ...drawLabels(drawing, group, labels, room, bodiesOf(items))];
}

/** Writes the labels of the wires that end at an item inside it, and its name between them. */
function letterItem(
  drawing: Drawing,
  parent: Parent,
  scene: BoardScene,
  onBoard: ItemOnBoard,
  routes: readonly RouteOnBoard[],
  beneath: readonly PaperBox[],
): ItemLettering {
  const { item, box } = onBoard;
  if (!isWhole(scene, onBoard)) return { onBoard, outside: [], named: true };
  const group = openSubject(drawing, parent, item.id);
  const names = routes.flatMap(({ route, text, ends }): PanelName[] =>
    ends
      .filter((end) => end.item === item.id)
      .map(({ side, alongMm }) => ({ id: `${item.id} ${route.wire}`, text, side, alongMm })),
  );
  const { outside, free } = letterPanels(drawing, group, box, names, types.terminal, beneath);
  return { onBoard, outside, named: letterMiddle(drawing, group, free, shortName(item)) };
}

const frontView = { mirrored: false, caption: null } as const;

/** Draws routes in the lines of their roles; where two cross, the later one passes over the other. */
function drawRoutes(
  drawing: Drawing,
  parent: Parent,
  routes: readonly RouteOnBoard[],
  { clip }: BoardScene,
): void {
  const before: PaperSegment[] = [];
  for (const { route, points } of routes) {
    const group = openSubject(drawing, parent, route.wire);
    const own = segmentsOf(points);
    for (const segment of own)
      for (const other of before)
        if (segmentsCross(segment, other)) breakBelow(group, segment, crossingOf(segment, other), clip);
    for (const piece of clippedLine(points, clip)) drawConductor(group, piece, route.layer);
    before.push(...own);
  }
}

function segmentsOf(points: RouteOnBoard['points']): PaperSegment[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from ? [{ from, to }] : [];
  });
}

function crossingOf(a: PaperSegment, b: PaperSegment): PaperSegment['from'] {
  const [dx, dy] = [a.to.xMm - a.from.xMm, a.to.yMm - a.from.yMm];
  const [ex, ey] = [b.to.xMm - b.from.xMm, b.to.yMm - b.from.yMm];
  const share = ((b.from.xMm - a.from.xMm) * ey - (b.from.yMm - a.from.yMm) * ex) / (dx * ey - dy * ex);
  return at(a.from.xMm + dx * share, a.from.yMm + dy * share);
}

/** How far, to either side of the line above, the one below is broken. */
const breakMm = 1.1;

/** Clears a short stretch along a route, so that what it crosses seems to pass below it. */
function breakBelow(
  parent: Parent,
  segment: PaperSegment,
  point: PaperSegment['from'],
  clip: BoardScene['clip'],
): void {
  if (!pointIn(point, clip)) return;
  const long = Math.hypot(segment.to.xMm - segment.from.xMm, segment.to.yMm - segment.from.yMm);
  const ux = (segment.to.xMm - segment.from.xMm) / long;
  const uy = (segment.to.yMm - segment.from.yMm) / long;
  const reach = 0.9;
  parent.element('path').attr({
    d: `M${point.xMm - ux * reach} ${point.yMm - uy * reach}L${point.xMm + ux * reach} ${point.yMm + uy * reach}`,
    stroke: inks.paper,
    'stroke-width': 2 * breakMm,
  });
}
