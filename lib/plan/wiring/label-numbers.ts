import { type Job, terminalId } from '../../model/content/resolved-job.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { type ConductorRole, type ConductorSign, unmarkedTerminal } from '../../model/vocabulary.ts';
import { speakerConductors, speakerSigns } from './speaker-conductors.ts';

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
 * fixed stays; the others take the next free number of their role, past every name that a terminal of the job has: in the
 * order of the file, or of their names in a job that leaves links out, so that one which comes to be written keeps its
 * number, and so do those beside it. Both conductors of a pair share a number; a speaker conductor ends in its sign.
 */
export function wireLabels(job: Job, roles: ReadonlyMap<string, ConductorRole>): ReadonlyMap<string, string> {
  const labels = new Map<string, string>();
  const signs = speakerSigns(job, roles);
  const pairOf = pairNames(speakerConductors(job, signs));
  const taken = new Set([...terminalNames(job).keys()].map(stemName));
  const own = job.links.filter(({ origin }) => origin === 'job');
  const links = job.asksForLinks ? own.toSorted((a, b) => (a.id < b.id ? -1 : 1)) : own;
  const numbers = new Map<string, string>();
  for (const { id, given } of links) {
    const fixed =
      given?.label === undefined ? job.releasedLabels[id] : signedLabel(given.label, signs.get(id));
    if (fixed === undefined) continue;
    labels.set(id, fixed);
    taken.add(stemName(fixed));
    numbers.set(pairOf(id), stemName(fixed));
  }
  for (const label of Object.values(job.releasedLabels)) taken.add(stemName(label));
  for (const { id } of links) {
    if (labels.has(id)) continue;
    const pair = pairOf(id);
    const stem =
      numbers.get(pair) ?? nextFree(letters[roles.get(id) ?? 'control'], (label) => taken.has(label));
    numbers.set(pair, stem);
    taken.add(stem);
    labels.set(id, signedLabel(stem, signs.get(id)));
  }
  return labels;
}

/** The name under which both conductors of a pair are numbered; of any other its own. */
function pairNames(pairs: ReturnType<typeof speakerConductors>): (id: string) => string {
  const names = new Map(
    pairs.flatMap(({ positive, negative }) => [positive, negative].map((id) => [id, positive])),
  );
  return (id) => names.get(id) ?? id;
}

/** Ids of terminals by their name within the device and by their maker's mark, in capitals, which is how they are read. */
export function terminalNames(job: Job): ReadonlyMap<string, readonly string[]> {
  const names = new Map<string, string[]>();
  for (const { id, facts } of job.devices)
    for (const [terminal, { mark }] of Object.entries(facts.terminals))
      for (const each of new Set([terminal, ...(mark && mark !== unmarkedTerminal ? [mark] : [])])) {
        const name = each.toUpperCase();
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

/** A label with the sign of its conductor, written once. */
function signedLabel(label: string, sign: ConductorSign | undefined): string {
  return sign === undefined || label.endsWith(sign) ? label : `${label}${sign}`;
}

/** The first label of some letters that is not taken. */
export function nextFree(letters: string, isTaken: (label: string) => boolean): string {
  let number = 1;
  while (isTaken(`${letters}${number}`)) number += 1;
  return `${letters}${number}`;
}
