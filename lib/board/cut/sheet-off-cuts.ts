import { type Rectangle, withoutRectangle } from './free-rectangles.ts';

/**
 * What is kept of a sheet, from the rooms that are free on it: these overlap, so that the largest is kept whole, then
 * the largest of what it leaves, and so on; none with a side below the least, metres.
 */
export function offCutsOf(
  free: readonly Rectangle[],
  { kerfM, offCutM }: { readonly kerfM: number; readonly offCutM: number },
): Rectangle[] {
  const kept: Rectangle[] = [];
  let left = [...free];
  for (;;) {
    const [largest] = left.toSorted((a, b) => areaOf(b) - areaOf(a) || a.yM - b.yM || a.xM - b.xM);
    if (!largest) return kept;
    // The room reaches a kerf too far at its right and upper ends.
    const own = { ...largest, widthM: largest.widthM - kerfM, heightM: largest.heightM - kerfM };
    left = withoutRectangle(left, largest);
    if (Math.min(own.widthM, own.heightM) >= offCutM) kept.push(own);
  }
}

/** Area of a rectangle, m2. */
export function areaOf({ widthM, heightM }: { readonly widthM: number; readonly heightM: number }): number {
  return widthM * heightM;
}
