import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { strokeObstacles } from '../drawn-strokes.ts';
import { drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type LineStyle, lines, roleStyles, types } from '../line-styles.ts';
import type { DrawnPage, Page } from '../page.ts';
import { at, boxAt, type PaperBox, type PaperSegment } from '../paper.ts';
import { drawPath, type Parent, pathThrough } from '../pen.ts';
import { draftBandHeightMm, drawDraftBand } from '../sheet/draft-band.ts';
import { type Drawing, layPaper, openDrawing, openGroup, openSubject } from '../surface.ts';
import { inPicture, type PictureView, seen } from './axonometry.ts';
import { type Body, type BodyKind, boardBodies } from './board-solids.ts';
import { type SeenPart, writeNames } from './face-names.ts';
import { type Hiding, hidingOf } from './hidden-lines.ts';
import { panelMarks } from './panel-marks.ts';
import { edgesOf, rimOf, type Stroke } from './prism.ts';

/** A picture stands among the text of a page; on a phone its names are still read. */
const widthMm = 184;
/** No picture is higher than it is wide. */
const heightMm = widthMm;
type Margins = readonly [beside: number, above: number];
/** Room beside the board, and above and below it, for names that have none on their part. */
const marginsMm = [
  [5, 5],
  [5, 16],
  [5, 28],
  [5, 40],
  [16, 16],
  [16, 28],
  [28, 28],
  [40, 40],
] as const satisfies readonly Margins[];
/** No text is nearer to the rim. */
const rimMm = 4;
/** Height of the line that tells what marks mean. */
const keyMm = 9;
/** How far the mark of a terminal reaches on paper. */
const markMm = 2;

interface Picture {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly board: PlanBoard;
  readonly page: Page;
  readonly shown: readonly { readonly body: Body; readonly strokes: readonly Stroke[] }[];
  readonly hiding: Hiding;
}

/**
 * The picture of a finished board, without a frame. Of the margins at which every name finds a place those are kept
 * that show the board largest with the shortest leaders; without any, those that leave fewest names out.
 */
export function drawBoardPicture(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  page: Page,
): DrawnPage {
  const bodies = boardBodies(plan, board);
  const hiding = hidingOf(bodies);
  const shown = bodies.map((body) => ({ body, strokes: shownEdges(body, hiding) }));
  const picture = { plan, metrics, board, page, shown, hiding };
  const widest = marginsMm.map((margins) => ({ margins, layout: layOut(picture, margins) }));
  let best: Attempt | null = null;
  for (const { layout } of widest.toSorted((a, b) => b.layout.view.mmPerM - a.layout.view.mmPerM)) {
    const most = layout.view.mmPerM / (widest[0]?.layout.view.mmPerM ?? 1);
    // Without a leader it would be worth as much as its scale: no smaller one can be better.
    if (best && best.drawn.left.length === 0 && best.worth >= most) break;
    const tried = drawAt(picture, layout, most);
    if (!best || isBetter(tried, best)) best = tried;
  }
  if (!best) throw new RangeError('no margins to draw a picture in');
  return best.drawn;
}

/** A picture with its names, and what it is worth: its scale less a share of its longest leader. */
interface Attempt {
  readonly drawn: DrawnPage;
  readonly worth: number;
}

function isBetter(a: Attempt, b: Attempt): boolean {
  const fewer = a.drawn.left.length - b.drawn.left.length;
  return fewer < 0 || (fewer === 0 && a.worth > b.worth);
}

function shownEdges(body: Body, { shown }: Hiding): Stroke[] {
  return (body.kind === 'loom' ? rimOf(body) : edgesOf(body)).flatMap(shown);
}

/** How a picture is put on paper. */
interface Layout {
  readonly view: PictureView;
  readonly heightMm: number;
  readonly headMm: number;
}

function layOut({ plan, shown }: Picture, [besideMm, aboveMm]: Margins): Layout {
  const headMm = sheetMark(plan) === null ? 0 : draftBandHeightMm + 2;
  const points = shown.flatMap(({ body: { outline, fromM, toM } }) =>
    outline.outer.flatMap((point) => [fromM, toM].map((zM) => seen({ ...point, zM }))),
  );
  const [xs, ys] = [points.map(({ xM }) => xM), points.map(({ yM }) => yM)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const mmPerM = Math.min((widthMm - 2 * besideMm) / (right - left), (heightMm - 2 * aboveMm) / (high - low));
  const spareMm = widthMm - 2 * besideMm - (right - left) * mmPerM;
  return {
    view: {
      mmPerM,
      datum: at(besideMm + spareMm / 2 - left * mmPerM, headMm + aboveMm + high * mmPerM),
    },
    heightMm: Math.ceil(headMm + (high - low) * mmPerM + 2 * aboveMm + keyMm),
    headMm,
  };
}

/** What counts against the scale of a picture: its longest leader and its height, as shares of its width. */
const leaderShare = 0.3;
const heightShare = 0.1;

function drawAt(picture: Picture, layout: Layout, most: number): Attempt {
  const { plan, metrics, page } = picture;
  const { id, title, description } = page;
  const size = { widthMm, heightMm: layout.heightMm };
  const drawing = openDrawing({ job: plan.job.id, sheet: id, ...size, title, description, metrics });
  layPaper(drawing);
  const mark = sheetMark(plan);
  const band = boxAt(rimMm, rimMm, widthMm - 2 * rimMm, draftBandHeightMm);
  const fits = mark === null || drawDraftBand(drawing, openGroup(drawing), band, mark);
  const topMm = layout.headMm + rimMm;
  const room = boxAt(rimMm, topMm, widthMm - 2 * rimMm, layout.heightMm - keyMm - rimMm - topMm);
  const { unplaced, longestMm } = paint(drawing, picture, layout.view, room);
  const left = [...unplaced, ...drawKey(drawing, layout.heightMm)];
  return {
    drawn: { page, drawing, room, left, tooLong: fits ? [] : ['Draft'], writeNumber: () => [] },
    worth: most - (leaderShare * longestMm + heightShare * layout.heightMm) / widthMm,
  };
}

const bodyLines: { readonly [K in Exclude<BodyKind, 'loom'>]: LineStyle } = {
  board: lines.seen,
  part: lines.seen,
  riser: lines.part,
  rib: lines.part,
  fixing: lines.rule,
};

function lineOf({ kind, role }: Body): LineStyle {
  if (kind !== 'loom') return bodyLines[kind];
  return role === undefined ? lines.rule : { ...lines.rule, ink: roleStyles[role].line.ink };
}

function paint(
  drawing: Drawing,
  picture: Picture,
  view: PictureView,
  room: PaperBox,
): { readonly unplaced: readonly string[]; readonly longestMm: number } {
  const { shown, hiding } = picture;
  const group = openGroup(drawing, drawing.svg, 'bodies');
  for (const { body, strokes } of shown)
    drawStrokes(bodyGroup(drawing, group, body), view, strokes, lineOf(body));
  const parts = partsOf(picture);
  const marks = openGroup(drawing, drawing.svg, 'marks');
  for (const { item, placement } of parts) {
    const strokes = panelMarks(item, placement, markMm / view.mmPerM);
    drawStrokes(openSubject(drawing, marks, item.id), view, strokes.flatMap(hiding.shown), lines.rule);
  }
  const before = strokeObstacles(drawing).length;
  const scene = { drawing, view, hiding };
  const unplaced = writeNames(scene, openGroup(drawing, drawing.svg, 'names'), parts, room);
  const leaders = strokeObstacles(drawing).slice(before);
  const longestMm = Math.max(0, ...leaders.map((one) => ('segment' in one ? lengthMm(one.segment) : 0)));
  return { unplaced, longestMm };
}

/** Board and parts light up with the tables; what else is drawn has names that are for builders alone. */
function bodyGroup(drawing: Drawing, parent: Parent, { kind, subject }: Body): Parent {
  const isNamed = kind === 'board' || kind === 'part';
  return isNamed ? openSubject(drawing, parent, subject) : openGroup(drawing, parent);
}

/** The parts of a board in the order of the plan. */
function partsOf({ plan, board }: Picture): SeenPart[] {
  return board.placements.flatMap((placement) => {
    const item = plan.items.find(({ id }) => id === placement.item);
    return item ? [{ item, placement }] : [];
  });
}

const lengthMm = ({ from, to }: PaperSegment): number => Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);

function drawStrokes(parent: Parent, view: PictureView, strokes: readonly Stroke[], line: LineStyle): void {
  const paths = strokes.map(({ from, to }) => pathThrough([inPicture(view, from), inPicture(view, to)]));
  if (paths.length > 0) drawPath(parent, paths.join(''), line);
}

/** What the marks on parts mean. */
function drawKey(drawing: Drawing, atMm: number): string[] {
  const type = types.pictureNote;
  const box = drawText(drawing, drawing.svg, keyText, at(widthMm / 2, atMm - rimMm - 1.5), {
    type,
    align: 'middle',
  });
  return box.leftMm >= rimMm ? [] : [keyText];
}

const keyText = 'On the edges of parts: strokes for terminals, squares for controls';
