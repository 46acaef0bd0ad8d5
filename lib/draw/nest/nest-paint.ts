import type { Rectangle } from '../../board/cut/free-rectangles.ts';
import type { NestedPiece } from '../../board/cut/nesting.ts';
import { laidPoint } from '../../board/cut/sheet-pieces.ts';
import { grainLeft, placeGrainArrow } from '../board/grain-arrow.ts';
import { bulgePath } from '../bulge-path.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { lines, type TypeStyle, types } from '../line-styles.ts';
import { at, boxRound, centreOf, cornersOf, grown, heightMm, type PaperBox, widthMm } from '../paper.ts';
import { drawPath, drawShape, type Parent } from '../pen.ts';
import { onPaper, type PlanView } from '../sheet/scale.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { cutOrder, drawCuts } from './cut-lines.ts';
import { listLines, listPitchMm, type NestLayout } from './nest-layout.ts';
import { type NestEntry, type NestScene, nestEntries, offCutEntries } from './nest-list.ts';

/**
 * Draws a stock sheet at scale, with the pieces that are cut from it, numbered, the off-cuts to keep,
 * lettered, and the list of what the numbers mean; names what found no room.
 */
export function paintNest(drawing: Drawing, room: PaperBox, scene: NestScene, layout: NestLayout): string[] {
  const { sheet } = scene;
  const view: PlanView = {
    ratio: layout.ratio,
    datum: at(layout.sheet.leftMm, layout.sheet.bottomMm),
    mirrored: false,
  };
  const entries = nestEntries(scene);
  const group = openGroup(drawing, drawing.svg, 'sheet');
  drawShape(group, cornersOf(layout.sheet), lines.seen);
  const kept = sheet.offCuts.map((offCut) => boxOf(view, offCut));
  for (const box of kept) drawShape(group, cornersOf(box), lines.hidden);
  for (const { id, pieces } of entries) {
    const parent = openSubject(drawing, group, id);
    for (const piece of pieces) drawPiece(parent, scene, piece, view);
  }
  const cuts = drawCuts(openGroup(drawing, drawing.svg, 'cuts'), cutOrder(scene).cuts, view);
  const listed = openGroup(drawing, drawing.svg, 'list');
  listLines(scene, drawing.metrics).forEach((text, index) => {
    const point = at(layout.list.xMm, layout.list.yMm + index * listPitchMm);
    drawText(drawing, listed, text, point, { type: types.note });
  });
  const words = openGroup(drawing, drawing.svg, 'labels');
  const loose = [
    ...offCutEntries(scene).flatMap(({ letter }, nth) => {
      const box = kept[nth];
      return box && !wroteInside(drawing, words, letter, box, types.item)
        ? [labelOf(letter, letter, [box])]
        : [];
    }),
    ...entries.flatMap((entry) => numberPieces(drawing, words, entry, view)),
  ];
  const unlabelled = drawLabels(drawing, words, [...loose, ...cuts], room);
  return [...unlabelled, ...grainArrow(drawing, scene, { room, sheet: layout.sheet, kept })];
}

/** How far the arrow of the grain keeps off the lines round it. */
const grainClearMm = 2;

/** The way of the grain: in an off-cut or in what is lost of the sheet where there is room, else beside the sheet. */
function grainArrow(
  drawing: Drawing,
  { grain }: NestScene,
  {
    room,
    sheet,
    kept,
  }: { readonly room: PaperBox; readonly sheet: PaperBox; readonly kept: readonly PaperBox[] },
): string[] {
  const places = [...kept, sheet, room].map((place) => grown(place, -grainClearMm));
  const tried = places.findIndex((place) => placeGrainArrow(drawing, grain, place).length === 0);
  return tried < 0 ? [grainLeft] : [];
}

/** Writes the number of each piece into it; those too small for it share one label: `2 (7)`. */
function numberPieces(drawing: Drawing, parent: Parent, entry: NestEntry, view: PlanView): TextLabel[] {
  const { number, id, pieces } = entry;
  const boxes = pieces.map((piece) => boxOf(view, piece));
  const small = boxes.filter((box) => !wroteInside(drawing, parent, String(number), box, types.item));
  if (small.length === 0) return [];
  return [labelOf(id, small.length === 1 ? String(number) : `${number} (${small.length})`, small)];
}

function labelOf(id: string, text: string, anchors: readonly PaperBox[]): TextLabel {
  return { id, lines: [text], type: types.terminal, anchors, own: [id], subject: id };
}

/** Writes a text into the middle of a box where it has room there. */
function wroteInside(
  drawing: Drawing,
  parent: Parent,
  text: string,
  box: PaperBox,
  type: TypeStyle,
): boolean {
  const clearMm = 0.6;
  const { metrics } = drawing;
  const wide = metrics.widthMm(text, type) + 2 * clearMm;
  // A capital stands in the middle: what the type has above and below it needs the same room on both sides.
  const reach = Math.max(metrics.ascentMm(type) - type.capMm / 2, metrics.descentMm(type) + type.capMm / 2);
  if (wide > widthMm(box) || 2 * reach > heightMm(box)) return false;
  const { xMm, yMm } = centreOf(box);
  drawText(drawing, parent, text, at(xMm, baselineFor(yMm, type)), { type, align: 'middle' });
  return true;
}

function boxOf(view: PlanView, { xM, yM, widthM, heightM }: Rectangle): PaperBox {
  return boxRound([onPaper(view, { xM, yM }), onPaper(view, { xM: xM + widthM, yM: yM + heightM })]);
}

/** The lines that a piece is cut along, as it lies. */
function drawPiece(parent: Parent, { nesting }: NestScene, piece: NestedPiece, view: PlanView): void {
  const known = nesting.pieces.find(({ id }) => id === piece.id);
  if (!known) return;
  for (const loop of known.loops) {
    const laid = loop.map((point) => laidPoint(piece, known.corner, point));
    drawPath(parent, bulgePath(laid, view), lines.part);
  }
}
