import { z } from 'zod';
import { fieldExample, mayBeLeftOut, schemaDefault } from '../../../model/writing/field-example.ts';
import { fieldText, type Written } from '../../../model/writing/field-text.ts';
import type { GuidePicture } from '../../../model/writing/guide-pictures.ts';
import { insideOf } from '../../../model/writing/schema-shape.ts';
import { blockLines } from '../../../read/yaml/write-value.ts';
import { seenBy, shortWords, writtenAs } from './written-as.ts';

/** A field as the writing guide tells it. */
export interface FieldRow {
  /** Its way within the section: `size.width`. */
  readonly name: string;
  readonly anchor: string;
  readonly says: string;
  readonly written: string;
  /** A line as it may stand in a file; empty where the fields in it are told below. */
  readonly example: string;
  readonly leftOut: string;
  readonly seen: string;
  readonly picture: GuidePicture | null;
  /** The anchor of the section that tells the fields in it. */
  readonly inner: string | null;
}

/** The fields that stand together in one place of a file. */
export interface FieldSection {
  readonly anchor: string;
  readonly title: string;
  readonly says: string;
  readonly rows: readonly FieldRow[];
}

/** What is told elsewhere and not entered here, by its way. */
export interface SectionsOptions {
  readonly title: string;
  readonly elsewhere?: readonly string[];
}

/** The objects that a field holds, by name or one after another; with the word that tells alternatives apart. */
interface Held {
  readonly word: string | null;
  readonly fields: ReadonlyMap<string, z.ZodType>;
}

/** Few fields with nothing in them are told in the lines of what holds them. */
const fewFields = 4;

/** Every field of a schema, section by section in the order of the schema. */
export function fieldSections(schema: z.ZodType, { title, elsewhere = [] }: SectionsOptions): FieldSection[] {
  return heldIn(schema).flatMap((held) => sectionsOf(held, { way: [], title, says: '' }, elsewhere));
}

interface Spot {
  readonly way: readonly string[];
  readonly title: string;
  readonly says: string;
}

function sectionsOf(held: Held, spot: Spot, elsewhere: readonly string[]): FieldSection[] {
  const rows: FieldRow[] = [];
  const below: FieldSection[] = [];
  for (const [name, field] of held.fields) {
    const way = [...spot.way, name];
    const inner = elsewhere.includes(way.join('.')) ? [] : heldIn(field);
    const isSmall = inner.length === 1 && inner.every(({ fields }) => isFlat(fields));
    const anchor = anchorOf(way);
    // Of alternatives the first: the others follow it.
    const [first] = isSmall ? [] : inner;
    rows.push(rowOf(field, name, { anchor, inner: first ? anchorOf(wayOf(way, first)) : null }));
    if (isSmall) rows.push(...inner.flatMap(({ fields }) => innerRows(fields, name, way)));
    else
      below.push(
        ...inner.flatMap((one) => {
          const own = wayOf(way, one);
          return sectionsOf(
            one,
            { way: own, title: own.join(' / '), says: fieldText(field)?.says ?? '' },
            elsewhere,
          );
        }),
      );
  }
  return [{ anchor: anchorOf(spot.way), title: spot.title, says: spot.says, rows }, ...below];
}

/** The way of what a field holds; alternatives have their word at its end. */
function wayOf(way: readonly string[], { word }: Held): readonly string[] {
  return word === null ? way : [...way, word];
}

function innerRows(fields: Held['fields'], name: string, way: readonly string[]): FieldRow[] {
  return [...fields].map(([key, field]) =>
    rowOf(field, key, { anchor: anchorOf([...way, key]), inner: null }, `${name}.`),
  );
}

/** True where no field holds others. */
function isFlat(fields: Held['fields']): boolean {
  return fields.size <= fewFields && [...fields.values()].every((field) => heldIn(field).length === 0);
}

function heldIn(schema: z.ZodType, word: string | null = null): readonly Held[] {
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return [{ word, fields: inside.fields }];
    case 'list':
      return heldIn(inside.element, word);
    case 'record':
      return heldIn(inside.value, word);
    case 'wrapper':
      return heldIn(inside.inner, word);
    case 'union':
      return inside.options.flatMap((option) => heldIn(option, kindWord(option)));
    default:
      return [];
  }
}

/** The word by which one alternative is told from another: the only value of its first field. */
function kindWord(option: z.ZodType): string | null {
  const inside = insideOf(option);
  const [first] = inside.shape === 'object' ? [...inside.fields] : [];
  if (!first) return null;
  const [name, field] = first;
  return field instanceof z.ZodLiteral ? String([...field.values][0]) : name;
}

function rowOf(
  field: z.ZodType,
  name: string,
  { anchor, inner }: Pick<FieldRow, 'anchor' | 'inner'>,
  before = '',
): FieldRow {
  const text = fieldText(field);
  const example = inner === null ? fieldExample(field) : undefined;
  return {
    name: `${before}${name}`,
    anchor: `${anchor}-field`,
    says: [text?.says ?? '', shortWords(field)].join(' ').trim(),
    written: writtenAs(field),
    example: example === undefined ? '' : exampleLine(name, example),
    leftOut: leftOutWords(field),
    seen: seenBy(field),
    picture: text?.picture ?? null,
    inner,
  };
}

/** A field with its value as it may stand in a file. */
export function exampleLine(name: string, value: Written): string {
  return blockLines(name, value, '').join('\n');
}

/** What holds where a field is left out. */
function leftOutWords(field: z.ZodType): string {
  if (!mayBeLeftOut(field)) return 'must be there';
  const said = fieldText(field)?.leftOut;
  if (said !== undefined) return said;
  const usual = schemaDefault(field);
  const isPlain = typeof usual === 'string' || typeof usual === 'number' || typeof usual === 'boolean';
  if (!isPlain) return usual === undefined ? 'not told' : 'none';
  return typeof usual === 'boolean' ? (usual ? 'true' : 'false') : String(usual);
}

/** An anchor of a field: its way with dots between. */
function anchorOf(way: readonly string[]): string {
  return way.length === 0 ? 'fields' : way.join('.');
}
