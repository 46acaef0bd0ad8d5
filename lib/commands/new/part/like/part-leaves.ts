import type { z } from 'zod';
import { hasFields, type WrittenValue } from '../../../../model/content/proposal.ts';
import { isKindName, kinds } from '../../../../model/kinds/index.ts';
import { insideOf, withoutWrappers } from '../../../../model/writing/schema-shape.ts';
import type { Named } from '../../yaml-text.ts';
import { hasTabs, tabsName, withTabs } from './like-tabs.ts';

/** One value of a part as its file has it: where it stands, and what it is called here. */
export interface Leaf {
  readonly path: readonly string[];
  /** The shortest end of its path that no other value of the part has. */
  readonly name: string;
  /** True for a whole terminal or control, of which a part can only be told that it has none. */
  readonly isWhole?: true;
  /** Longer ends of its path, by which it may be called too. */
  readonly longer?: readonly string[];
  readonly value: WrittenValue;
}

/** What one part says of itself alone: another one that is like it has its own. */
const ownFields: ReadonlySet<string> = new Set(['kind', 'title', 'notes', 'formerly']);

/** What the title of a part is called where it differs. */
export const titleName = 'title';

/** The values of a part that another one may have otherwise, each with what it is called. */
export function leavesOf(part: Named): readonly Leaf[] {
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

/** What a part does not say and its kind may: its title, and values of it or of one of its fields, such as its supply. */
export function lackedBy(part: Named): readonly Leaf[] {
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
    ...wholesOf(part).filter(({ name }) => !told.has(name)),
  ];
}

/** The terminals and controls of a part that another one may lack, row by row: `REM-OUT none`. */
function wholesOf(part: Named): readonly Leaf[] {
  return ['terminals', 'controls'].flatMap((field) => {
    const all = part[field];
    const rows = hasFields(all) ? Object.keys(all).filter((row) => !row.includes(',')) : [];
    return rows.map((row) => ({ path: [field, row], name: row, value: null, isWhole: true as const }));
  });
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

/** `terminals`, `B+, GND`, `takes` is `terminals.B+.takes`: a comma parts differences from each other. */
export function labelOf(path: readonly string[]): string {
  return path.map((key) => key.split(',')[0]).join('.');
}

function pathsOf(value: WrittenValue, path: readonly string[]): readonly Omit<Leaf, 'name'>[] {
  if (hasFields(value)) return Object.entries(value).flatMap(([key, one]) => pathsOf(one, [...path, key]));
  return Array.isArray(value) ? [] : [{ path, value }];
}
