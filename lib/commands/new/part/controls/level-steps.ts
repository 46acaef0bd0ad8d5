import type { Named } from '../../yaml-text.ts';

/** The positions of a switch or a jumper for a level: `0 / -3 / -6 dB`, each in dB. Null for what is none. */
export function levelSteps(sets: string): readonly string[] | null {
  const steps = sets.split('/').map((one) => /^([-+\u2212]?\d+(?:\.\d+)?)(?:\s*dB)?$/.exec(one.trim())?.[1]);
  if (steps.length < 2 || !/dB\s*$/.test(sets)) return null;
  const told = steps.flatMap((one) => (one === undefined ? [] : [`${one.replace('\u2212', '-')} dB`]));
  return told.length === steps.length ? told : null;
}

/** A jumper for a level as it is told in one cell: `TWEETER 0 / -3 dB`, its name and its steps, as delivered first. */
export function levelJumper(written: string): { name: string; steps: readonly string[] } | null {
  const [, name = '', sets = ''] = /^([A-Za-z][\w-]*)\s+(.+)$/.exec(written.trim()) ?? [];
  const steps = levelSteps(sets);
  return steps === null ? null : { name, steps };
}

/** A jumper as a control of a file: it stays as its maker delivers it until somebody asks for another level. */
export function jumperControl({ name, steps }: { name: string; steps: readonly string[] }): Named {
  const [safe = ''] = steps;
  return {
    [name]: {
      what: 'level',
      form: 'switch',
      panel: 'face',
      positions: [...steps],
      safe,
      why: 'as its maker delivers it',
    },
  };
}
