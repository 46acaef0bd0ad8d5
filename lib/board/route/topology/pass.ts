/** Between what a wire has to pass an edge, as far as its terminals tell (m). */
export interface PassRange {
  readonly lowM: number;
  readonly highM: number;
}

export const anywhere: PassRange = { lowM: -Infinity, highM: Infinity };

/**
 * True where a wire may pass in a slot beside those that are held to a part of the edge. Two that are both in line with
 * terminals lie as near to each other as these do.
 */
export function fitsAmong(
  passes: readonly Pass[],
  slot: number,
  { lowM, highM }: PassRange,
  widthM: number,
): boolean {
  const isFixed = lowM === highM;
  for (let at = 0; at < passes.length; at += 1) {
    const pass = passes[at];
    if (!pass) continue;
    const spacingM = isFixed && pass.range.lowM === pass.range.highM ? 0 : (widthM + pass.widthM) / 2;
    if (at < slot ? pass.range.lowM + spacingM > highM + 1e-6 : pass.range.highM - spacingM < lowM - 1e-6)
      return false;
  }
  return true;
}

/** What two ranges have in common; `lowM` above `highM` where that is nothing. */
export function common(a: PassRange, b: PassRange): PassRange {
  return { lowM: Math.max(a.lowM, b.lowM), highM: Math.min(a.highM, b.highM) };
}

/** A wire at one edge of the map. */
export interface Pass {
  readonly wire: number;
  /** Which edge of its way this is, counted from its start. */
  readonly at: number;
  readonly range: PassRange;
  readonly widthM: number;
}
