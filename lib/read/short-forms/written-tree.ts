import { pointerToken } from '../../model/place.ts';

/** A value of a file with the JSON Pointer where it is written, which it keeps wherever it is put. */
export type Written = WrittenLeaf | WrittenList | WrittenBlock;
export interface WrittenLeaf {
  readonly kind: 'leaf';
  readonly at: string;
  readonly value: unknown;
}
export interface WrittenList {
  readonly kind: 'list';
  readonly at: string;
  readonly items: readonly Written[];
}
/** Values by their names. */
export interface WrittenBlock {
  readonly kind: 'block';
  readonly at: string;
  readonly entries: ReadonlyMap<string, Entry>;
}
export interface Entry {
  /** Where its name is written. */
  readonly key: string;
  /** The row that it was opened out of, as it is written; none for a name of its own. */
  readonly row?: string;
  readonly node: Written;
}

/** The plain data of a file as a tree that knows where each value is written. */
export function treeOf(value: unknown, at = ''): Written {
  if (Array.isArray(value))
    return { kind: 'list', at, items: value.map((item, index) => treeOf(item, `${at}/${index}`)) };
  if (typeof value !== 'object' || value === null) return { kind: 'leaf', at, value };
  const entries = Object.entries(value).map(([name, below]): [string, Entry] => {
    const key = `${at}${pointerToken(name)}`;
    return [name, { key, node: treeOf(below, key) }];
  });
  return { kind: 'block', at, entries: new Map(entries) };
}

/** What stands behind a name of a block; null where it is no block or has none such. */
export function below(node: Written | null, name: string): Written | null {
  return node?.kind === 'block' ? (node.entries.get(name)?.node ?? null) : null;
}

/** The text of a leaf; null for anything else. */
export function textOf(node: Written | null): string | null {
  return node?.kind === 'leaf' && typeof node.value === 'string' ? node.value : null;
}

/** A block with other entries, written where it was. */
export function withEntries(block: WrittenBlock, more: Iterable<readonly [string, Entry]>): WrittenBlock {
  return { ...block, entries: new Map([...block.entries, ...more]) };
}

/** A block without some of its entries. */
export function without(block: WrittenBlock, ...names: readonly string[]): WrittenBlock {
  return { ...block, entries: new Map([...block.entries].filter(([name]) => !names.includes(name))) };
}
