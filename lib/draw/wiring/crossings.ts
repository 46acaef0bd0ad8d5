import { directionOf } from '../bent-line.ts';
import { pointIn } from '../board/clip.ts';
import type { PaperBox, PaperPoint, PaperSegment } from '../paper.ts';
import { at, segmentsCross, segmentsOf } from '../paper.ts';
import { type Parent, pathThrough } from '../pen.ts';
import { drawGap } from './conductor-body.ts';
import type { LaidRoute } from './strands.ts';

/** Clear paper between what passes over and the ends of what passes below. */
const gapMm = 0.5;

/** Clears the way of a route where it passes over others that were laid before it: these end beside it, and so lie below. */
export function clearCrossings(
  parent: Parent,
  over: LaidRoute,
  below: readonly LaidRoute[],
  clip: PaperBox | null,
): void {
  for (const lower of below)
    for (const { point, along } of crossingsOf(over.line, lower.line)) {
      if (!pointIn(point, clip)) continue;
      const reachMm = lower.widthMm / 2 + 0.3;
      const [from, to] = [-reachMm, reachMm].map((by) =>
        at(point.xMm + along.xMm * by, point.yMm + along.yMm * by),
      );
      if (from && to) drawGap(parent, pathThrough([from, to]), over.widthMm + 2 * gapMm);
    }
}

/** Where one line crosses another, and which way the first runs there. */
export function crossingsOf(
  over: readonly PaperPoint[],
  lower: readonly PaperPoint[],
): { readonly point: PaperPoint; readonly along: PaperPoint }[] {
  const others = segmentsOf(lower);
  return segmentsOf(over).flatMap((segment) => {
    const along = directionOf(segment.from, segment.to);
    return others.flatMap((other) =>
      along && segmentsCross(segment, other) ? [{ point: meetingOf(segment, other), along }] : [],
    );
  });
}

function meetingOf(a: PaperSegment, b: PaperSegment): PaperPoint {
  const [dx, dy] = [a.to.xMm - a.from.xMm, a.to.yMm - a.from.yMm];
  const [ex, ey] = [b.to.xMm - b.from.xMm, b.to.yMm - b.from.yMm];
  const share = ((b.from.xMm - a.from.xMm) * ey - (b.from.yMm - a.from.yMm) * ex) / (dx * ey - dy * ex);
  return at(a.from.xMm + dx * share, a.from.yMm + dy * share);
}
