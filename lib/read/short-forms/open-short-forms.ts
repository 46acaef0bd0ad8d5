import { z } from 'zod';
import { pointerToken } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { shortFormOf } from '../../model/short-forms/short-form.ts';
import { unwrapped } from '../schema/schema-walk.ts';
import { lineFinder, type Position, positions } from '../yaml/positions.ts';
import type { YamlDocument } from '../yaml/yaml.ts';
import { FormFaults } from './faults.ts';
import { type Around, openedForm } from './openers.ts';
import { below, type Entry, treeOf, type Written } from './written-tree.ts';

type Schema = z.core.$ZodType;

/** A file with its short forms opened out. */
interface Opened {
  readonly document: YamlDocument;
  readonly problems: readonly Problem[];
}

/**
 * Opens the short forms of a file out, by the schema of the long ones. Each value keeps the place where it is written:
 * what a row stands for has the place of the row. The file has the shape that `fileSchema` asks for.
 */
export function openShortForms(document: YamlDocument, schema: Schema): Opened {
  const faults = new FormFaults();
  const tree = opened(schema, treeOf(document.data), { name: null, parent: null, faults });
  const problems = faults.list.map(({ at, isKey, message, remedy }): Problem => {
    const where = isKey ? document.keyPlaceOf(at) : document.placeOf(at);
    return { where, message, ...(remedy !== undefined && { remedy }) };
  });
  return { document: laidOut(document, tree), problems };
}

function opened(schema: Schema, written: Written, around: Around): Written {
  const form = shortFormOf(schema);
  const node = form ? openedForm(form, written, around) : written;
  const inner = unwrapped(schema);
  return inner ? opened(inner, node, around) : openedInside(schema, node, around.faults);
}

function openedInside(schema: Schema, node: Written, faults: FormFaults): Written {
  if (node.kind === 'leaf') return node;
  if (schema instanceof z.core.$ZodDiscriminatedUnion) {
    const option = optionFor(schema, node);
    return option ? opened(option, node, { name: null, parent: null, faults }) : node;
  }
  if (node.kind === 'list') {
    if (!(schema instanceof z.core.$ZodArray)) return node;
    const { element } = schema._zod.def;
    const items = node.items.map((item) => opened(element, item, { name: null, parent: node, faults }));
    return { ...node, items };
  }
  const entries = [...node.entries].map(([name, entry]): [string, Entry] => {
    const child = childOf(schema, name);
    return [
      name,
      child ? { ...entry, node: opened(child, entry.node, { name, parent: node, faults }) } : entry,
    ];
  });
  return { ...node, entries: new Map(entries) };
}

function optionFor(union: z.core.$ZodDiscriminatedUnion, node: Written): Schema | undefined {
  const { discriminator, options } = union._zod.def;
  const named = below(node, discriminator);
  const kind = named?.kind === 'leaf' ? named.value : undefined;
  return options.find((option) =>
    [...(option._zod.propValues?.[discriminator] ?? [])].some((one) => one === kind),
  );
}

function childOf(schema: Schema, name: string): Schema | undefined {
  if (schema instanceof z.core.$ZodRecord) return schema._zod.def.valueType;
  if (!(schema instanceof z.core.$ZodObject)) return undefined;
  const shape: Readonly<Record<string, Schema>> = schema._zod.def.shape;
  return Object.hasOwn(shape, name) ? shape[name] : undefined;
}

interface Layout {
  readonly written: YamlDocument;
  readonly table: Map<string, Position>;
  readonly unread: Set<string>;
  readonly rows: Map<string, string>;
}

/** The document of a tree: its data, and where each value of it is written. */
function laidOut(written: YamlDocument, tree: Written): YamlDocument {
  // Rows stay in the table under their own names, so that they can be pointed at too.
  const layout: Layout = { written, table: new Map(written.table), unread: new Set(), rows: new Map() };
  const data = dataOf(tree, '', '', layout);
  const { file, source } = written;
  const { table, unread, rows } = layout;
  return { file, source, data, table, unread, rows, ...positions(file, table, lineFinder(source), rows) };
}

/** The data of a node that comes to stand at a pointer, and whose name is written at another. */
function dataOf(node: Written, pointer: string, key: string, layout: Layout): unknown {
  const { written, table, unread } = layout;
  const value = written.table.get(node.at)?.value;
  if (value) table.set(pointer, { key: written.table.get(key)?.key ?? null, value });
  if (written.unread.has(node.at)) unread.add(pointer);
  if (node.kind === 'leaf') return node.value;
  if (node.kind === 'list')
    return node.items.map((item, index) => dataOf(item, `${pointer}/${index}`, item.at, layout));
  const data: Record<string, unknown> = Object.create(null);
  for (const [name, entry] of node.entries) {
    const at = `${pointer}${pointerToken(name)}`;
    if (entry.row !== undefined) layout.rows.set(at, entry.row);
    data[name] = dataOf(entry.node, at, entry.key, layout);
  }
  return data;
}
