import { flatten } from '../../board/shape/bulge.ts';
import type { Point } from '../../board/shape/point.ts';
import type { BuildPlan, PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { lines, spacing, types } from '../line-styles.ts';
import { at, boxAt, boxRound, centreOf, heightMm, type PaperPoint, widthMm } from '../paper.ts';
import { drawLine, drawShape, type Parent } from '../pen.ts';
import { type Drawing, layPaper, openDrawing, openSubject } from '../surface.ts';
import { wholeBoard } from '../whole-board.ts';

type Place = PlanBoard['proposals'][number]['placements'][number];

/** A layout of a board that the search found, drawn small: the built one or one that it left. */
export interface LayoutPicture {
  /** Its number among the layouts, from 1. */
  readonly rank: number;
  readonly title: string;
  readonly drawing: Drawing;
  /** Numbers of parts that found no place on it. */
  readonly unplaced: readonly string[];
}

/** As wide as a third of a page, so that three stand side by side. */
const wideMm = 58;
const mostHighMm = 80;
/** Room round the board, for numbers of parts that have none within. */
const rimMm = 5;
/** The corner of a part that is marked, along each of its edges. */
const cornerMm = 2;
/** No chord stands farther from its arc, metres: a tenth of a millimetre of paper. */
const chordM = 0.001;

/**
 * The layouts that the search found for a board, best first, at one scale: every part with its number among the
 * placements of the board, its lower left corner before it was turned marked by a stroke. None where there is nothing to
 * compare.
 */
export function layoutPictures(
  { job }: Pick<BuildPlan, 'job'>,
  board: PlanBoard,
  metrics: TextMetrics,
): LayoutPicture[] {
  if (board.proposals.length < 2) return [];
  const within = { widthMm: wideMm - 2 * rimMm, heightMm: mostHighMm - 2 * rimMm };
  const whole = wholeBoard(board, within, chordM);
  const onPaper = whole.onPaper(at((wideMm - whole.widthMm) / 2, rimMm));
  const highMm = Math.ceil(whole.heightMm + 2 * rimMm);
  return board.proposals.map(({ placements }, index): LayoutPicture => {
    const rank = index + 1;
    const title = `${board.title}: layout ${rank}`;
    const request = {
      job: job.id,
      sheet: `layout-${board.id}-${rank}`,
      widthMm: wideMm,
      heightMm: highMm,
    };
    const drawing = openDrawing({ ...request, title, description: saidOf(board, placements), metrics });
    layPaper(drawing);
    drawShape(openSubject(drawing, drawing.svg, board.id), whole.ring.map(onPaper), lines.seen);
    for (const cutout of board.cutouts)
      drawShape(drawing.svg, flatten(cutout, chordM).map(onPaper), lines.part, 'ghost');
    const bodies = board.placements.map((built, number): Body => {
      const place = placements.find(({ item }) => item === built.item) ?? built;
      return { item: built.item, number: number + 1, corners: cornersOf(built, place).map(onPaper) };
    });
    for (const { item, corners } of bodies) drawBody(openSubject(drawing, drawing.svg, item), corners);
    const outside = bodies.filter((body) => !numberWithin(drawing, body));
    const labels = outside.map(({ item, number, corners }): TextLabel => {
      const box = boxRound(corners);
      const anchors = [box, anchorAt(centreOf(box))];
      return { id: item, lines: [String(number)], type: types.terminal, subject: item, anchors, own: [item] };
    });
    const room = boxAt(0.5, 0.5, wideMm - 1, highMm - 1);
    const obstacles = bodies.map(({ item, corners }) => ({ id: item, box: boxRound(corners) }));
    const unplaced = drawLabels(drawing, drawing.svg, labels, room, obstacles);
    return { rank, title, drawing, unplaced };
  });
}

interface Body {
  readonly item: string;
  readonly number: number;
  readonly corners: readonly PaperPoint[];
}

/** Writes the number of a part in its middle; false where that has no room. */
function numberWithin(drawing: Drawing, { item, number, corners }: Body): boolean {
  const box = boxRound(corners);
  const { type, text } = { type: types.terminal, text: String(number) };
  const clear = spacing.clearMm;
  if (
    widthMm(box) < drawing.metrics.widthMm(text, type) + 2 * clear ||
    heightMm(box) < type.capMm + 2 * clear
  )
    return false;
  const { xMm, yMm } = centreOf(box);
  const point = at(xMm, baselineFor(yMm, type));
  drawText(drawing, openSubject(drawing, drawing.svg, item), text, point, { type, align: 'middle' });
  return true;
}

/** The corners of a part as a layout places it, from the one that is its lower left before it is turned. */
function cornersOf(built: PlanPlacement, place: Place): Point[] {
  const isAcross = Math.abs(place.turnDeg - built.turnDeg) % 180 === 90;
  const [widthM, depthM] = isAcross ? [built.depthM, built.widthM] : [built.widthM, built.depthM];
  const [left, low, right, high] = [place.xM, place.yM, place.xM + widthM, place.yM + depthM];
  // Counter-clockwise, as parts are turned.
  const corners = [
    { xM: left, yM: low },
    { xM: right, yM: low },
    { xM: right, yM: high },
    { xM: left, yM: high },
  ];
  const first = (((place.turnDeg / 90) % 4) + 4) % 4;
  return corners.map((_, k) => corners[(first + k) % 4] ?? { xM: left, yM: low });
}

function drawBody(parent: Parent, corners: readonly PaperPoint[]): void {
  drawShape(parent, corners, lines.part, 'paper');
  const [corner, next, , last] = corners;
  if (!corner || !next || !last) return;
  drawLine(parent, [towards(corner, next), towards(corner, last)], lines.part);
}

/** The point of an edge that the stroke over a corner ends at; no farther than a third of the edge. */
function towards(corner: PaperPoint, other: PaperPoint): PaperPoint {
  const long = Math.hypot(other.xMm - corner.xMm, other.yMm - corner.yMm);
  const share = Math.min(cornerMm / Math.max(long, cornerMm), 1 / 3);
  return at(corner.xMm + (other.xMm - corner.xMm) * share, corner.yMm + (other.yMm - corner.yMm) * share);
}

function saidOf(board: PlanBoard, placements: readonly Place[]): string {
  return `${board.title} with ${board.placements.length} parts, ${placements.length} of them where the search put them.`;
}
