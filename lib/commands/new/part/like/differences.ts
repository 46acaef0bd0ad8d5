import { remedyFor } from '../../../../read/report.ts';
import { coreScalar } from '../../../../read/yaml/core-scalar.ts';
import { between } from '../../ask/rows.ts';
import type { Named } from '../../yaml-text.ts';
import { sizeRange } from '../part-columns.ts';
import { tabsName, toldTabsFault } from './like-tabs.ts';
import { type Leaf, labelOf, lackedBy, leavesOf, titleName } from './part-leaves.ts';

/** What may differ from a part, one text a value, `capacity 60 Ah`. */
export function mayDiffer(part: Named): readonly string[] {
  return leavesOf(part).map(({ name, value }) => `${name} ${String(value)}`);
}

/** What of a line of differences, `capacity 74 Ah, cold-cranking 680 A`, can't be read; null where all can. */
export function differenceFault(part: Named, line: string): string | null {
  const leaves = [...leavesOf(part), ...lackedBy(part)];
  const names = leavesOf(part).map(({ name }) => name);
  for (const one of differencesOf(line, leaves)) {
    const change = changeOf(leaves, one);
    const ofTabs = change?.name === tabsName ? toldTabsFault(String(change.value)) : null;
    if (ofTabs !== null) return ofTabs;
    if (change) continue;
    const bare = leaves.find((known) => spelling(known.name, '$').test(one));
    if (bare !== undefined) {
      const example = bare.isWhole
        ? `, such as ${bare.name} none where the part has none`
        : bare.value === null
          ? ''
          : `, such as ${bare.name} ${String(bare.value)}`;
      return `has no value of ${bare.name}: write it behind the name${example}`;
    }
    const [name = ''] = one.split(/:|\s+(?=[\d.])/);
    const last = name.trim().split('.').at(-1) ?? '';
    const called = leavesOf(part).find(({ path }) => path.length > 1 && path.at(-1) === last);
    if (called)
      return `"${one}" names nothing that the part has: its ${last} is called ${called.name}, and stands at ${labelOf(called.path)}, such as ${called.name} ${String(called.value)}`;
    return `"${one}" names nothing that the part has; ${remedyFor(name.trim().replaceAll(/\s+/g, '-'), names)}. What it lacks is written into the file`;
  }
  return null;
}

/** The values of a part that a line of differences gives. */
export function changesIn(part: Named, line: string): readonly Leaf[] {
  const leaves = [...leavesOf(part), ...lackedBy(part)];
  return differencesOf(line, leaves).flatMap((one) => changeOf(leaves, one) ?? []);
}

/** The differences in a line; a figure behind a title belongs to it, `title Amplifier, 4 x 50 W`, as does all in its quotes. */
function differencesOf(line: string, leaves: readonly Leaf[]): readonly string[] {
  const quoted = /\btitle\s*:?\s*"[^"]*"/i.exec(line)?.[0];
  const [before = '', ...behind] = quoted === undefined ? [line] : line.split(quoted);
  const parted = [
    ...commaParted(before),
    ...(quoted === undefined ? [] : [quoted.replaceAll('"', '')]),
    ...commaParted(behind.join('')),
  ];
  const differences: string[] = [];
  for (const one of parted) {
    const last = differences.at(-1) ?? '';
    const goesOn = quoted === undefined && spelling(titleName, '\\b').test(last) && /^\d/.test(one);
    if (goesOn && changeOf(leaves, one) === null) differences[differences.length - 1] = `${last}, ${one}`;
    else differences.push(one);
  }
  return differences;
}

function commaParted(line: string): readonly string[] {
  return line
    .split(between)
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

/** A name at the beginning of a text, its hyphens written or left out. */
function spelling(name: string, behind: string): RegExp {
  const plain = escaped(name).replaceAll('-', '(?:-|\\s+)');
  return new RegExp(`^${plain}${behind}`, 'i');
}

/** A text for a pattern that means it letter by letter. */
export function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

/** The value that a text gives: of the names that it begins with the longest. */
function changeOf(leaves: readonly Leaf[], text: string): Leaf | null {
  const called = leaves
    .flatMap((leaf) => [leaf.name, ...(leaf.longer ?? [])].map((name) => ({ leaf, name })))
    .filter(({ name }) => spelling(name, '(?:\\s*:|\\s)').test(text))
    .toSorted((a, b) => b.name.length - a.name.length)[0];
  const meant = called?.leaf;
  const written = called && text.replace(spelling(called.name, '\\s*:?\\s*'), '').trim();
  if (!meant || written === undefined || written === '') return null;
  if (meant.isWhole) return /^none$/i.test(written) ? meant : null;
  if (meant.path.at(-1) === 'mark' && written.includes('|'))
    return { ...meant, value: written.split('|').map((one) => one.trim()) };
  if (isOfSizes(meant)) return { ...meant, value: sizeRange(written) };
  const read = coreScalar({ yes: 'true', no: 'false' }[written.toLowerCase()] ?? written);
  return { ...meant, value: typeof read === 'object' && read !== null ? written : read };
}

/** True for the sizes that a terminal takes: they may be told as a leaflet does, by the thickest alone. */
function isOfSizes({ path, value }: Leaf): boolean {
  return path.at(-1) === 'takes' && /\b(?:AWG|mm2)\b/.test(String(value));
}
