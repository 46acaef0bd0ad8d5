import type { PlanItem } from '../../model/plan/index.ts';
import { bulgePath } from '../bulge-path.ts';
import { pathPoints } from '../drawn-strokes.ts';
import { type LineStyle, lines } from '../line-styles.ts';
import { at, boxHolds, grown, type PaperBox } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import { onPaper } from '../sheet/scale.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { drawBoardEdge, drawHole, rectangleOnPaper, windowBox, windowRound } from './board-view.ts';
import { clippedLine, interrupted, pointIn } from './clip.ts';
import { type ItemOnBoard, itemOnBoard } from './item-on-board.ts';
import { drawRibs } from './ribs-on-board.ts';
import type { BoardScene } from './scaled-sheet.ts';
import { hiddenLast, itemsOver } from './stacked-items.ts';

/** The box of the whole board on paper, or of the part of it that is shown. */
export function shownBox({ board, view, clip }: BoardScene): PaperBox {
  return clip ?? windowBox(view, windowRound(board.outline));
}

/** Draws the edge of the board, its cut-outs, the ribs on it and the holes of its fixings. */
export function drawBase(drawing: Drawing, scene: BoardScene, line: LineStyle = lines.cut): void {
  const { board, view, clip } = scene;
  const group = openGroup(drawing, drawing.svg, 'board');
  if (clip === null) drawBoardEdge(drawing, group, board, view, line);
  else {
    const parent = openSubject(drawing, group, board.id);
    for (const loop of [board.outline, ...board.cutouts])
      for (const points of pathPoints(bulgePath(loop, view)))
        for (const piece of clippedLine(points, clip)) drawLine(parent, piece, line);
    for (const border of cutBorders(scene)) drawLine(parent, border, lines.centre);
  }
  const ribs = board.ribs.filter(({ face }) => face === 'mounting');
  if (ribs.length > 0)
    drawRibs(drawing, openGroup(drawing, group, 'ribs'), {
      ...{ board: { ...board, ribs }, view, seenFrom: 'mounting', clip },
    });
  for (const hole of board.holes)
    if (hole.purpose === 'fixing' && pointIn(onPaper(view, hole), clip)) drawHole(drawing, group, hole, view);
}

/** The borders of a part along which the board goes on. */
function cutBorders({ board, view, clip }: BoardScene): ReturnType<typeof at>[][] {
  if (clip === null) return [];
  const whole = windowBox(view, windowRound(board.outline));
  const { leftMm, rightMm, topMm, bottomMm } = clip;
  const past = 3;
  return [
    ...(leftMm > whole.leftMm + 0.1 ? [[at(leftMm, topMm - past), at(leftMm, bottomMm + past)]] : []),
    ...(rightMm < whole.rightMm - 0.1 ? [[at(rightMm, topMm - past), at(rightMm, bottomMm + past)]] : []),
    ...(topMm > whole.topMm + 0.1 ? [[at(leftMm - past, topMm), at(rightMm + past, topMm)]] : []),
    ...(bottomMm < whole.bottomMm - 0.1 ? [[at(leftMm - past, bottomMm), at(rightMm + past, bottomMm)]] : []),
  ];
}

/** The items that stand on the board, lowest first; those that another one hides in part come last. */
export function itemsOf({ plan, board, view }: BoardScene): ItemOnBoard[] {
  const byId = new Map<string, PlanItem>(plan.items.map((item) => [item.id, item]));
  const lowestFirst = board.placements
    .toSorted((a, b) => a.raisedM - b.raisedM)
    .flatMap((placement) => {
      const item = byId.get(placement.item);
      return item ? [itemOnBoard(item, placement, view)] : [];
    });
  return hiddenLast(lowestFirst);
}

/** True where all of an item is shown: only then it is lettered. */
export function isWhole({ clip }: BoardScene, { box }: ItemOnBoard): boolean {
  return clip === null || boxHolds(grown(clip, 0.01), box);
}

/** Draws the outline of an item, or the part of it that is shown; what lies beneath another item in hidden lines. */
export function drawItemOutline(
  parent: Parent,
  { clip }: BoardScene,
  onBoard: ItemOnBoard,
  items: readonly ItemOnBoard[],
  seen: LineStyle = lines.seen,
): void {
  const { box } = onBoard;
  const corners = [
    at(box.leftMm, box.topMm),
    at(box.rightMm, box.topMm),
    at(box.rightMm, box.bottomMm),
    at(box.leftMm, box.bottomMm),
  ];
  const over = itemsOver(onBoard, items).map((upper) => upper.box);
  if (over.length === 0 && (clip === null || boxHolds(clip, box))) {
    drawShape(parent, corners, seen, 'paper');
    return;
  }
  const [first] = corners;
  if (!first) return;
  const around = [...corners, first];
  const shown = clip === null ? [around] : clippedLine(around, clip);
  for (const piece of shown) {
    for (const line of interrupted(piece, over)) drawLine(parent, line, seen);
    for (const upper of over)
      for (const line of clippedLine(piece, upper)) drawLine(parent, line, lines.hidden);
  }
}

/** How far beyond the board its surroundings are shown, millimetres of paper. */
const aroundMm = 6;

/** What is shown of a board and of its surroundings. */
export function surroundingsBox(scene: BoardScene): PaperBox {
  return grown(shownBox(scene), aroundMm);
}

/** Draws the mounting space and what stands in it in phantom line; it makes way for texts. */
export function drawSurroundings(drawing: Drawing, scene: BoardScene): void {
  const { board, view } = scene;
  const group = openGroup(drawing, drawing.svg, 'space');
  const frame = surroundingsBox(scene);
  const texts = drawing.texts.map(({ box }) => grown(box, 0.8));
  const place = ({ xM, yM }: { xM: number; yM: number }) =>
    onPaper(view, { xM: xM - board.datumInSpace.xM, yM: yM - board.datumInSpace.yM });
  const loops = [
    { id: board.space, points: board.spaceOutline.map(place) },
    ...board.obstacles.map((obstacle) => {
      const { xM, yM } = obstacle;
      const moved = { ...obstacle, xM: xM - board.datumInSpace.xM, yM: yM - board.datumInSpace.yM };
      return { id: obstacle.id, points: rectangleOnPaper(view, moved) };
    }),
  ];
  for (const { id, points } of loops) {
    const [first] = points;
    if (!first) continue;
    const parent = openSubject(drawing, group, id);
    for (const piece of clippedLine([...points, first], frame))
      for (const line of interrupted(piece, texts)) drawLine(parent, line, lines.neighbour);
  }
}
