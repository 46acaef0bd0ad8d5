import { inks } from '../line-styles.ts';
import type { Parent } from '../pen.ts';
import { type Insulation, insulationOf } from './insulation-patterns.ts';

/** What is not drawn thinner, however fine it is: two edges and some colour between them. */
export const leastWidthMm = 0.55;

/** Ink of each edge. */
const edgeMm = 0.14;

/** A conductor as a body: two edges, the colour of its insulation between them, and the pattern of that colour. */
export function drawBody(parent: Parent, d: string, widthMm: number, letters: string | null): void {
  const wide = Math.max(widthMm, leastWidthMm);
  const coreMm = wide - 2 * edgeMm;
  const { base, stripe } = insulationOf(letters);
  stroke(parent, d, inks.line, wide, []);
  stroke(parent, d, base.colour, coreMm, []);
  drawPattern(parent, d, base, coreMm);
  if (stripe !== null) stroke(parent, d, stripe.colour, coreMm / 2, stripeDashes);
}

/** A stripe runs round the conductor, so it shows and hides by turns. */
const stripeDashes = [2.2, 1.4];

function drawPattern(parent: Parent, d: string, { pattern, ink }: Insulation, coreMm: number): void {
  if (pattern.length === 1) stroke(parent, d, ink, 0.15, []);
  else if (pattern.length > 0) stroke(parent, d, ink, Math.min(0.5, coreMm * 0.6), pattern);
}

/** What lies beneath a part: its two edges in short dashes, nothing between them. */
export function drawHiddenBody(parent: Parent, d: string, widthMm: number): void {
  const wide = Math.max(widthMm, leastWidthMm);
  stroke(parent, d, inks.line, wide, [1.2, 0.8]);
  stroke(parent, d, inks.paper, wide - 2 * edgeMm, []);
}

/** Paper along a stretch of what passes over: what lies below ends on either side of it. */
export function drawGap(parent: Parent, d: string, widthMm: number): void {
  stroke(parent, d, inks.paper, widthMm, []);
}

function stroke(parent: Parent, d: string, ink: string, widthMm: number, dashes: readonly number[]): void {
  parent.element('path').attr({
    d,
    stroke: ink,
    'stroke-width': Math.max(0.1, widthMm),
    ...(dashes.length > 0 && { 'stroke-dasharray': dashes.join(' ') }),
  });
}
