import { hasFields } from '../../model/content/proposal.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { idPattern } from '../../model/fields.ts';
import type { Part } from '../../model/kinds/index.ts';
import { keysOf } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { idWords } from '../../model/writing/id-words.ts';
import { remedyFor } from '../report.ts';
import { valueAt } from '../schema/schema-walk.ts';
import { readYaml } from '../yaml/yaml.ts';

/** Names that may stand at a place of a file, each with its title. */
type Titles = Readonly<Record<string, string>>;
type Path = readonly string[];
type NamesAt = (path: Path, data: unknown) => Titles | null;

/** What a shop has that its files name. */
interface Named {
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
}

/**
 * Problems of a file that could not be read, those of a name that is no id with the name that was meant: where somebody wrote
 * a title, several names in one, or the terminal of a device.
 */
export function withNamesMeant(
  problems: readonly Problem[],
  { path: file, text }: SourceFile,
  namesAt: NamesAt,
): Problem[] {
  const own = problems.some(({ where }) => where.path !== '') ? readYaml(file, text).value?.data : undefined;
  return problems.map((problem) => {
    const path = keysOf(problem.where.path);
    const value = valueAt(own, path);
    if (problem.remedy !== undefined || typeof value !== 'string') return problem;
    const names = namesAt(path, own);
    const isPlain = idPattern.test(value) && path[0] !== 'links';
    return names && !isPlain ? { ...problem, remedy: remedyOf(value, names, path) } : problem;
  });
}

function remedyOf(value: string, names: Titles, path: Path): string {
  const meant = nameOf(value, names);
  if (meant !== null) return `write ${meant}`;
  const several = value.split(/\s*[,&|+/]\s*|\s+(?:and\s+)?/).map((one) => nameOf(one, names));
  if (path[0] === 'devices' && path[2] === 'in' && several.length > 1 && several.every((one) => one !== null))
    return `write a list, in: [${several.join(', ')}]`;
  const [device = '', ...outputs] = value.split(/[.\s]+/);
  if (path[2] === 'driven-by' && Object.hasOwn(names, device))
    return `write driven-by: ${device}; the outputs of it that drive it are told beside it, ${channelsIn(outputs.join(' '))}`;
  return remedyFor(idWords(value), Object.keys(names));
}

/** The channels that somebody told behind the name of an amplifier, `CH1-2`; as an example where that can't be told. */
function channelsIn(outputs: string): string {
  const [, first, last] = /^[A-Za-z]*(\d+)[+-]?(?:[\s/,-]+[A-Za-z]*(\d+)[+-]?)?$/.exec(outputs) ?? [];
  if (first === undefined) return 'such as channels: [1, 2]';
  return last === undefined ? `channels: [${first}]` : `channels: [${first}..${last}]`;
}

/** The name that a text is: its title, or the name with blanks or capitals. Null where it is none. */
function nameOf(text: string, names: Titles): string | null {
  const words = idWords(text.replace(/\.ya?ml$/, ''));
  if (Object.hasOwn(names, words)) return words;
  return Object.entries(names).find(([, title]) => idWords(title) === words)?.[0] ?? null;
}

/** The names that a job may write at a place. */
export function jobNamesAt({ parts, vehicles }: Named): NamesAt {
  return (path, data) => {
    const [first, , field] = path;
    const named = valueAt(data, ['vehicle']);
    const vehicle = typeof named === 'string' ? vehicles[named] : undefined;
    if (first === 'vehicle') return titlesOf(vehicles);
    if (first === 'space' || (first === 'boards' && field === 'space')) return titlesOf(vehicle?.spaces);
    if (field === 'ground') return vehicle ? ownNames(vehicle.grounds) : null;
    if (first !== 'devices') return null;
    if (field === 'part' || field === 'box') return titlesOf(parts);
    if (field === 'in') return titlesOf(vehicle?.places);
    if (field === 'on') return ownNames(valueAt(data, ['boards']));
    if (field === 'driven-by') return ownNames(valueAt(data, ['devices']));
    return field === 'fed-by' && vehicle ? ownNames(valueAt(data, ['devices']), vehicle.fitted) : null;
  };
}

/** The names that a vehicle may write at a place. */
export function vehicleNamesAt({ parts }: Pick<Named, 'parts'>): NamesAt {
  return (path, data) => {
    const [first, , field, inside] = path;
    if (first === 'links' && (field === 'from' || field === 'to')) {
      const grounds = Object.keys(ownNames(valueAt(data, ['grounds'])));
      return Object.fromEntries(grounds.map((name) => [`body.${name}`, name]));
    }
    if (first === 'fitted' && field === 'part') return titlesOf(parts);
    if (first !== 'routes') return null;
    if (field === 'reaches' && inside === 'space') return ownNames(valueAt(data, ['spaces']));
    return field === 'ends' ? ownNames(valueAt(data, ['fitted']), valueAt(data, ['places'])) : null;
  };
}

function titlesOf(things: Readonly<Record<string, { readonly title?: string }>> = {}): Titles {
  return Object.fromEntries(Object.entries(things).map(([id, { title }]) => [id, title ?? id]));
}

/** Names of blocks that a file has itself, by their titles where they are written. */
function ownNames(...blocks: readonly unknown[]): Titles {
  const all = blocks.flatMap((block) => (hasFields(block) ? Object.keys(block) : []));
  return Object.fromEntries(all.map((id) => [id, id]));
}
