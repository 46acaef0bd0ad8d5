/** The positions of a switch or a jumper for a level: `0 / -3 / -6 dB`, each in dB. Null for what is none. */
export function levelSteps(sets: string): readonly string[] | null {
  const steps = sets.split('/').map((one) => /^([-+\u2212]?\d+(?:\.\d+)?)(?:\s*dB)?$/.exec(one.trim())?.[1]);
  if (steps.length < 2 || !/dB\s*$/.test(sets)) return null;
  const told = steps.flatMap((one) => (one === undefined ? [] : [`${one.replace('\u2212', '-')} dB`]));
  return told.length === steps.length ? told : null;
}
