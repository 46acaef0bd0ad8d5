import { type RibFace, ribRing, ringsAlong } from '../../board/strength/rib.ts';
import type { PlanBoard, PlanRib } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import type { TextLabel } from '../lettering/view-labels.ts';
import { lines, types } from '../line-styles.ts';
import { boxesMeet, boxRound, type PaperBox } from '../paper.ts';
import { drawLine, type Parent } from '../pen.ts';
import { onPaper, type PlanView } from '../sheet/scale.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { clippedLine } from './clip.ts';

/** A view of the ribs of a board: from which face, and what of it is shown. */
export interface RibView {
  readonly board: PlanBoard;
  readonly view: PlanView;
  readonly seenFrom: RibFace;
  readonly clip: PaperBox | null;
}

/** Draws ribs: those on the face that is looked at in lines of seen edges, those behind it in lines of hidden ones (ISO 128). */
export function drawRibs(drawing: Drawing, parent: Parent, { board, view, seenFrom, clip }: RibView): void {
  for (const rib of board.ribs) {
    const corners = ribRing(rib).map((point) => onPaper(view, point));
    const [first] = corners;
    if (!first) continue;
    const group = openSubject(drawing, parent, rib.id);
    const line = rib.face === seenFrom ? lines.part : lines.hidden;
    for (const piece of clippedLine([...corners, first], clip)) drawLine(group, piece, line);
  }
}

/** The name of each rib beside it, with more that is said of it; beside a part of it that nothing hides. */
export function ribLabels(
  { board, view, clip }: RibView,
  hiding: readonly PaperBox[],
  said: (rib: PlanRib) => readonly string[],
): TextLabel[] {
  return board.ribs.flatMap((rib): TextLabel[] => {
    const all = piecesOf(rib, view).filter((box) => clip === null || boxesMeet(box, clip));
    const open = all.filter((box) => !hiding.some((over) => boxesMeet(box, over)));
    const anchors = open.length > 0 ? open : all;
    if (anchors.length === 0) return [];
    const texts = [`rib ${rib.id}`, ...said(rib)];
    return [{ id: `rib ${rib.id}`, lines: texts, type: types.note, anchors, own: [rib.id], subject: rib.id }];
  });
}

/** What a rib measures over its face and how it is fixed: `2 3/8 x 11/16, glued`. */
export function ribSize({ widthM, heightM, joint }: PlanRib, style: LengthStyle): string {
  return `${printedDimension('cut', widthM, style)} x ${printedDimension('cut', heightM, style)} high, ${joint}`;
}

/** A rib in short pieces, so that a name can stand beside any of them. */
function piecesOf(rib: PlanRib, view: PlanView): PaperBox[] {
  return ringsAlong(rib, 12).map((ring) => boxRound(ring.map((point) => onPaper(view, point))));
}
