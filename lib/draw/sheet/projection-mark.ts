import { lines } from '../line-styles.ts';
import { at, type PaperPoint } from '../paper.ts';
import { drawCircle, drawLine, drawShape, type Parent } from '../pen.ts';

/** Size of the mark on paper. */
export const projectionMarkMm = { width: 22, height: 8 } as const;

/**
 * The mark of the projection method after ISO 5456-2 (mem): a truncated cone from the side, small end to
 * the left, and seen from its small end. In third-angle projection that view stands on the side from which
 * it is taken, in first-angle projection on the other.
 */
export function drawProjectionMark(parent: Parent, topLeft: PaperPoint, method: 'first' | 'third'): void {
  const middleMm = topLeft.yMm + projectionMarkMm.height / 2;
  const endViewMm = topLeft.xMm + (method === 'third' ? 4 : 17);
  const sideMm = topLeft.xMm + (method === 'third' ? 12 : 0.5);
  drawCircle(parent, at(endViewMm, middleMm), 3.5, lines.part);
  drawCircle(parent, at(endViewMm, middleMm), 1.75, lines.part);
  drawShape(
    parent,
    [
      at(sideMm, middleMm - 1.75),
      at(sideMm + 9, middleMm - 3.5),
      at(sideMm + 9, middleMm + 3.5),
      at(sideMm, middleMm + 1.75),
    ],
    lines.part,
  );
  drawLine(parent, [at(topLeft.xMm - 1, middleMm), at(topLeft.xMm + 23, middleMm)], lines.centre);
}
