import type { ConductorRole } from '../model/vocabulary.ts';
import { inks, lines, type RoleStyle, roleStyles } from './line-styles.ts';
import type { PaperPoint } from './paper.ts';
import { drawLine, type Parent, pathThrough } from './pen.ts';

/** Draws a conductor along its points in the line of its role, which tells the role without colour. */
export function drawConductor(parent: Parent, points: readonly PaperPoint[], role: ConductorRole): void {
  const style: RoleStyle = roleStyles[role];
  drawLine(parent, points, style.line);
  if (style.coreMm !== undefined)
    parent.element('path').attr({ d: pathThrough(points), stroke: inks.paper, 'stroke-width': style.coreMm });
  if (style.ticks !== undefined) drawTicks(parent, points, style);
}

/** Short strokes across the line: one wide dashed stroke, whose dashes are as long as a tick is thick. */
function drawTicks(parent: Parent, points: readonly PaperPoint[], { line, ticks }: RoleStyle): void {
  if (!ticks) return;
  const thickMm = lines.rule.widthMm;
  parent.element('path').attr({
    d: pathThrough(points),
    stroke: inks[line.ink],
    'stroke-width': ticks.lengthMm,
    'stroke-dasharray': `0 ${(ticks.everyMm - thickMm) / 2} ${thickMm} ${(ticks.everyMm - thickMm) / 2}`,
  });
}
