/**
 * Nominal diameter of a thread, metres: `M6` by ISO 261, `#8` by ASME B18.6 (0.060 in + 0.013 in by number). Null for
 * what is written otherwise.
 */
export function threadM(thread: string): number | null {
  const metric = /^M(\d+(?:\.\d+)?)$/.exec(thread)?.[1];
  if (metric !== undefined) return Number(metric) / 1000;
  const numbered = /^#(\d+)$/.exec(thread)?.[1];
  return numbered === undefined ? null : (0.06 + 0.013 * Number(numbered)) * 0.0254;
}
