import { hasFields, type WrittenValue } from '../../model/content/proposal.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { type KeptKind, type KeptValue, keptKinds } from './kept-values.ts';

/** One thing of a kind that is kept, `links.feed-amp`: a link, or whatever the kind holds of one name. */
export interface KeptName {
  readonly kind: KeptKind;
  readonly name: string;
}

/** Reads `links.feed-amp`; null where that names no kind. */
export function keptName(word: string): KeptName | null {
  const dot = word.indexOf('.');
  const kind = keptKinds.find((one) => one === word.slice(0, dot));
  const name = word.slice(dot + 1);
  return dot < 0 || kind === undefined || name === '' ? null : { kind, name };
}

const isOf = ({ kind, path }: KeptValue, name: KeptName) => kind === name.kind && path[1] === name.name;

/** The names that a kind has of what is still proposed. */
export function namesOfKind(values: readonly KeptValue[], kind: KeptKind): readonly string[] {
  return [...new Set(values.filter((one) => one.kind === kind).flatMap(({ path }) => path[1] ?? []))];
}

/**
 * What is kept of some names, with what it can't stand in the file without: of a label its link, of a link the devices at
 * its ends, its cable and the other links in that.
 */
export function valuesNamed(
  values: readonly KeptValue[],
  names: readonly KeptName[],
): ReadonlySet<KeptValue> {
  const found = new Set(values.filter((one) => names.some((name) => isOf(one, name))));
  for (const one of found)
    for (const needed of values.filter((other) => isNeeded(one, other))) found.add(needed);
  return found;
}

/** True for a value that another one can't stand without. A set that grows as it is gone through is gone through whole. */
function isNeeded({ path, value }: KeptValue, other: KeptValue): boolean {
  const [section, id = ''] = other.path;
  if (other.kind !== 'links' || other.path.length !== 2) return false;
  if (path.length > 2) return section === path[0] && id === path[1];
  if (path[0] !== 'links' || !hasFields(value)) return false;
  if (section === 'cables') return value.cable === id;
  if (section === 'links')
    return value.cable !== undefined && hasFields(other.value) && other.value.cable === value.cable;
  return section === 'devices' && [value.from, value.to].some((end) => deviceAt(end) === id);
}

function deviceAt(end: WrittenValue | undefined): string | null {
  return typeof end === 'string' ? linkEndOf(end).device : null;
}
