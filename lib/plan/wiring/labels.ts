import { type Job, type Link, terminalId } from '../../model/content/resolved-job.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';

/** Letter of each role on wire labels. */
const letters: Readonly<Record<ConductorRole, string>> = {
  power: 'P',
  ground: 'G',
  speaker: 'L',
  signal: 'S',
  'turn-on': 'T',
  control: 'C',
};

/**
 * A label for every wire, such as `P1` or `L3+`. A label that the job gives counts; one that a released revision
 * fixed stays; the others take the next free number of their role, in the order of the file, past every name that a
 * terminal of the job has. Both conductors of a pair share a number.
 */
export function wireLabels(job: Job, roles: ReadonlyMap<string, ConductorRole>): ReadonlyMap<string, string> {
  const labels = new Map<string, string>();
  const taken = new Set([...terminalNames(job).keys()].map(stemOf));
  const links = job.links.filter(({ origin }) => origin === 'job');
  for (const link of links) {
    const fixed =
      link.given?.label === undefined ? job.releasedLabels[link.id] : `${link.given.label}${signOf(link)}`;
    if (fixed === undefined) continue;
    labels.set(link.id, fixed);
    taken.add(stemOf(fixed));
  }
  for (const label of Object.values(job.releasedLabels)) taken.add(stemOf(label));
  const numbers = new Map<string, string>();
  for (const link of links) {
    if (labels.has(link.id)) continue;
    const pair = link.id.replace(/\.[+-]$/, '');
    const stem = numbers.get(pair) ?? nextFree(letters[roles.get(link.id) ?? 'control'], taken);
    numbers.set(pair, stem);
    taken.add(stem);
    labels.set(link.id, `${stem}${signOf(link)}`);
  }
  return labels;
}

/** Ids of terminals by their name within the device, in capitals, which is how they are read. */
function terminalNames(job: Job): ReadonlyMap<string, readonly string[]> {
  const names = new Map<string, string[]>();
  for (const { id, facts } of job.devices)
    for (const terminal of Object.keys(facts.terminals)) {
      const name = terminal.toUpperCase();
      names.set(name, [...(names.get(name) ?? []), terminalId({ device: id, terminal })]);
    }
  return names;
}

/** Wires whose label is also the name of terminals, with these: on a drawing one is taken for the other. */
export function wireLabelClashes<W extends { readonly label: string }>(
  job: Job,
  wires: readonly W[],
): readonly { readonly wire: W; readonly terminals: readonly string[] }[] {
  const names = terminalNames(job);
  return wires.flatMap((wire) => {
    const terminals = names.get(wire.label.toUpperCase()) ?? [];
    return terminals.length === 0 ? [] : [{ wire, terminals }];
  });
}

function signOf({ id }: Link): string {
  return /\.[+-]$/.exec(id)?.[0].slice(1) ?? '';
}

function stemOf(label: string): string {
  return label.replace(/[+-]$/, '');
}

function nextFree(letter: string, taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`${letter}${number}`)) number += 1;
  return `${letter}${number}`;
}
