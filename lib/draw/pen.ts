import type { G, Svg } from '@svgdotjs/svg.js';
import { arrow, dashesMm, type Ink, inks, type LineStyle, lines } from './line-styles.ts';
import type { PaperPoint } from './paper.ts';
import { roundedText } from './rounded-text.ts';

/** Where strokes are put. */
export type Parent = Svg | G;

/** The attributes of a stroke, resolved: no style sheet is needed to see it right. */
export function strokeAttributes(line: LineStyle): Record<string, string | number> {
  const dashes = dashesMm(line);
  return {
    stroke: inks[line.ink],
    'stroke-width': line.widthMm,
    ...(dashes.length > 0 && { 'stroke-dasharray': dashes.join(' ') }),
  };
}

/** Path data through the points, closed where asked. */
export function pathThrough(points: readonly PaperPoint[], closed = false): string {
  const steps = points.map(
    (point, index) => `${index === 0 ? 'M' : 'L'}${roundedText(point.xMm)} ${roundedText(point.yMm)}`,
  );
  return steps.join('') + (closed ? 'Z' : '');
}

/** What a closed shape is filled with: an ink, or a pattern's `url(#id)`. */
export type Fill = Ink | `url(${string})`;

function fillValue(fill: Fill | undefined): string {
  if (fill === undefined) return 'none';
  return fill.startsWith('url(') ? fill : (Object.entries(inks).find(([ink]) => ink === fill)?.[1] ?? 'none');
}

/** Draws path data in one line style. */
export function drawPath(parent: Parent, d: string, line: LineStyle, fill?: Fill): void {
  parent.element('path').attr({ d, ...strokeAttributes(line), fill: fillValue(fill) });
}

/** Draws straight strokes from point to point. */
export function drawLine(parent: Parent, points: readonly PaperPoint[], line: LineStyle): void {
  drawPath(parent, pathThrough(points), line);
}

/** Draws a closed shape. */
export function drawShape(parent: Parent, points: readonly PaperPoint[], line: LineStyle, fill?: Fill): void {
  drawPath(parent, pathThrough(points, true), line, fill);
}

/** Draws a circle. */
export function drawCircle(
  parent: Parent,
  centre: PaperPoint,
  radiusMm: number,
  line: LineStyle,
  fill?: Fill,
): void {
  parent
    .element('circle')
    .attr({ cx: centre.xMm, cy: centre.yMm, r: radiusMm, ...strokeAttributes(line), fill: fillValue(fill) });
}

/** Fills a closed shape without a stroke. */
export function fillShape(parent: Parent, points: readonly PaperPoint[], fill: Fill): void {
  parent.element('path').attr({ d: pathThrough(points, true), fill: fillValue(fill) });
}

/** A filled arrow head whose tip stands at `tip`, and which comes from the direction of `from`. */
export function drawArrowHead(parent: Parent, tip: PaperPoint, from: PaperPoint, ink: Ink = 'line'): void {
  const run = Math.hypot(tip.xMm - from.xMm, tip.yMm - from.yMm);
  if (run === 0) return;
  const ux = (tip.xMm - from.xMm) / run;
  const uy = (tip.yMm - from.yMm) / run;
  const corner = (side: 1 | -1): PaperPoint => ({
    xMm: tip.xMm - ux * arrow.lengthMm - (side * uy * arrow.widthMm) / 2,
    yMm: tip.yMm - uy * arrow.lengthMm + (side * ux * arrow.widthMm) / 2,
  });
  fillShape(parent, [tip, corner(1), corner(-1)], ink);
}

/** A leader line: a dot where it points into a surface, then the stroke to its text. */
export function drawLeader(parent: Parent, points: readonly PaperPoint[]): void {
  const [first] = points;
  if (!first) return;
  drawLine(parent, points, lines.leader);
  parent.element('circle').attr({ cx: first.xMm, cy: first.yMm, r: arrow.leaderDotMm, fill: inks.line });
}
