import type { PlanWire } from '../../model/plan/index.ts';
import { drawBase, drawItemOutline, isWhole, itemsOf, shownBox } from '../board/board-base.ts';
import { pointIn } from '../board/clip.ts';
import { drawExits, type Exit, type ExitText, sideOf } from '../board/exits.ts';
import { bodiesOf, type ItemLettering, letterOutside } from '../board/item-lettering.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { letterMiddle } from '../board/item-title.ts';
import { letterPanels } from '../board/panel-lettering.ts';
import type { PanelName } from '../board/panel-names.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import { ribLabels } from '../board/ribs-on-board.ts';
import type { BoardScene } from '../board/scaled-sheet.ts';
import { itemsBeneath } from '../board/stacked-items.ts';
import { drawLabels } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import type { Parent } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { onPaper } from '../sheet/scale.ts';
import { type Drawing, keepPlace, openGroup, openSubject } from '../surface.ts';
import { drawSymbol, placeSymbol, symbols } from '../symbols/index.ts';
import { cutReferences } from './cross-references.ts';
import { drawInsulationStrip, insulationsIn } from './insulation-strip.ts';
import { joinedRoutes } from './joined-routes.ts';
import { paintGhosts, paintRoutes } from './paint-routes.ts';
import { wiresAlong } from './route-ends.ts';
import { type LaidRoute, laidRoute } from './strands.ts';
import { listTags } from './tag-list.ts';
import { endTag, exitTag, type StepOf, stepsOf, tagLines, tagMerges } from './tags.ts';
import { inLayingOrder, isOnLayer, type WiringLayer } from './wiring-layers.ts';

/** Room between the key at the head of a sheet and what stands below it. */
export const keyGapMm = 1;

/**
 * Draws one layer of the wiring of a board: its conductors over a pale board, a tag at every end, the other layers as
 * ghosts. Tags without room beside their ends are listed by their zones where that is asked for.
 */
export function paintLayer(
  drawing: Drawing,
  scene: BoardScene,
  layer: WiringLayer,
  listing: boolean,
): string[] {
  const { plan, board, view, clip, room } = scene;
  const items = itemsOf(scene);
  const laid = inLayingOrder(board).map((route) => laidRoute(plan, view, items, route));
  const own = laid.flatMap((route) => ownOf(route, layer));
  const others = laid.filter(({ wires }) => !wires.some((wire) => isOnLayer(layer, wire)));
  drawBase(drawing, scene, lines.pale);
  const drawGhosts = keepPlace(drawing.svg);
  const itemGroup = openGroup(drawing, drawing.svg, 'items');
  for (const item of items)
    drawItemOutline(openSubject(drawing, itemGroup, item.item.id), scene, item, items, lines.paleItem);
  paintJoined(drawing, scene, own, items);
  const stepOf = stepsOf(plan);
  const lettered = items.map((item) => letterItem(drawing, itemGroup, scene, item, own, items, stepOf));
  const withSheath = own.some(({ strands }) => strands.some(({ letters }) => letters === null));
  drawInsulationStrip(
    drawing,
    drawing.svg,
    room,
    insulationsIn(
      own.flatMap(({ wires }) => wires),
      withSheath,
    ),
  );
  const edges = [...exitsOf(scene, layer, stepOf), ...cutReferences(scene, own)];
  const exitGroup = openGroup(drawing, drawing.svg, 'exits');
  const left = drawExits(drawing, exitGroup, edges, shownBox(scene), types.terminal);
  const arrows = placeDirectionArrows(drawing, board, room, { mirrored: false, caption: null });
  const ribs = {
    board: { ...board, ribs: board.ribs.filter(({ face }) => face === 'mounting') },
    view,
    clip,
  };
  const labels = [
    ...letterOutside(drawing, scene, items, lettered, tagLines),
    ...ribLabels({ ...ribs, seenFrom: 'mounting' }, [], () => []),
  ];
  const group = openGroup(drawing, drawing.svg, 'labels');
  const unplaced = new Set(drawLabels(drawing, group, labels, room, bodiesOf(items)));
  const without = labels.filter((label) => unplaced.has(label.lines.join(' ')));
  const names = new Map(items.map(({ item }) => [item.id, shortName(item)]));
  const nameOf = (id: string): string => names.get(id) ?? id;
  const lost = listing ? listTags(drawing, room, without, nameOf) : [...unplaced];
  drawGhosts(() => paintGhosts(drawing, openGroup(drawing, drawing.svg, 'ghosts'), others, clip));
  return [...left, ...arrows, ...lost];
}

/** Draws the conductors of a layer, and a dot where one is joined to another: lines that only cross have none. */
function paintJoined(
  drawing: Drawing,
  { plan, view, clip }: BoardScene,
  own: readonly LaidRoute[],
  items: readonly ItemOnBoard[],
): void {
  const { routes, joints } = joinedRoutes(plan, view, own);
  const group = openGroup(drawing, drawing.svg, 'routes');
  paintRoutes(drawing, group, routes, items, clip);
  for (const joint of joints)
    if (pointIn(joint, clip)) drawSymbol(drawing, group, placeSymbol(symbols.junction, joint));
}

/** A route with what of it belongs to a layer: of a cable that carries more, the sheath and its own conductors. */
function ownOf(route: LaidRoute, layer: WiringLayer): LaidRoute[] {
  const wires = route.wires.filter((wire) => isOnLayer(layer, wire));
  if (wires.length === 0) return [];
  const isOwn = (id: string): boolean => wires.some((wire) => wire.id === id);
  return [
    {
      ...route,
      wires,
      strands: route.strands.filter(({ letters, subject }) => letters === null || isOwn(subject)),
      ends: route.ends.filter(({ wire }) => isOwn(wire.id)),
    },
  ];
}

/** Writes the tags of the conductors that end at an item inside it, and its name between them. */
function letterItem(
  drawing: Drawing,
  parent: Parent,
  scene: BoardScene,
  onBoard: ItemOnBoard,
  routes: readonly LaidRoute[],
  items: readonly ItemOnBoard[],
  stepOf: StepOf,
): ItemLettering {
  const { item, box } = onBoard;
  if (!isWhole(scene, onBoard)) return { onBoard, outside: [], named: true };
  const group = openSubject(drawing, parent, item.id);
  const ends = routes.flatMap((route) => route.ends).filter((end) => end.onBoard.item.id === item.id);
  const names = ends.map((end): PanelName => {
    const { side, alongMm, terminal, wire } = end;
    const reachMm = routes.find(({ wires }) => wires.includes(wire))?.widthMm ?? 0;
    const id = `${item.id}.${terminal} ${wire.id}`;
    return { id, text: endTag(end, stepOf), side, alongMm, wideMm: reachMm };
  });
  const beneath = itemsBeneath(onBoard, items).map((lower) => lower.box);
  const together = (wire: PlanWire): string =>
    routes.find(({ wires }) => wires.includes(wire))?.route.wire ?? wire.id;
  const merges = tagMerges(ends, together, stepOf);
  const { outside, free } = letterPanels(drawing, group, box, names, types.terminal, beneath, merges);
  return { onBoard, outside, named: letterMiddle(drawing, group, free, shortName(item)) };
}

/** Where wires of a layer leave a board, each with the tag of its route. */
export function layerExits(
  { plan, board }: Pick<BoardScene, 'plan' | 'board'>,
  layer: WiringLayer,
  stepOf: StepOf,
): (ExitText & { readonly subject: string })[] {
  return board.exits.flatMap(({ wire, edge, xM, yM }) => {
    const route = board.routes.find((each) => each.wire === wire);
    const along = route ? wiresAlong(plan, route) : plan.wires.filter(({ id }) => id === wire);
    const own = along.filter((each) => isOnLayer(layer, each));
    const side = sideOf(edge);
    if (side === null || own.length === 0) return [];
    return [{ edge: side, xM, yM, subject: own[0]?.id ?? wire, text: exitTag(own, stepOf) }];
  });
}

function exitsOf(scene: BoardScene, layer: WiringLayer, stepOf: StepOf): Exit[] {
  return layerExits(scene, layer, stepOf).flatMap(({ edge, xM, yM, text, subject }): Exit[] => {
    const point = onPaper(scene.view, { xM, yM });
    return pointIn(point, scene.clip) ? [{ subject, side: edge, point, text }] : [];
  });
}
