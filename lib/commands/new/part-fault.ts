import type { KindName, Part } from '../../model/kinds/index.ts';
import type { Problem } from '../../model/problem.ts';
import { nearestName } from '../../read/names/nearest-name.ts';
import { partNames } from './part-names.ts';
import { problemsOfPart, unreadFault } from './unread.ts';

type Parts = Readonly<Record<string, Part>>;

/** The parts that could be read, and what was found in the files of all. */
export interface Stocked {
  readonly parts: Parts;
  readonly problems: readonly Problem[];
}

/** What is wrong with a part that is there, where it is of none of the kinds asked for. */
export function otherKind(parts: Parts, kinds: readonly KindName[], named: unknown): string | null {
  const name = String(named);
  const part = parts[name];
  if (!part || kinds.includes(part.kind)) return null;
  const near = nearestName(name, partNames(parts, ...kinds));
  const instead = near === null ? `a part of the kind ${kinds.join(', ')} can` : `did you mean "${near}"?`;
  return `"${name}" is of the kind ${part.kind}: it can't stand here; ${instead}`;
}

/**
 * What is said of a part that the catalogue lacks: what keeps it from being read where it is written already; else what
 * of these kinds may have been meant, and how it is written.
 */
export function missingPart(
  { parts, problems }: Stocked,
  kinds: readonly KindName[],
  named: unknown,
): string | null {
  const name = String(named);
  if (parts[name]) return null;
  const unread = unreadFault(problemsOfPart(name, problems));
  if (unread !== null) return unread;
  const [first, ...others] = kinds;
  const only = others.length === 0 ? first : undefined;
  const near = nearestName(name, partNames(parts, ...kinds));
  const kind = only ?? (near === null ? undefined : parts[near]?.kind);
  const begun = `rackleaf new part ${name} --kind ${kind ?? 'KIND'} writes it`;
  const what = only ?? 'part';
  return `there is no ${what} "${name}"; ${near === null ? begun : `did you mean "${near}"? Else ${begun}`}`;
}
