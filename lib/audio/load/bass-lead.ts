/**
 * The least size of a bass lead by the load of its channel, AWG: 12 from 4 ohm down to 2, 10 below; null where none is
 * asked for, above 4 ohm. Common practice, no source.
 */
export function leastBassAwg(loadOhm: number): '10' | '12' | null {
  if (loadOhm > 4 + 1e-9) return null;
  return loadOhm >= 2 - 1e-9 ? '12' : '10';
}
