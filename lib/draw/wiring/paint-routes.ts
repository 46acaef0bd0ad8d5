import { bentPath, bentPoints } from '../bent-line.ts';
import { clippedLine, interrupted } from '../board/clip.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { inks } from '../line-styles.ts';
import { grown, type PaperBox, type PaperPoint, segmentMeetsBox } from '../paper.ts';
import { type Parent, pathThrough } from '../pen.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { drawBody, drawHiddenBody } from './conductor-body.ts';
import { clearCrossings } from './crossings.ts';
import type { LaidRoute, Strand } from './strands.ts';

/** Draws routes, in the order in which they are laid, as the bodies of their conductors; what is beneath a raised part shows its edges in short dashes. */
export function paintRoutes(
  drawing: Drawing,
  parent: Parent,
  routes: readonly LaidRoute[],
  items: readonly ItemOnBoard[],
  clip: PaperBox | null,
): void {
  const raised = items.filter(({ placement }) => placement.raisedM > 0).map(({ box }) => box);
  routes.forEach((route, nth) => {
    clearCrossings(openSubject(drawing, parent, route.route.wire), route, routes.slice(0, nth), clip);
    for (const strand of route.strands)
      paintStrand(openSubject(drawing, parent, strand.subject), strand, raised, clip);
  });
}

function paintStrand(
  parent: Parent,
  { points, bending, widthMm, letters }: Strand,
  raised: readonly PaperBox[],
  clip: PaperBox | null,
): void {
  const under = raised.filter((box) => meets(points, box));
  if (under.length === 0 && clip === null) {
    drawBody(parent, bentPath(points, bending), widthMm, letters);
    return;
  }
  for (const piece of clippedLine(bentPoints(points, bending), clip)) {
    for (const box of under)
      for (const hidden of clippedLine(piece, box)) drawHiddenBody(parent, pathThrough(hidden), widthMm);
    for (const open of interrupted(piece, under)) drawBody(parent, pathThrough(open), widthMm, letters);
  }
}

function meets(points: readonly PaperPoint[], box: PaperBox): boolean {
  return points
    .slice(1)
    .some((to, index) => segmentMeetsBox({ from: points[index] ?? to, to }, grown(box, -0.05)));
}

/** Draws the routes of other layers as broad pale lines, which make way for every text. */
export function paintGhosts(
  drawing: Drawing,
  parent: Parent,
  routes: readonly LaidRoute[],
  clip: PaperBox | null,
): void {
  for (const { route, line, widthMm } of routes) {
    const group = openSubject(drawing, parent, route.wire);
    const texts = drawing.texts.map(({ box }) => grown(box, widthMm / 2 + 0.3));
    const d = clippedLine(line, clip)
      .flatMap((piece) => interrupted(piece, texts))
      .map((piece) => pathThrough(piece))
      .join('');
    if (d !== '') group.element('path').attr({ d, stroke: inks.ghost, 'stroke-width': widthMm });
  }
}
