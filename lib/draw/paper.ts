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

/**
 * The shares of a stroke at which it enters and leaves a box (clipping after Liang and Barsky); null where it runs
 * beside it. A stroke along the rim counts where `withRim` says so.
 */
export function sharesInBox(
  { from, to }: PaperSegment,
  box: PaperBox,
  withRim: boolean,
): { readonly enters: number; readonly leaves: number } | null {
  const dx = to.xMm - from.xMm;
  const dy = to.yMm - from.yMm;
  let enters = 0;
  let leaves = 1;
  const sides: readonly (readonly [number, number])[] = [
    [-dx, from.xMm - box.leftMm],
    [dx, box.rightMm - from.xMm],
    [-dy, from.yMm - box.topMm],
    [dy, box.bottomMm - from.yMm],
  ];
  for (const [towards, room] of sides) {
    if (towards === 0) {
      if (room < 0 || (room === 0 && !withRim)) return null;
    } else if (towards < 0) enters = Math.max(enters, room / towards);
    else leaves = Math.min(leaves, room / towards);
  }
  return { enters, leaves };
}

/** True where a stroke passes through the inside of a box. */
export function segmentMeetsBox(segment: PaperSegment, box: PaperBox): boolean {
  const inside = sharesInBox(segment, box, false);
  if (!inside) return false;
  const { from, to } = segment;
  const isPoint = to.xMm === from.xMm && to.yMm === from.yMm;
  return isPoint ? inside.enters <= inside.leaves : inside.enters < inside.leaves;
}

/** True where two strokes cross at a point inside both; strokes that share an end do not. */
export function segmentsCross(a: PaperSegment, b: PaperSegment): boolean {
  const turn = (p: PaperPoint, q: PaperPoint, r: PaperPoint): number =>
    (q.xMm - p.xMm) * (r.yMm - p.yMm) - (q.yMm - p.yMm) * (r.xMm - p.xMm);
  return (
    turn(a.from, a.to, b.from) * turn(a.from, a.to, b.to) < 0 &&
    turn(b.from, b.to, a.from) * turn(b.from, b.to, a.to) < 0
  );
}
