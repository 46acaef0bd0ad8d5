import { rowNames } from '../../model/short-forms/row-names.ts';
import {
  type Along,
  isNamedPair,
  isPairRole,
  type PairRole,
  pairRoles,
} from '../../model/short-forms/short-form.ts';
import { dottedRow } from '../names/row-meant.ts';
import type { FormFaults } from './faults.ts';
import { steppedLength } from './step-length.ts';
import {
  below,
  type Entry,
  textOf,
  type Written,
  type WrittenBlock,
  withEntries,
  without,
} from './written-tree.ts';

/** A row while it is opened out. */
interface Row {
  /** As it is written. */
  readonly row: string;
  readonly key: string;
  readonly names: readonly string[];
  readonly faults: FormFaults;
}

/** Opens the rows of a block out: one entry for each of their names, in their order. */
export function openRows(
  block: WrittenBlock,
  along: Readonly<Record<string, Along>>,
  faults: FormFaults,
): WrittenBlock {
  const opened = new Map<string, Entry>();
  for (const [row, entry] of block.entries)
    for (const [name, one] of entriesOf(row, entry, along, faults)) {
      const first = opened.get(name);
      if (!first) opened.set(name, one);
      else
        faults.key(
          entry.key,
          `${name} stands here twice: ${inWhat(first)} and ${inWhat(one)}`,
          'take it out of one of them',
        );
    }
  return { ...block, entries: opened };
}

function inWhat({ row }: Entry): string {
  return row === undefined ? 'by itself' : `in the row ${row}`;
}

function entriesOf(
  written: string,
  entry: Entry,
  along: Readonly<Record<string, Along>>,
  faults: FormFaults,
): readonly (readonly [string, Entry])[] {
  const own = rowNames(written);
  // The shape of the file was checked: a name that can't be read was told.
  if ('unreadable' in own) return [];
  const role = along.role === 'pairs' ? textOf(below(entry.node, 'role')) : null;
  const names = isPairRole(role) ? pairNames(role, own, { ...entry, row: written }, faults) : own;
  const row: Row = { row: written, key: entry.key, names, faults };
  return names.map((name, index) => {
    const node = entry.node.kind === 'block' ? dealt(entry.node, along, index, row) : entry.node;
    return [name, { key: entry.key, ...(name !== written && { row: written }), node }];
  });
}

/** The terminals of a row with the role of a pair. */
function pairNames(
  role: PairRole,
  names: readonly string[],
  { key, row }: Entry,
  faults: FormFaults,
): readonly string[] {
  const [positive, negative] = pairRoles[role];
  if (isNamedPair(role)) {
    const signed = names.find((name) => /[+-]$/.test(name));
    if (signed === undefined) return names.flatMap((name) => [`${name}+`, `${name}-`]);
    faults.key(
      key,
      `${signed} is one terminal, and role: ${role} stands for two`,
      `write the name without + and -, or role: ${signed.endsWith('+') ? positive : negative}`,
    );
  } else if (names.length !== 2)
    faults.key(
      key,
      `role: ${role} stands for two terminals, and ${row} names ${names.length}`,
      'write both names, the positive one first, such as B+, GND',
    );
  return names;
}

/** The entry of one name of a row: what runs along the row stands in it for this one alone. */
function dealt(
  block: WrittenBlock,
  along: Readonly<Record<string, Along>>,
  index: number,
  row: Row,
): WrittenBlock {
  return Object.entries(along).reduce((entry, [field, how]) => dealers[how](entry, field, index, row), block);
}

type Deal = (block: WrittenBlock, field: string, index: number, row: Row) => WrittenBlock;

const dealers: Readonly<Record<Along, Deal>> = {
  pitch: placed,
  list: (block, field, index, row) => {
    const node = below(block, field);
    return node?.kind === 'list' ? put(block, field, share(node.items, node, field, index, row)) : block;
  },
  names: named,
  groups: (block, field, index, row) => {
    const node = below(block, field);
    if (row.names.length === 1 || !node) return block;
    const items = node.kind === 'list' ? node.items : [node];
    return put(block, field, share(items, node, field, index, row));
  },
  pairs: (block, field, index) => {
    const node = below(block, field);
    const role = textOf(node);
    if (!node || !isPairRole(role)) return block;
    return put(block, field, { kind: 'leaf', at: node.at, value: pairRoles[role][index % 2] });
  },
};

function put(block: WrittenBlock, field: string, node: Written | null): WrittenBlock {
  const entry = block.entries.get(field);
  return entry && node ? withEntries(block, [[field, { ...entry, node }]]) : block;
}

/** The value of one name out of a list that has one for each; told once where it has not. */
function share(
  items: readonly Written[],
  { at }: Written,
  field: string,
  index: number,
  { row, names, faults }: Row,
): Written | null {
  if (items.length === names.length) return items[index] ?? null;
  if (index === 0)
    faults.value(
      at,
      `${field} has ${counted(items.length, 'value')}, and ${row} stands for ${counted(names.length, 'name')}`,
      dottedRow(row) === null ? `write one value for each of ${names.join(', ')}` : `write ${dottedRow(row)}`,
    );
  return null;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** The place of one terminal or control: so many pitches behind the first. */
function placed(
  block: WrittenBlock,
  field: string,
  index: number,
  { row, key, names, faults }: Row,
): WrittenBlock {
  const [first, pitch] = [below(block, field), below(block, 'pitch')];
  const rest = without(block, 'pitch');
  if (!pitch) {
    if (first && names.length > 1 && index === 0)
      faults.key(
        key,
        `${row} stands for ${names.join(', ')}, all at one place`,
        'write pitch: with the distance from each to the next',
      );
    return rest;
  }
  if (names.length === 1)
    faults.value(pitch.at, `${row} has a pitch, but stands for one place alone`, 'take pitch: out');
  else if (!first && index === 0)
    faults.value(
      pitch.at,
      `${row} has a pitch, but no first place`,
      `write ${field}: with the place of ${names[0]}`,
    );
  const text = steppedLength(textOf(first) ?? '', textOf(pitch) ?? '', index);
  return first && text !== null ? put(rest, field, { kind: 'leaf', at: first.at, value: text }) : rest;
}

/** One of the names that a row of names has in place of one name. */
function named(block: WrittenBlock, field: string, index: number, row: Row): WrittenBlock {
  const node = below(block, field);
  if (!node) return block;
  const all = (node.kind === 'list' ? node.items : [node]).flatMap((item): Written[] => {
    const names = rowNames(textOf(item) ?? '');
    if (!('unreadable' in names)) return names.map((value) => ({ kind: 'leaf', at: item.at, value }));
    if (index === 0) row.faults.value(item.at, `${field} ${names.unreadable}`);
    return [item];
  });
  if (all.length === 1 && row.names.length > 1 && node.kind === 'leaf' && !textOf(node)?.includes('..'))
    return put(block, field, all[0] ?? null);
  return put(block, field, share(all, node, field, index, row));
}
