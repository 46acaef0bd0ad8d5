import { flatten } from '../../board/shape/bulge.ts';
import { ringOfBox } from '../../board/shape/point.ts';
import type { BoardOverlay, Footprint, LaidHole, LaidItem } from '../../compare/overlay.ts';
import { baselineFor, drawLines, drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { type LineStyle, lines, types } from '../line-styles.ts';
import { at, boxAt, boxRound, centreOf, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawArrowHead, drawCircle, drawLine, drawShape, type Parent } from '../pen.ts';
import { type Drawing, drawingText, layPaper, openDrawing, openGroup, openSubject } from '../surface.ts';
import { type BoardView, viewOfBoards } from './overlay-view.ts';

/** An overlay stands among the text of a page, as wide as that is. */
const widthMm = 184;
const rimMm = 4;
/** Room round the board for letters that have none on it. */
const asideMm = 9;
/** Height of the lines that tell what is laid over what, and of those that tell the lines. */
const headMm = 21;
const keyMm = 15;
/** No chord stands farther from its arc, metres. */
const chordM = 0.0005;
/** A shorter way is drawn without its arrow, which would hide it. */
const leastArrowMm = 4;

/** How far the cross of a new hole reaches beyond it. */
const crossMm = 1;

/** The letter of each state, which its word begins with. */
export const stateLetters = { gone: 'G', new: 'N', changed: 'C', moved: 'M' } as const;

/** What each kind of line means, in the order of the key. */
const lineOf = {
  same: lines.paleItem,
  gone: lines.hidden,
  new: lines.cut,
  changed: lines.seen,
  moved: lines.cut,
} as const satisfies Record<LaidItem['state'], LineStyle>;

/** What an overlay says of itself. */
export interface OverlayRequest {
  /** What ids in the drawing begin with. */
  readonly id: string;
  /** The two that are laid over each other, such as `estate, revision A`. */
  readonly before: string;
  readonly after: string;
  readonly metrics: TextMetrics;
}

/** A drawing of one board laid over another. */
export interface DrawnOverlay {
  readonly title: string;
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Letters and names that found no place. */
  readonly unplaced: readonly string[];
}

/**
 * One board over another, from its mounting side: what both have pale, what is gone dashed with G, what came in a heavy line
 * with N, what moved in both places with M and an arrow from the one to the other. Null where neither has an outline.
 */
export function drawBoardOverlay(overlay: BoardOverlay, request: OverlayRequest): DrawnOverlay | null {
  const laid = layBoardOverlay(overlay, request);
  if (!laid) return null;
  const { drawing, title, unplaced } = laid;
  const svg = drawingText(drawing, { colours: 'properties' });
  return { title, svg, widthMm, heightMm: drawing.heightMm, unplaced };
}

/** The same before it is written as text. */
export function layBoardOverlay(
  overlay: BoardOverlay,
  request: OverlayRequest,
): (Pick<DrawnOverlay, 'title' | 'unplaced'> & { readonly drawing: Drawing }) | null {
  const { id, before, after, metrics } = request;
  const boardMm = widthMm - 2 * rimMm - 2 * asideMm;
  const view = viewOfBoards(overlay, at(rimMm + asideMm, headMm + asideMm), boardMm);
  if (!view) return null;
  const heightMm = Math.ceil(headMm + 2 * asideMm + view.heightMm + keyMm + rimMm);
  const over = overlay.over === null ? '' : ` over ${overlay.over}`;
  const title = `${overlay.title}${over}: ${after} over ${before}`;
  const description = `${overlay.title} from its mounting side. Dashed and G: gone. Heavy and N: new. M with an arrow: moved. C: changed. Pale: the same in both.`;
  const drawing = openDrawing({
    ...{ job: id, sheet: `overlay-${overlay.id}`, widthMm, heightMm, title, description, metrics },
  });
  layPaper(drawing);
  drawHead(drawing, request);
  drawKey(drawing, heightMm);
  drawEdges(drawing, overlay, view);
  drawHoles(drawing, overlay, view);
  drawItems(drawing, overlay, view);
  const room = boxAt(rimMm, headMm, widthMm - 2 * rimMm, heightMm - headMm - keyMm - rimMm);
  const labels = [...itemLabels(overlay, view), ...holeLabels(overlay, view)];
  const unplaced = drawLabels(drawing, openGroup(drawing), labels, room);
  return { drawing, title, unplaced };
}

/** What is laid over what, a line each: a name of a job may be long. */
function drawHead(drawing: Drawing, { before, after }: OverlayRequest): void {
  const group = openGroup(drawing);
  const said = [`Before: ${before}`, `Now: ${after}`, 'For comparing, not for building; not to scale'];
  drawLines(drawing, group, said, at(rimMm, 9), { type: types.pictureNote });
}

const keyWords = [
  ['gone', 'G gone'],
  ['new', 'N new'],
  ['moved', 'M moved'],
  ['changed', 'C changed'],
  ['same', 'the same in both'],
] as const;

/** A sample of each line with its letter and its word, side by side at the foot, in as many rows as they take. */
function drawKey(drawing: Drawing, heightMm: number): void {
  const group = openGroup(drawing, drawing.svg, 'key');
  const type = types.pictureNote;
  const [sampleMm, gapMm, rowMm] = [12, 1.5, 7];
  let [leftMm, middleMm] = [rimMm, heightMm - rimMm - keyMm + 5];
  for (const [state, words] of keyWords) {
    const wideMm = sampleMm + gapMm + drawing.metrics.widthMm(words, type);
    if (leftMm + wideMm > widthMm - rimMm) [leftMm, middleMm] = [rimMm, middleMm + rowMm];
    const [from, to] = [at(leftMm, middleMm), at(leftMm + sampleMm, middleMm)];
    if (state === 'moved') {
      drawLine(group, [from, to], lines.leader);
      drawArrowHead(group, to, from);
    } else drawLine(group, [from, to], lineOf[state]);
    drawText(drawing, group, words, at(to.xMm + gapMm, baselineFor(middleMm, type)), { type });
    leftMm += wideMm + 6;
  }
}

function drawEdges(drawing: Drawing, { edges }: BoardOverlay, view: BoardView): void {
  const group = openGroup(drawing, drawing.svg, 'edges');
  for (const { state, corners } of edges) {
    const line = state === 'same' ? lines.pale : lineOf[state];
    drawShape(group, flatten(corners, chordM).map(view.onPaper), line);
  }
}

function drawHoles(drawing: Drawing, { holes }: BoardOverlay, view: BoardView): void {
  const group = openGroup(drawing, drawing.svg, 'holes');
  holes.forEach(({ state, hole }, nth) => {
    const own = openSubject(drawing, group, `hole-${nth}`);
    const radiusMm = radiusOn(view, hole);
    const centre = view.onPaper(hole);
    drawCircle(own, centre, radiusMm, state === 'new' ? lines.seen : lineOf[state]);
    if (state === 'new') drawCross(own, centre, radiusMm);
  });
}

/** How large a hole is shown: never too small to be seen. */
function radiusOn({ mmPerM }: BoardView, { diameterM }: LaidHole['hole']): number {
  return Math.max(0.8, (diameterM / 2) * mmPerM);
}

function drawCross(parent: Parent, { xMm, yMm }: PaperPoint, radiusMm: number): void {
  const reachMm = radiusMm + crossMm;
  drawLine(parent, [at(xMm - reachMm, yMm), at(xMm + reachMm, yMm)], lines.rule);
  drawLine(parent, [at(xMm, yMm - reachMm), at(xMm, yMm + reachMm)], lines.rule);
}

function drawItems(drawing: Drawing, { items }: BoardOverlay, view: BoardView): void {
  const group = openGroup(drawing, drawing.svg, 'items');
  const isSame = ({ state }: LaidItem): boolean => state === 'same';
  // What differs lies over what does not.
  for (const one of [...items.filter(isSame), ...items.filter((each) => !isSame(each))]) {
    const own = openSubject(drawing, group, one.item);
    const { state, was, is } = one;
    if (was !== null && state !== 'same') drawShape(own, cornersOn(view, was), lines.hidden);
    if (is !== null) drawShape(own, cornersOn(view, is), lineOf[state]);
    if (was !== null && is !== null && state === 'moved') drawWay(own, view, was, is);
  }
}

/** The way of what moved, from the middle of where it was to the middle of where it is. */
function drawWay(parent: Parent, view: BoardView, was: Footprint, is: Footprint): void {
  const [from, to] = [centreOf(boxOn(view, was)), centreOf(boxOn(view, is))];
  if (Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) < leastArrowMm) return;
  drawLine(parent, [from, to], lines.leader);
  drawArrowHead(parent, to, from);
}

function itemLabels({ items }: BoardOverlay, view: BoardView): TextLabel[] {
  return items.flatMap(({ item, state, was, is }): TextLabel[] => {
    const print = is ?? was;
    if (!print) return [];
    const box = boxOn(view, print);
    const isSame = state === 'same';
    return [
      {
        id: item,
        lines: [isSame ? item : `${stateLetters[state]} ${item}`],
        type: isSame ? types.pictureNote : types.pictureName,
        anchors: [box],
        inside: box,
        own: [item],
      },
    ];
  });
}

/** Letters of holes; those of a device that bears one itself go with it. */
function holeLabels({ holes, items }: BoardOverlay, view: BoardView): TextLabel[] {
  const marked = new Set(items.flatMap(({ item, state }) => (state === 'same' ? [] : [item])));
  return holes.flatMap(({ state, of, hole }, nth): TextLabel[] => {
    if (state === 'same' || marked.has(of)) return [];
    const { xMm, yMm } = view.onPaper(hole);
    const reachMm = radiusOn(view, hole) + crossMm;
    const id = `hole-${nth}`;
    const anchors = [boxAt(xMm - reachMm, yMm - reachMm, 2 * reachMm, 2 * reachMm)];
    return [{ id, lines: [stateLetters[state]], type: types.pictureName, anchors, own: [id] }];
  });
}

function cornersOn(view: BoardView, print: Footprint): PaperPoint[] {
  const { xM, yM, widthM, depthM } = print;
  return ringOfBox({ minX: xM, minY: yM, maxX: xM + widthM, maxY: yM + depthM }).map(view.onPaper);
}

function boxOn(view: BoardView, print: Footprint): PaperBox {
  return boxRound(cornersOn(view, print));
}
