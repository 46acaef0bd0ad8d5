import type { TerminalSpec } from '../kinds/fields/terminal-spec.ts';

/** True for a name that stands for several like ports, any of which will do: `G2|G3`, `OUT*`. */
export function isPortPattern(name: string): boolean {
  return /[|*]/.test(name);
}

/** The names of a pattern, as written between its strokes. */
export function patternNames(pattern: string): readonly string[] {
  return pattern.split('|').filter((name) => name !== '');
}

/** True where a terminal is one of those that a pattern stands for. A star stands for whatever follows. */
export function matchesPattern(pattern: string, terminal: string): boolean {
  return patternNames(pattern).some((name) =>
    name.endsWith('*') ? terminal.startsWith(name.slice(0, -1)) : terminal === name,
  );
}

/** The reason for which a terminal stays open, under its own name or under a pattern that it is one of. */
export function reasonLeftOpen(
  leftOpen: Readonly<Record<string, string>>,
  device: string,
  terminal: string,
): string | undefined {
  const own = leftOpen[`${device}.${terminal}`];
  if (own !== undefined) return own;
  const found = Object.entries(leftOpen).find(([reference]) => {
    const name = reference.slice(device.length + 1);
    return reference.startsWith(`${device}.`) && isPortPattern(name) && matchesPattern(name, terminal);
  });
  return found?.[1];
}

/** Ports of one device with the same text may stand for one another: one role, joint, size, current and fuse. */
export function portLikeness(terminal: TerminalSpec | undefined, fuseForm: string | undefined): string {
  const { role, joint, takes, stud, ferrule, conductors, current } = terminal ?? {};
  return [
    role,
    joint,
    current,
    takes?.from.areaMm2,
    takes?.to.areaMm2,
    stud,
    ferrule,
    conductors,
    fuseForm,
  ].join(' ');
}
