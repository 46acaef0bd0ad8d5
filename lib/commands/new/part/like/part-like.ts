import { hasFields, type WrittenValue } from '../../../../model/content/proposal.ts';
import type { SourceFile } from '../../../../model/content/source-file.ts';
import { headed } from '../../../../publish/words/words.ts';
import { longestLine } from '../../../../read/yaml/write-value.ts';
import { readYaml } from '../../../../read/yaml/yaml.ts';
import { blockText, filled, type Named } from '../../yaml-text.ts';
import { changesIn, escaped } from './differences.ts';
import { hasTabs, tabsName, withTabs } from './like-tabs.ts';
import { notTakenOver } from './makers-own.ts';
import { type Leaf, leavesOf, titleName } from './part-leaves.ts';

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
    figures.reduce<Named>(
      (so, { path, value, isWhole }) => (isWhole ? without(so, path) : withValue(so, path, value)),
      taken,
    ),
    tabs ? String(tabs.value) : null,
  );
  const allControls = { ...(hasFields(changed.controls) && changed.controls), ...controls };
  const but = [
    ...changes.map(({ name, isWhole }) => (isWhole ? `${name} (it has none)` : name)),
    ...Object.keys(controls),
  ].join(', ');
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

/** What only the maker of a part tells of it, and no line of differences did. */
export function untoldByMaker(part: Named, line: string): readonly string[] {
  return leftOutOf(part, changesIn(part, line));
}

function leftOutOf(part: Named, changes: readonly Leaf[]): readonly string[] {
  const told = new Set(changes.map(({ path: [field = ''] }) => field));
  const tabs = hasTabs(part) && !told.has(tabsName) ? [tabsName] : [];
  return [...notTakenOver(part, told), ...tabs];
}

/** The figures that no line of differences and no control told of a part, several a line: they are those of the other one. */
export function takenOver(part: Named, line: string, controls: Named): readonly string[] {
  const leaves = leavesOf(part);
  const changes = changesIn(part, line);
  const told = new Set(changes.map(({ name }) => name));
  const untold = leftOutOf(part, changes);
  const gone = changes.filter(({ isWhole }) => isWhole).map(({ path }) => path);
  const isGone = (path: readonly string[]) =>
    gone.some((whole) => whole.every((key, at) => path[at] === key));
  const left = leaves.filter(
    ({ name, value, path: [field = '', key = ''], path }) =>
      !told.has(name) &&
      !untold.includes(field) &&
      !isGone(path) &&
      !(field === 'controls' && Object.hasOwn(controls, key)) &&
      (typeof value === 'boolean' || /^[\d.]/.test(String(value))),
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

function writtenIn(leaves: readonly Leaf[], name: string): string {
  return String(leaves.find((leaf) => leaf.name === name)?.value ?? '');
}

/** Fields without what stands at a path; a field that nothing is left in goes with it. */
function without(fields: Named, [key = '', ...rest]: readonly string[]): Named {
  const inner = fields[key];
  const left = rest.length > 0 && hasFields(inner) ? without(inner, rest) : {};
  const others = Object.entries(fields).filter(([name]) => name !== key);
  if (Object.keys(left).length === 0) return Object.fromEntries(others);
  return Object.fromEntries(Object.entries(fields).map(([name, one]) => [name, name === key ? left : one]));
}

function withValue(fields: Named, [key = '', ...rest]: readonly string[], value: WrittenValue): Named {
  const inner = fields[key];
  return { ...fields, [key]: rest.length > 0 && hasFields(inner) ? withValue(inner, rest, value) : value };
}
