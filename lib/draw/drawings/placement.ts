import type { Side } from '../../board/layout/item.ts';
import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { printedDimension, printedLength } from '../../model/printed/lengths.ts';
import { dimensionNote, lengthStyle } from '../../model/quantity/length-text.ts';
import type { ConductorRole, Panel } from '../../model/vocabulary.ts';
import {
  drawBase,
  drawItemOutline,
  drawSurroundings,
  isWhole,
  itemsOf,
  shownBox,
} from '../board/board-base.ts';
import { boardSheets } from '../board/board-sheets.ts';
import { rectangleOnPaper } from '../board/board-view.ts';
import { pointIn } from '../board/clip.ts';
import { drawExits, type Exit, type ExitText, exitMargins, sideOf } from '../board/exits.ts';
import { bodiesOf, type ItemLettering, letterOutside } from '../board/item-lettering.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { letterMiddle } from '../board/item-title.ts';
import { clearKinds, drawKeepClear } from '../board/keep-clear.ts';
import { placeClearKey } from '../board/keep-clear-key.ts';
import { letterPanels } from '../board/panel-lettering.ts';
import { edgePoint, type PanelName } from '../board/panel-names.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import { drawRibs, ribLabels } from '../board/ribs-on-board.ts';
import type { BoardPicture, BoardScene } from '../board/scaled-sheet.ts';
import { itemsBeneath } from '../board/stacked-items.ts';
import { setOutPage } from '../cut/set-out.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import { boxRound, grown, type PaperBox } from '../paper.ts';
import { drawCircle, type Parent } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { raisedOn, raisedPage } from '../section/raised-section.ts';
import { onPaper } from '../sheet/scale.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import type { DrawingKind } from './kind.ts';

/** Placement drawing: each board at scale with what stands on it, in its mounting space. */
export const placement: DrawingKind = {
  sheet: 'placement',
  pages: (plan, metrics) =>
    plan.boards.flatMap((board) => [
      ...boardSheets(plan, metrics, board, picture(plan, metrics, board)),
      ...(board.placements.length > 0 ? [setOutPage(plan, metrics, board, lengthStyle(plan.shop))] : []),
      ...raisedOn(board).map((raised) => raisedPage(plan, metrics, board, raised, lengthStyle(plan.shop))),
    ]),
};

function picture(plan: BuildPlan, metrics: TextMetrics, board: PlanBoard): BoardPicture {
  const texts = exitCounts(plan, board);
  return {
    base: {
      id: `placement-${board.id}`,
      title: `${board.title}: placement`,
      subject: board.spaceTitle,
      documentType: 'Placement',
      description: `${board.title} with ${board.placements.length} items, seen from the mounting side.`,
      projection: null,
      notes: [
        'Hatched: keep clear up to the dashed line',
        'Circles: controls; arrows: conductors leave',
        dimensionNote(lengthStyle(plan.shop)),
        ...(board.ribs.some(({ face }) => face === 'rear') ? ['Dashed, named rib: on the rear'] : []),
      ],
    },
    margins: (ratio) => exitMargins({ metrics }, board, texts, ratio, types.note),
    paint: paintPlacement,
  };
}

function paintPlacement(drawing: Drawing, scene: BoardScene): string[] {
  const items = itemsOf(scene);
  drawBase(drawing, scene);
  drawRearRibs(drawing, scene);
  const clear = openGroup(drawing, drawing.svg, 'keep-clear');
  const group = openGroup(drawing, drawing.svg, 'items');
  const lettered = items.map((item) =>
    paintItem(drawing, openSubject(drawing, group, item.item.id), scene, item, items),
  );
  const box = shownBox(scene);
  const left = drawExits(drawing, openGroup(drawing, drawing.svg, 'exits'), exitsOf(scene), box, types.note);
  drawSurroundings(drawing, scene);
  const arrows = placeDirectionArrows(drawing, scene.board, scene.room, {
    ...frontView,
    keepOff: [box],
  });
  const key = placeClearKey(drawing, scene.room, clearKinds(scene.board));
  const labels = letterOutside(drawing, scene, items, lettered);
  const labelGroup = openGroup(drawing, drawing.svg, 'labels');
  const ribs = { ...scene, seenFrom: 'mounting' } as const;
  const hiding = items.map((item) => item.box);
  const all = [...labels, ...obstacleLabels(scene), ...ribLabels(ribs, hiding, () => [])];
  const unplaced = drawLabels(drawing, labelGroup, all, scene.room, bodiesOf(items));
  drawKeepClear(drawing, clear, scene, items);
  return [...left, ...arrows, ...key, ...unplaced];
}

/** Ribs behind the board, in hidden lines; parts stand before them. */
function drawRearRibs(drawing: Drawing, { board, view, clip }: BoardScene): void {
  const ribs = board.ribs.filter(({ face }) => face === 'rear');
  if (ribs.length === 0) return;
  const group = openGroup(drawing, drawing.svg, 'rear-ribs');
  drawRibs(drawing, group, { board: { ...board, ribs }, view, seenFrom: 'mounting', clip });
}

const frontView = { mirrored: false, caption: null } as const;

/** Draws an item with its terminals and controls; tells what found no room in it. */
function paintItem(
  drawing: Drawing,
  group: Parent,
  scene: BoardScene,
  onBoard: ItemOnBoard,
  items: readonly ItemOnBoard[],
): ItemLettering {
  const { item, box } = onBoard;
  drawItemOutline(group, scene, onBoard, items);
  if (!isWhole(scene, onBoard)) return { onBoard, outside: [], named: true };
  const named = (name: string, panel: Panel | null, atM: number | null, text = name): PanelName[] => {
    const mark = onBoard.mark(panel, atM);
    return mark ? [{ id: `${item.id}.${name}`, text, ...mark }] : [];
  };
  const terminals = item.terminals.flatMap(({ name, shown, panel, atM }) => named(name, panel, atM, shown));
  const controls = item.controls.flatMap(({ name, panel, atM }) => named(name, panel, atM));
  for (const { side, alongMm } of controls)
    drawCircle(group, edgePoint(box, side, alongMm, 0), 0.9, lines.rule, 'paper');
  const names = [...terminals, ...controls];
  const beneath = itemsBeneath(onBoard, items).map(({ box }) => box);
  const { outside, free } = letterPanels(drawing, group, box, names, types.terminal, beneath);
  const onFace = item.controls.filter(({ panel }) => panel === 'face').map(({ name }) => name);
  const said = [...raisedTexts(scene, onBoard, items).map((texts) => [...onFace, ...texts]), onFace, []];
  const hasName = said.some((below) => letterMiddle(drawing, group, free, shortName(item), below));
  return { onBoard, outside, named: hasName };
}

/** How far an item is raised and what it stands over, at full length first; none where it is not. */
function raisedTexts({ plan }: BoardScene, onBoard: ItemOnBoard, items: readonly ItemOnBoard[]): string[][] {
  const { raisedM } = onBoard.placement;
  if (raisedM <= 0) return [];
  const style = lengthStyle(plan.shop);
  const raised = `raised ${printedDimension('made', raisedM, style)}`;
  const short = `raised ${printedLength('made', raisedM, style).primary}`;
  const beneath = itemsBeneath(onBoard, items).map(({ item }) => shortName(item));
  if (beneath.length === 0) return [[raised], [short]];
  const over = `over ${beneath.join(', ')}`;
  return [[`${raised}, ${over}`], [raised, over], [short, over], [short]];
}

/** Neighbouring exits of a role at one edge are one arrow, with how many conductors leave there: `8 signal`. */
function exitCounts(plan: BuildPlan, board: PlanBoard): ExitText[] {
  const groups: { edge: Side; role: ConductorRole; at: { xM: number; yM: number }[]; count: number }[] = [];
  const along = (exit: PlanBoard['exits'][number]): number =>
    exit.edge === 'left' || exit.edge === 'right' ? exit.yM : exit.xM;
  const order = (edge: string): number => ['left', 'right', 'top', 'bottom'].indexOf(edge);
  const sorted = board.exits.toSorted((a, b) => order(a.edge) - order(b.edge) || along(a) - along(b));
  for (const exit of sorted) {
    const edge = sideOf(exit.edge);
    if (!edge) continue;
    const wires = board.routes.find(({ wire }) => wire === exit.wire)?.along ?? [exit.wire];
    const roles = rolesOf(plan, wires);
    for (const role of new Set(roles)) {
      const count = roles.filter((each) => each === role).length;
      const last = groups.at(-1);
      if (last && last.edge === edge && last.role === role) {
        last.at.push(exit);
        last.count += count;
      } else groups.push({ edge, role, at: [exit], count });
    }
  }
  return groups.map(({ edge, role, at, count }) => {
    const mean = (of: (place: { xM: number; yM: number }) => number): number =>
      at.reduce((sum, place) => sum + of(place), 0) / at.length;
    return { edge, xM: mean(({ xM }) => xM), yM: mean(({ yM }) => yM), text: `${count} ${role}` };
  });
}

function rolesOf({ wires }: Pick<BuildPlan, 'wires'>, ids: readonly string[]): ConductorRole[] {
  return ids.flatMap((id) => wires.find((wire) => wire.id === id)?.role ?? []);
}

function exitsOf({ plan, board, view, clip }: BoardScene): Exit[] {
  return exitCounts(plan, board).flatMap(({ edge, xM, yM, text }): Exit[] => {
    const point = onPaper(view, { xM, yM });
    return pointIn(point, clip) ? [{ subject: board.id, side: edge, point, text }] : [];
  });
}

/** Names of what stands in the space, with how far it stands out. */
function obstacleLabels({ plan, board, view, clip }: BoardScene): TextLabel[] {
  const style = lengthStyle(plan.shop);
  return board.obstacles.flatMap((obstacle): TextLabel[] => {
    const { datumInSpace: datum } = board;
    const moved = { ...obstacle, xM: obstacle.xM - datum.xM, yM: obstacle.yM - datum.yM };
    const whole = boxRound(rectangleOnPaper(view, moved));
    const box = clip === null ? whole : common(whole, grown(clip, 3));
    if (box === null) return [];
    const name = obstacle.id.replaceAll('-', ' ');
    const said = [name, `stands out ${printedDimension('size', obstacle.standsOutM, style)}`];
    return [
      {
        id: `obstacle ${obstacle.id}`,
        lines: said,
        type: types.note,
        anchors: [box],
        inside: box,
        own: [obstacle.id, board.id],
        within: [obstacle.id],
        subject: obstacle.id,
      },
    ];
  });
}

/** What two boxes have in common; null where they do not meet. */
function common(a: PaperBox, b: PaperBox): PaperBox | null {
  const box = {
    leftMm: Math.max(a.leftMm, b.leftMm),
    topMm: Math.max(a.topMm, b.topMm),
    rightMm: Math.min(a.rightMm, b.rightMm),
    bottomMm: Math.min(a.bottomMm, b.bottomMm),
  };
  return box.leftMm < box.rightMm && box.topMm < box.bottomMm ? box : null;
}
