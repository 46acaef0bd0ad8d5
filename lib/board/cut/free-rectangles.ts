/** An upright rectangle on a sheet, metres from its lower left corner. */
export interface Rectangle {
  readonly xM: number;
  readonly yM: number;
  readonly widthM: number;
  readonly heightM: number;
}

/** Lengths below a tenth of a micrometre are rounding. */
const nothingM = 1e-7;

/** True where two rectangles share area. */
export function rectanglesMeet(a: Rectangle, b: Rectangle): boolean {
  return (
    a.xM < b.xM + b.widthM - nothingM &&
    b.xM < a.xM + a.widthM - nothingM &&
    a.yM < b.yM + b.heightM - nothingM &&
    b.yM < a.yM + a.heightM - nothingM
  );
}

function holds(outer: Rectangle, inner: Rectangle): boolean {
  return (
    inner.xM >= outer.xM - nothingM &&
    inner.yM >= outer.yM - nothingM &&
    inner.xM + inner.widthM <= outer.xM + outer.widthM + nothingM &&
    inner.yM + inner.heightM <= outer.yM + outer.heightM + nothingM
  );
}

/**
 * The largest free rectangles that are left once one more is taken: each that meets it is cut into the parts left,
 * right, below and above it, and those that lie in another one are dropped (method of maximal rectangles, after
 * Jylanki, A thousand ways to pack the bin, 2010).
 */
export function withoutRectangle(free: readonly Rectangle[], taken: Rectangle): Rectangle[] {
  const parts = free.flatMap((one) => (rectanglesMeet(one, taken) ? partsRound(one, taken) : [one]));
  return parts.filter((part, at) =>
    parts.every((other, place) => place === at || !holds(other, part) || (holds(part, other) && at < place)),
  );
}

function partsRound(one: Rectangle, taken: Rectangle): Rectangle[] {
  const right = taken.xM + taken.widthM;
  const top = taken.yM + taken.heightM;
  const parts = [
    { ...one, widthM: taken.xM - one.xM },
    { ...one, xM: right, widthM: one.xM + one.widthM - right },
    { ...one, heightM: taken.yM - one.yM },
    { ...one, yM: top, heightM: one.yM + one.heightM - top },
  ];
  return parts.filter(({ widthM, heightM }) => widthM > nothingM && heightM > nothingM);
}
