import { type WrittenValue, writtenValueSchema } from '../../model/content/proposal.ts';
import type { Shop } from '../../model/content/shop.ts';
import { count, extent } from '../../model/fields.ts';
import type { Part } from '../../model/kinds/index.ts';
import { type Place, pointer } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { price, priceText } from '../../model/shelf/price.ts';
import { stockColumns } from '../../model/shelf/stock-table.ts';
import type { CsvField, CsvRows } from '../csv-rows.ts';
import { nearestName } from '../names/nearest-name.ts';
import { type Additions, insertions } from '../yaml/insertions.ts';
import type { Edit } from '../yaml/splice.ts';
import { sectionLines } from '../yaml/write-value.ts';
import { readYaml, type YamlDocument } from '../yaml/yaml.ts';
import { type StockRow, stockRow, type Told } from './stock-row.ts';

/** One change of the shop file that a table asks for. */
export interface StockChange {
  /** Of what: a part, with what of it where that is not its count: `red-4, price`. */
  readonly part: string;
  /** As it stands now; null where it is not there. */
  readonly before: string | null;
  readonly after: string;
}

/** What a table changes in the shop file, and what of it was not understood. */
export interface StockEdits {
  readonly changes: readonly StockChange[];
  readonly edits: readonly Edit[];
  readonly problems: readonly Problem[];
}

type PricedShop = Pick<Shop, 'stock' | 'prices' | 'currency'>;

interface Around {
  readonly shop: PricedShop;
  readonly parts: Readonly<Record<string, Part>>;
}

/** A value of the shop file that is to be another. */
interface Asked {
  readonly path: readonly [string, string, ...string[]];
  readonly text: string;
}

/** The edits that bring stock and prices of a shop file to what a table says. What the table leaves out stays as it is. */
export function stockEdits(file: string, table: CsvRows, doc: YamlDocument, around: Around): StockEdits {
  const problems: Problem[] = [];
  const told: Told = (field, message, remedy) => {
    const { line, column } = field ?? { line: 1, column: 1 };
    const where: Place = { file, line, column, path: '' };
    problems.push({ where, message, remedy });
  };
  titleFaults(table, told);
  const asked = understoodRows(table, around, told)
    .flatMap(askedOf)
    .filter((one) => !isThere(around.shop, one));
  const edits = editsOf(doc, asked);
  const changes = asked.map(({ path, text }): StockChange => {
    const span = doc.span(pointer([...path]));
    return { part: nameOf(path), before: span && doc.source.slice(span.start, span.end), after: text };
  });
  return { changes, edits, problems };
}

/** Columns that are not read, and those that stand twice. */
function titleFaults({ head }: CsvRows, told: Told): void {
  const seen = new Set<string>();
  for (const field of head) {
    const title = field.text.trim().toLowerCase();
    if (title === '') continue;
    if (!stockColumns.some((one) => one === title)) {
      const near = nearestName(title, [...stockColumns]);
      const meant = near ? `did you mean "${near}"? ` : '';
      told(
        field,
        `the column "${field.text.trim()}" is not read`,
        `${meant}the columns are ${stockColumns.join(', ')}`,
      );
    } else if (seen.has(title)) told(field, `the column ${title} stands twice`, 'take one of them out');
    seen.add(title);
  }
}

function understoodRows(table: CsvRows, { shop, parts }: Around, told: Told): readonly StockRow[] {
  const seen = new Map<string, CsvField | undefined>();
  return table.rows.flatMap((fields): StockRow[] => {
    const row = stockRow(fields, table, { parts, currency: shop.currency }, told);
    if (!row) return [];
    if (seen.has(row.part)) {
      const line = seen.get(row.part)?.line;
      told(
        fields.part,
        `${row.part} stands in a row above already${line === undefined ? '' : `, line ${line}`}`,
        'join both rows',
      );
      return [];
    }
    seen.set(row.part, fields.part);
    return [row];
  });
}

function askedOf({ part, stock, price: own }: StockRow): readonly Asked[] {
  return [
    ...stock.map(([key, text]): Asked => ({ path: ['stock', part, key], text })),
    ...(own === null ? [] : [{ path: ['prices', part], text: own } as const]),
  ];
}

function nameOf([head, part, key]: Asked['path']): string {
  if (head === 'prices') return `${part}, price`;
  return key === 'off-cuts' ? `${part}, off-cuts` : part;
}

/** True where the shop file says so already, in whatever unit. */
function isThere({ stock, prices }: PricedShop, { path: [head, part, key = ''], text }: Asked): boolean {
  if (head === 'prices') {
    const own = prices[part];
    return own !== undefined && priceText(own) === priceText(price.parse(text));
  }
  const own: Readonly<Record<string, unknown>> | undefined = stock[part];
  if (own === undefined) return false;
  return isSame(own[key], readAs(text));
}

/** Whether a value of the stock is what a text of the file would be read as. */
function isSame(own: unknown, written: unknown): boolean {
  if (typeof own === 'number') {
    const read = typeof written === 'number' ? count.safeParse(written) : extent.safeParse(written);
    return read.success && Math.abs(read.data - own) < 1e-9;
  }
  if (Array.isArray(own))
    return (
      Array.isArray(written) &&
      own.length === written.length &&
      own.every((one, at) => isSame(one, written[at]))
    );
  if (typeof own !== 'object' || own === null || typeof written !== 'object' || written === null)
    return false;
  const [ours, theirs] = [Object.entries(own), Object.entries(written)];
  return ours.length === theirs.length && ours.every(([key, one]) => isSame(one, Reflect.get(written, key)));
}

function editsOf(doc: YamlDocument, asked: readonly Asked[]): readonly Edit[] {
  const replaced: Edit[] = [];
  const stock: Record<string, Record<string, WrittenValue>> = {};
  const prices: Record<string, WrittenValue> = {};
  for (const { path, text } of asked) {
    const span = doc.span(pointer([...path]));
    const [head, part, key] = path;
    if (span) replaced.push({ ...span, text });
    else if (head === 'prices') prices[part] = text;
    else if (key !== undefined)
      stock[part] = { ...stock[part], [key]: writtenValueSchema.parse(readAs(text)) };
  }
  const fresh = Object.entries({ stock, prices }).filter(([, own]) => Object.keys(own).length > 0);
  const isThereYet = ([head]: readonly [string, unknown]) => doc.span(pointer([head])) !== null;
  return joined([
    ...replaced,
    ...insertions(doc, Object.fromEntries(fresh.filter(isThereYet)), []),
    ...fresh.filter((one) => !isThereYet(one)).map(([head, own]) => sectionBegun(doc, head, own)),
  ]);
}

/** A section that a file does not have, at its end. */
function sectionBegun({ source }: YamlDocument, head: string, values: Additions): Edit {
  const lineEnd = source.includes('\r\n') ? '\r\n' : '\n';
  const lines = [`${head}:`, ...sectionLines(values, '  ')].map((line) => `${line}${lineEnd}`);
  const gap = source.endsWith('\n') ? '' : lineEnd;
  return { start: source.length, end: source.length, text: `${gap}${lines.join('')}` };
}

/** Edits of which no two are made at one offset: what is added to a section comes before what begins behind it. */
function joined(edits: readonly Edit[]): readonly Edit[] {
  const byPlace = new Map<string, Edit>();
  for (const edit of edits) {
    const place = `${edit.start} ${edit.end}`;
    byPlace.set(place, { ...edit, text: (byPlace.get(place)?.text ?? '') + edit.text });
  }
  return [...byPlace.values()];
}

/** What a text of the file would be read as. */
function readAs(text: string): unknown {
  return readYaml('', text).value?.data;
}
