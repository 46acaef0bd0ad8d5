/** A point on paper, millimetres from the left and from the top of the sheet. */
export interface PaperPoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** An upright rectangle on paper. */
export interface PaperBox {
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

/** A straight stroke on paper. */
export interface PaperSegment {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
}

/** A point, written short. */
export function at(xMm: number, yMm: number): PaperPoint {
  return { xMm, yMm };
}

/** A box from its top left corner and its size. */
export function boxAt(leftMm: number, topMm: number, widthMm: number, heightMm: number): PaperBox {
  return { leftMm, topMm, rightMm: leftMm + widthMm, bottomMm: topMm + heightMm };
}

/** The box round all the points. Throws on none: that is a bug of the caller. */
export function boxRound(points: readonly PaperPoint[]): PaperBox {
  if (points.length === 0) throw new RangeError('no points to put a box round');
  const xs = points.map((point) => point.xMm);
  const ys = points.map((point) => point.yMm);
  return {
    leftMm: Math.min(...xs),
    topMm: Math.min(...ys),
    rightMm: Math.max(...xs),
    bottomMm: Math.max(...ys),
  };
}

/** The box grown by a margin on all sides, shrunk by a negative one. */
export function grown(box: PaperBox, byMm: number): PaperBox {
  return {
    leftMm: box.leftMm - byMm,
    topMm: box.topMm - byMm,
    rightMm: box.rightMm + byMm,
    bottomMm: box.bottomMm + byMm,
  };
}

export function widthMm(box: PaperBox): number {
  return box.rightMm - box.leftMm;
}

export function heightMm(box: PaperBox): number {
  return box.bottomMm - box.topMm;
}

export function centreOf(box: PaperBox): PaperPoint {
  return at((box.leftMm + box.rightMm) / 2, (box.topMm + box.bottomMm) / 2);
}

/** The corners, clockwise from the top left. */
export function cornersOf({ leftMm, topMm, rightMm, bottomMm }: PaperBox): PaperPoint[] {
  return [at(leftMm, topMm), at(rightMm, topMm), at(rightMm, bottomMm), at(leftMm, bottomMm)];
}

/** True where the two boxes share area; boxes that only touch do not meet. */
export function boxesMeet(a: PaperBox, b: PaperBox): boolean {
  return a.leftMm < b.rightMm && b.leftMm < a.rightMm && a.topMm < b.bottomMm && b.topMm < a.bottomMm;
}

/** True where the inner box lies wholly in the outer one, edges included. */
export function boxHolds(outer: PaperBox, inner: PaperBox): boolean {
  return (
    inner.leftMm >= outer.leftMm &&
    inner.rightMm <= outer.rightMm &&
    inner.topMm >= outer.topMm &&
    inner.bottomMm <= outer.bottomMm
  );
}

/** The point of the box that lies nearest to a given point; the point itself where it lies inside. */
export function nearestOf(box: PaperBox, point: PaperPoint): PaperPoint {
  return at(
    Math.min(Math.max(point.xMm, box.leftMm), box.rightMm),
    Math.min(Math.max(point.yMm, box.topMm), box.bottomMm),
  );
}

/** The part of a stroke inside something, as shares of its length. */
interface Shares {
  enters: number;
  leaves: number;
}

/**
 * The shares of a stroke at which it enters and leaves a box (clipping after Liang and Barsky); null where it runs
 * beside it. A stroke along the rim counts where `withRim` says so.
 */
export function sharesInBox(
  { from, to }: PaperSegment,
  box: PaperBox,
  withRim: boolean,
): Readonly<Shares> | null {
  const shares: Shares = { enters: 0, leaves: 1 };
  const inX = narrow(shares, from.xMm, to.xMm - from.xMm, box.leftMm, box.rightMm, withRim);
  return inX && narrow(shares, from.yMm, to.yMm - from.yMm, box.topMm, box.bottomMm, withRim) ? shares : null;
}

/** Narrows shares to where a stroke is between two limits along one axis; false where it runs beside them. */
function narrow(
  shares: Shares,
  start: number,
  change: number,
  low: number,
  high: number,
  withRim: boolean,
): boolean {
  if (change === 0) return withRim ? start >= low && start <= high : start > low && start < high;
  const [first, last] = change > 0 ? [low, high] : [high, low];
  shares.enters = Math.max(shares.enters, (first - start) / change);
  shares.leaves = Math.min(shares.leaves, (last - start) / change);
  return true;
}

/** True where a stroke passes through the inside of a box. */
export function segmentMeetsBox(segment: PaperSegment, box: PaperBox): boolean {
  const { from, to } = segment;
  // Most strokes lie wholly on one side.
  if (Math.max(from.xMm, to.xMm) <= box.leftMm || Math.min(from.xMm, to.xMm) >= box.rightMm) return false;
  if (Math.max(from.yMm, to.yMm) <= box.topMm || Math.min(from.yMm, to.yMm) >= box.bottomMm) return false;
  const inside = sharesInBox(segment, box, false);
  if (!inside) return false;
  const isPoint = to.xMm === from.xMm && to.yMm === from.yMm;
  return isPoint ? inside.enters <= inside.leaves : inside.enters < inside.leaves;
}

/** True where two strokes cross at a point inside both; strokes that share an end do not. */
export function segmentsCross(a: PaperSegment, b: PaperSegment): boolean {
  return (
    turnOf(a.from, a.to, b.from) * turnOf(a.from, a.to, b.to) < 0 &&
    turnOf(b.from, b.to, a.from) * turnOf(b.from, b.to, a.to) < 0
  );
}

/** Which way three points turn: the sign of what they enclose. */
function turnOf(p: PaperPoint, q: PaperPoint, r: PaperPoint): number {
  return (q.xMm - p.xMm) * (r.yMm - p.yMm) - (q.yMm - p.yMm) * (r.xMm - p.xMm);
}

/** The straight pieces of a line from point to point. */
export function segmentsOf(points: readonly PaperPoint[]): PaperSegment[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from ? [{ from, to }] : [];
  });
}
