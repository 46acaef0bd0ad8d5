import type { z } from 'zod';
import { hasFields, type WrittenValue } from '../../../model/content/proposal.ts';
import type { SourceFile } from '../../../model/content/source-file.ts';
import { isKindName, kinds } from '../../../model/kinds/index.ts';
import { insideOf, withoutWrappers } from '../../../model/writing/schema-shape.ts';
import { headed } from '../../../publish/words/words.ts';
import { remedyFor } from '../../../read/report.ts';
import { coreScalar } from '../../../read/yaml/core-scalar.ts';
import { longestLine } from '../../../read/yaml/write-value.ts';
import { readYaml } from '../../../read/yaml/yaml.ts';
import { between } from '../ask/rows.ts';
import { blockText, filled, type Named } from '../yaml-text.ts';
import { hasTabs, tabsName, toldTabsFault, withTabs } from './like-tabs.ts';
import { notTakenOver } from './makers-own.ts';
import { sizeRange } from './part-columns.ts';

/** One value of a part as its file has it: where it stands, and what it is called here. */
interface Leaf {
  readonly path: readonly string[];
  /** The shortest end of its path that no other value of the part has. */
  readonly name: string;
  /** Longer ends of its path, by which it may be called too. */
  readonly longer?: readonly string[];
  readonly value: WrittenValue;
}

/** What one part says of itself alone: another one that is like it has its own. */
const ownFields: ReadonlySet<string> = new Set(['kind', 'title', 'notes', 'formerly']);

/** A part as its file has it, in short forms as they stand there; null where no file has it. */
export function writtenPart(files: readonly SourceFile[], id: string): Named | null {
  for (const { path, text } of files) {
    const data = readYaml(path, text).value?.data;
    const parts = hasFields(data) ? data.parts : null;
    const part = hasFields(parts) && Object.hasOwn(parts, id) ? parts[id] : null;
    if (hasFields(part)) return part;
  }
  return null;
}

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
      const example = bare.value === null ? '' : `, such as ${bare.name} ${String(bare.value)}`;
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

/** What a part that is like another one has of its own. */
interface LikePart {
  readonly id: string;
  readonly title: string;
  readonly like: string;
  /** Knobs and switches that it has beside those of the other one, or in the place of one of their names. */
  readonly controls?: Named;
}

/** The file of a part that is as another one but for its title, its controls and what a line says. */
export function likeText(own: LikePart, part: Named, line: string): string {
  const { id, like, controls = {} } = own;
  const leaves = leavesOf(part);
  const all = changesIn(part, line);
  const changes = all.filter(({ name }) => name !== titleName);
  const titled = all.find(({ name }) => name === titleName);
  const title = own.title || (titled ? String(titled.value) : titleSo(id, part, leaves, changes));
  const { kind = '', title: _, notes: __, formerly: ___, ...fields } = part;
  const left = leftOutOf(part, changes);
  const taken = Object.fromEntries(Object.entries(fields).filter(([field]) => !left.includes(field)));
  const tabs = changes.find(({ name }) => name === tabsName);
  const figures = changes.filter((one) => one !== tabs);
  const changed = withTabs(
    figures.reduce<Named>((so, { path, value }) => withValue(so, path, value), taken),
    tabs ? String(tabs.value) : null,
  );
  const allControls = { ...(hasFields(changed.controls) && changed.controls), ...controls };
  const but = [...changes.map(({ name }) => name), ...Object.keys(controls)].join(', ');
  return [
    'rackleaf: 1\n',
    `# As ${like}${but === '' ? '' : `, but for ${but}`}. Taken over as they are there, each to be looked at in the leaflet of this part:\n`,
    ...takenOver(part, line, controls).map((one) => `#   ${one}\n`),
    ...(left.length === 0 ? [] : [`# Not taken over, since its own maker tells it: ${left.join(', ')}\n`]),
    blockText({ parts: { [id]: { kind, title, ...changed, ...filled('controls', allControls) } } }, 4),
  ].join('');
}

/**
 * The title of a part with the figures that differ in place of its own; where it names none of these, its words may be of the
 * other part alone, and it is called by its id.
 */
function titleSo(id: string, part: Named, leaves: readonly Leaf[], changes: readonly Leaf[]): string {
  const before = String(part.title ?? '');
  const title = changes.reduce((so, { name, value }) => {
    const own = writtenIn(leaves, name);
    if (/^\d/.test(own)) return so.replace(wholeFigure(own), String(value));
    return own === '' || own === 'true' || own === 'false'
      ? so
      : so.replace(wholeWord(own), (word) => cased(word, String(value)));
  }, before);
  if (title !== before || changes.length === 0) return title;
  return headed(id.replaceAll('-', ' '));
}

/** A word in a text, capital or not: `sealed` in `Sealed enclosure`. */
function wholeWord(word: string): RegExp {
  return new RegExp(`(?<![\\w-])${escaped(word)}(?![\\w-])`, 'i');
}

/** A word that begins as the one does that it takes the place of. */
function cased(before: string, word: string): string {
  const isCapital = before.charAt(0) !== before.charAt(0).toLowerCase();
  return isCapital ? headed(word) : word;
}

/** A figure in a text where it is not the end or the beginning of another one: `0 Ah` is none in `60 Ah`. */
function wholeFigure(figure: string): RegExp {
  return new RegExp(`(?<![\\d.,/])${escaped(figure)}(?![\\w])`);
}

/** A text for a pattern that means it letter by letter. */
function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

/** What only the maker of a part tells of it, and no line of differences did. */
export function untoldByMaker(part: Named, line: string): readonly string[] {
  return leftOutOf(part, changesIn(part, line));
}

function leftOutOf(part: Named, changes: readonly Leaf[]): readonly string[] {
  const told = new Set(changes.map(({ path: [field = ''] }) => field));
  const tabs = hasTabs(part) && !told.has(tabsName) ? [tabsName] : [];
  return [...notTakenOver(part, told), ...tabs];
}

function changesIn(part: Named, line: string): readonly Leaf[] {
  const leaves = [...leavesOf(part), ...lackedBy(part)];
  return differencesOf(line, leaves).flatMap((one) => changeOf(leaves, one) ?? []);
}

/** The figures that no line of differences and no control told of a part, several a line: they are those of the other one. */
export function takenOver(part: Named, line: string, controls: Named): readonly string[] {
  const leaves = leavesOf(part);
  const changes = changesIn(part, line);
  const told = new Set(changes.map(({ name }) => name));
  const without = leftOutOf(part, changes);
  const left = leaves.filter(
    ({ name, value, path: [field = '', key = ''] }) =>
      !told.has(name) &&
      !without.includes(field) &&
      !(field === 'controls' && Object.hasOwn(controls, key)) &&
      /^[\d.]/.test(String(value)),
  );
  const lines: string[] = [];
  for (const { name, value } of left) {
    const one = `${name} ${String(value)}`;
    const last = lines.at(-1);
    if (last !== undefined && last.length + one.length < longestLine)
      lines[lines.length - 1] = `${last}, ${one}`;
    else lines.push(one);
  }
  return lines;
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

const titleName = 'title';

/** What a part does not say and its kind may: its title, and values of it or of one of its fields, such as its supply. */
function lackedBy(part: Named): readonly Leaf[] {
  const kind = String(part.kind);
  const paths = isKindName(kind) ? lackedPaths(kinds[kind].schema, part) : [];
  const told = new Set(leavesOf(part).map(({ name }) => name));
  const lacked = paths.map((path) => ({ path, name: path.at(-1) ?? '', value: null }));
  const isPlain = ({ name, path: [field = ''] }: Leaf) => !told.has(name) && !ownFields.has(field);
  const tabs = hasTabs(part) ? [{ path: [tabsName], name: tabsName, longer: ['tab'], value: null }] : [];
  return [
    { path: [titleName], name: titleName, value: null },
    ...tabs,
    ...[...lacked, ...marksOf(part)].filter(isPlain),
  ];
}

/** What its maker printed at the terminals of each row, of several with bars between: `OUT1..2.mark FRONT L|FRONT R`. */
function marksOf({ terminals }: Named): readonly Leaf[] {
  const paths = Object.keys(hasFields(terminals) ? terminals : {}).map((row) => ['terminals', row, 'mark']);
  return paths.map((path) => ({ path, name: labelOf(path.slice(1)), value: null }));
}

function lackedPaths(schema: z.ZodType, value: Named, isOuter = true): readonly (readonly string[])[] {
  const inside = insideOf(withoutWrappers(schema));
  if (inside.shape !== 'object') return [];
  return [...inside.fields].flatMap(([name, field]): readonly (readonly string[])[] => {
    const own = value[name];
    if (own === undefined) return insideOf(withoutWrappers(field)).shape === 'leaf' ? [[name]] : [];
    return isOuter && hasFields(own) ? lackedPaths(field, own, false).map((path) => [name, ...path]) : [];
  });
}

/** A name at the beginning of a text, its hyphens written or left out. */
function spelling(name: string, behind: string): RegExp {
  const plain = escaped(name).replaceAll('-', '(?:-|\\s+)');
  return new RegExp(`^${plain}${behind}`, 'i');
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

function writtenIn(leaves: readonly Leaf[], name: string): string {
  return String(leaves.find((leaf) => leaf.name === name)?.value ?? '');
}

function leavesOf(part: Named): readonly Leaf[] {
  const own = Object.entries(withTabs(part, null)).filter(([key]) => !ownFields.has(key));
  const paths = pathsOf(Object.fromEntries(own), []);
  const ends = paths.map(({ path }) => path.map((_, at) => labelOf(path.slice(path.length - 1 - at))));
  const shared = new Map<string, number>();
  for (const end of ends.flat()) shared.set(end, (shared.get(end) ?? 0) + 1);
  return paths.map(({ path, value }, at) => {
    const [name = labelOf(path), ...longer] = (ends[at] ?? []).filter((end) => shared.get(end) === 1);
    return { path, value, name, longer };
  });
}

/** `terminals`, `B+, GND`, `takes` is `terminals.B+.takes`: a comma parts differences from each other. */
function labelOf(path: readonly string[]): string {
  return path.map((key) => key.split(',')[0]).join('.');
}

function pathsOf(value: WrittenValue, path: readonly string[]): readonly Omit<Leaf, 'name'>[] {
  if (hasFields(value)) return Object.entries(value).flatMap(([key, one]) => pathsOf(one, [...path, key]));
  return Array.isArray(value) ? [] : [{ path, value }];
}

function withValue(fields: Named, [key = '', ...rest]: readonly string[], value: WrittenValue): Named {
  const inner = fields[key];
  return { ...fields, [key]: rest.length > 0 && hasFields(inner) ? withValue(inner, rest, value) : value };
}
