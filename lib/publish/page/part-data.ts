import { z } from 'zod';
import type { Part } from '../../model/kinds/index.ts';
import { partSchema } from '../../model/kinds/index.ts';
import { printedMade } from '../../model/printed/holes.ts';
import type { HoleFit } from '../../model/tables/drills.ts';
import { type Fact, fact, strong, type Table, tableOf } from '../sheets/table.ts';
import { spelled, spelledWithin } from '../words/words.ts';
import { none, plainNumber, type Writer, type Written } from '../words/written.ts';

/** Fields that a part's page shows in another way. */
const shownElsewhere = new Set(['kind', 'title', 'notes', 'terminals', 'controls']);

/** The data of a part: single values as facts, and each list or record of alike things as a table. */
export interface PartData {
  readonly facts: readonly Fact[];
  readonly tables: readonly Table[];
}

interface Field {
  readonly name: string;
  readonly held: unknown;
  /** The same as it is written in a file: a quantity is told from a plain number by its unit there. */
  readonly written: unknown;
}

/** Every value of a part, quantities in the shop's units. */
export function partData(part: Part, write: Writer): PartData {
  const encoded: unknown = z.encode(partSchema, part);
  const fields = fieldsOf(part, encoded).filter(({ name }) => !shownElsewhere.has(name));
  const listed = fields.filter((field) => isListOfThings(field));
  return {
    facts: fields
      .filter((field) => !isListOfThings(field))
      .flatMap(({ name, held, written }) => facts([name], held, written, write)),
    tables: listed.map((field) => thingsTable(field, write)),
  };
}

function fieldsOf(held: unknown, written: unknown): Field[] {
  const inner = entriesOf(written);
  return [...entriesOf(held)].map(([name, value]) => ({ name, held: value, written: inner.get(name) }));
}

function isListOfThings({ held, written }: Field): boolean {
  if (typeof written === 'string') return false;
  const things = [...entriesOf(held).values()];
  return things.length > 0 && things.every((thing) => entriesOf(thing).size > 0);
}

function thingsTable({ name, held, written }: Field, write: Writer): Table {
  const things = fieldsOf(held, written);
  const keys = [...new Set(things.flatMap((thing) => [...entriesOf(thing.held).keys()]))];
  return tableOf(spelled(name), things, [
    { title: Array.isArray(held) ? 'No.' : 'Name', cell: (thing) => strong(label(held, thing.name)) },
    ...keys.map((key) => ({
      title: spelled(key),
      cell: (thing: Field) => ({ text: textOf(fieldsOf(thing.held, thing.written), key, write) }),
    })),
  ]);
}

/** A value of a thing on one line; the values of a list of its own are set apart by semicolons. */
function textOf(fields: readonly Field[], key: string, write: Writer): string {
  const field = fields.find(({ name }) => name === key);
  if (field === undefined || field.held === undefined) return none.text;
  if (isListOfThings(field))
    return fieldsOf(field.held, field.written)
      .map((one) =>
        facts([one.name], one.held, one.written, write)
          .map(({ text }) => text)
          .join(': '),
      )
      .join('; ');
  return facts([key], field.held, field.written, write)
    .map(({ text }) => text)
    .join(', ');
}

function facts(path: readonly string[], held: unknown, written: unknown, write: Writer): Fact[] {
  if (held === undefined || held === null) return [];
  const name = [spelled(path[0] ?? ''), ...path.slice(1).map(wordText)].join(', ');
  if (typeof held === 'number') return [fact(name, quantityText(path, held, written, write))];
  if (typeof held === 'boolean') return [fact(name, held ? 'yes' : 'no')];
  if (typeof held === 'string') return [fact(name, wordText(held))];
  if (typeof written === 'string') return [fact(name, written)];
  if (Array.isArray(held) && held.length === 0) return [];
  if (Array.isArray(held) && held.every((one) => typeof one !== 'object'))
    return [fact(name, held.map((one) => wordText(String(one))).join(', '))];
  return fieldsOf(held, written).flatMap((field) =>
    facts([...path, label(held, field.name)], field.held, field.written, write),
  );
}

/** Words joined by hyphens are spelled out; the name of a terminal such as `CH1-` stays as it is. */
function wordText(text: string): string {
  return /^[a-z]+(-[a-z0-9]+)*$/.test(text) ? spelledWithin(text) : text;
}

/** Items of a list are counted from 1. */
function label(held: unknown, key: string): string {
  return Array.isArray(held) ? String(Number(key) + 1) : key;
}

function entriesOf(value: unknown): Map<string, unknown> {
  return typeof value === 'object' && value !== null ? new Map(Object.entries(value)) : new Map();
}

/** What a hole that a part asks for is drilled with. */
const holeFits: Readonly<Record<string, HoleFit>> = { pilot: 'pilot', clearance: 'clearance', hole: 'pilot' };

/**
 * A held number with the unit that its written form bears, by the field that holds it: a hole to drill is told as its
 * bit, a thread or a hole as made to the tenth of a millimetre, any other length as it is made.
 */
export function quantityText(
  path: readonly string[],
  held: number,
  written: unknown,
  write: Writer,
): Written {
  const unit = typeof written === 'string' ? written.replace(/^[-\d.]+\s*/, '') : '';
  if (unit === 'm') {
    const field = path.at(-1) ?? '';
    const fit = Object.hasOwn(holeFits, field) ? holeFits[field] : undefined;
    if (fit !== undefined) return { text: write.bore(held, fit) };
    return Math.abs(held) < fineM ? { text: printedMade(held) } : write.length('made', held);
  }
  const digits = typeof written === 'string' ? Number.parseFloat(written) : held;
  return { text: `${plainNumber(digits)} ${unit}`.trimEnd() };
}

/** Below it a step of a tape is too coarse to tell one size from the next: walls, washers, holes. Metres. */
const fineM = 0.02;
