import type { OutlinePoint, PlanBoard, PlanHole } from '../../model/plan/index.ts';
import { bulgePath, outlineBox } from '../bulge-path.ts';
import { hatchFill } from '../hatch.ts';
import { type LineStyle, lines } from '../line-styles.ts';
import { at, boxAt, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawCircle, drawLine, drawPath, type Parent } from '../pen.ts';
import { lengthOnPaper, onPaper, type PlanView, type ScaleRatio } from '../sheet/scale.ts';
import { type Drawing, openSubject } from '../surface.ts';

/** A part of a board, metres from its datum. */
export interface BoardWindow {
  readonly fromXM: number;
  readonly toXM: number;
  readonly fromYM: number;
  readonly toYM: number;
}

/** A view of a board that shows a window in the middle of a box on paper. */
export function viewIn(box: PaperBox, ratio: ScaleRatio, window: BoardWindow, mirrored = false): PlanView {
  const middleXMm = ((window.fromXM + window.toXM) / 2) * (1000 / ratio);
  const middleYMm = ((window.fromYM + window.toYM) / 2) * (1000 / ratio);
  const centre = at((box.leftMm + box.rightMm) / 2, (box.topMm + box.bottomMm) / 2);
  const datumXMm = mirrored ? centre.xMm + middleXMm : centre.xMm - middleXMm;
  return { ratio, datum: at(datumXMm, centre.yMm + middleYMm), mirrored };
}

/** The smallest window round a board's outline. */
export function windowRound(outline: readonly OutlinePoint[]): BoardWindow {
  // At full size a millimetre of paper is a millimetre of the board, y down.
  const box = outlineBox(outline, { ratio: 1, datum: at(0, 0), mirrored: false });
  return {
    fromXM: box.leftMm / 1000,
    toXM: box.rightMm / 1000,
    fromYM: -box.bottomMm / 1000,
    toYM: -box.topMm / 1000,
  };
}

/** The box on paper of a window. */
export function windowBox(view: PlanView, window: BoardWindow): PaperBox {
  const a = onPaper(view, { xM: window.fromXM, yM: window.fromYM });
  const b = onPaper(view, { xM: window.toXM, yM: window.toYM });
  return {
    leftMm: Math.min(a.xMm, b.xMm),
    topMm: Math.min(a.yMm, b.yMm),
    rightMm: Math.max(a.xMm, b.xMm),
    bottomMm: Math.max(a.yMm, b.yMm),
  };
}

/** Draws outline and cut-outs; what is cut out of the inside is hatched. */
export function drawBoardEdge(
  drawing: Drawing,
  parent: Parent,
  board: PlanBoard,
  view: PlanView,
  line: LineStyle = lines.cut,
): void {
  const group = openSubject(drawing, parent, board.id);
  drawPath(group, bulgePath(board.outline, view), line);
  for (const cutout of board.cutouts)
    drawPath(group, bulgePath(cutout, view), line, hatchFill(drawing, 'cutaway'));
}

/** How far the centre lines of a hole reach past it. */
const crossPastMm = 1.2;
const leastReachMm = 1.8;

/** How far a hole and its centre lines reach from its centre. */
export function holeReachMm(view: PlanView, hole: PlanHole): number {
  return Math.max(leastReachMm, lengthOnPaper(view, hole.diameterM) / 2 + crossPastMm);
}

/** Draws a hole with its centre lines. */
export function drawHole(drawing: Drawing, parent: Parent, hole: PlanHole, view: PlanView): void {
  const group = openSubject(drawing, parent, hole.of);
  const centre = onPaper(view, hole);
  const reach = holeReachMm(view, hole);
  if (hole.diameterM > 0) drawCircle(group, centre, lengthOnPaper(view, hole.diameterM) / 2, lines.part);
  drawLine(group, [at(centre.xMm - reach, centre.yMm), at(centre.xMm + reach, centre.yMm)], lines.rule);
  drawLine(group, [at(centre.xMm, centre.yMm - reach), at(centre.xMm, centre.yMm + reach)], lines.rule);
}

/** The box of a hole with its centre lines. */
export function holeBox(view: PlanView, hole: PlanHole): PaperBox {
  const { xMm, yMm } = onPaper(view, hole);
  const reach = holeReachMm(view, hole);
  return boxAt(xMm - reach, yMm - reach, 2 * reach, 2 * reach);
}

/** The point of a bent edge at a share of its angle. */
export function arcPoint(from: OutlinePoint, to: OutlinePoint, share: number): { xM: number; yM: number } {
  const b = from.bulge;
  const dx = to.xM - from.xM;
  const dy = to.yM - from.yM;
  const left = (1 - b * b) / (4 * b);
  const xM = (from.xM + to.xM) / 2 - dy * left;
  const yM = (from.yM + to.yM) / 2 + dx * left;
  const radius = Math.hypot(from.xM - xM, from.yM - yM);
  const angle = Math.atan2(from.yM - yM, from.xM - xM) + 4 * Math.atan(b) * share;
  return { xM: xM + radius * Math.cos(angle), yM: yM + radius * Math.sin(angle) };
}

/** The corners of an upright rectangle of the board on paper. */
export function rectangleOnPaper(
  view: PlanView,
  { xM, yM, widthM, heightM }: { xM: number; yM: number; widthM: number; heightM: number },
): PaperPoint[] {
  return [
    onPaper(view, { xM, yM: yM + heightM }),
    onPaper(view, { xM: xM + widthM, yM: yM + heightM }),
    onPaper(view, { xM: xM + widthM, yM }),
    onPaper(view, { xM, yM }),
  ];
}
