import { z } from 'zod';
import type { Part } from '../model/kinds/index.ts';
import { partSchema } from '../model/kinds/index.ts';
import { type Fact, fact } from './sheets/table.ts';
import { spelled, spelledWithin } from './words.ts';
import { plainNumber, type Writer, type Written } from './written.ts';

/** Fields that a part's page shows in another way. */
const shownElsewhere = new Set(['kind', 'title', 'notes', 'terminals', 'controls']);

/**
 * Every value of a part as name and text: quantities in the shop's units. A quantity is told from a plain
 * number by writing the part back: its written form is a text with a unit.
 */
export function partFactsText(part: Part, write: Writer): Fact[] {
  const encoded: unknown = z.encode(partSchema, part);
  const written = entriesOf(encoded);
  return Object.entries(part)
    .filter(([name]) => !shownElsewhere.has(name))
    .flatMap(([name, value]) => facts([name], value, written.get(name), write));
}

function facts(path: readonly string[], held: unknown, written: unknown, write: Writer): Fact[] {
  if (held === undefined || held === null) return [];
  const name = [spelled(path[0] ?? ''), ...path.slice(1).map(wordText)].join(', ');
  if (typeof held === 'number') return [fact(name, quantityText(held, written, write))];
  if (typeof held === 'boolean') return [fact(name, held ? 'yes' : 'no')];
  if (typeof held === 'string') return [fact(name, wordText(held))];
  if (typeof written === 'string') return [fact(name, written)];
  if (Array.isArray(held) && held.length === 0) return [];
  if (Array.isArray(held) && held.every((one) => typeof one !== 'object'))
    return [fact(name, held.map((one) => wordText(String(one))).join(', '))];
  const inner = entriesOf(written);
  return [...entriesOf(held)].flatMap(([key, value]) =>
    facts([...path, label(held, key)], value, inner.get(key), write),
  );
}

/** Words joined by hyphens are spelled out; the name of a terminal such as `CH1-` stays as it is. */
function wordText(text: string): string {
  return /^[a-z]+(-[a-z0-9]+)+$/.test(text) ? spelledWithin(text) : text;
}

/** Items of a list are counted from 1. */
function label(held: unknown, key: string): string {
  return Array.isArray(held) ? String(Number(key) + 1) : key;
}

function entriesOf(value: unknown): Map<string, unknown> {
  return typeof value === 'object' && value !== null ? new Map(Object.entries(value)) : new Map();
}

/** A held number with the unit that its written form bears. */
export function quantityText(held: number, written: unknown, write: Writer): Written {
  const unit = typeof written === 'string' ? written.replace(/^[-\d.]+\s*/, '') : '';
  if (unit === 'm') return write.length(held);
  const digits = typeof written === 'string' ? Number.parseFloat(written) : held;
  return { text: `${plainNumber(digits)} ${unit}`.trimEnd() };
}
