import type { Shop } from '../model/content/shop.ts';
import { count, extent } from '../model/fields.ts';
import { isOnReel, type Part } from '../model/kinds/index.ts';
import { type Place, pointer } from '../model/place.ts';
import type { Problem } from '../model/problem.ts';
import type { CsvField, CsvRows } from './csv-rows.ts';
import { remedyFor } from './report.ts';
import type { Edit } from './yaml/splice.ts';
import type { YamlDocument } from './yaml/yaml.ts';

/** One change of the shop file that a table asks for. */
export interface StockChange {
  readonly part: string;
  /** As it stands now; null where the part is not listed. */
  readonly before: string | null;
  readonly after: string;
}

/** What a table of stock changes in the shop file, and what of it was not understood. */
export interface StockEdits {
  readonly changes: readonly StockChange[];
  readonly edits: readonly Edit[];
  readonly problems: readonly Problem[];
}

interface Counted {
  readonly part: string;
  readonly key: 'pieces' | 'reels';
  readonly text: string;
  readonly values: readonly number[];
}

/** The edits that bring the stock of a shop file to what a table counts. Parts that the table leaves out stay as they are. */
export function stockEdits(
  file: string,
  table: CsvRows,
  doc: YamlDocument,
  { stock, parts }: { readonly stock: Shop['stock']; readonly parts: Readonly<Record<string, Part>> },
): StockEdits {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  const told = (field: CsvField | undefined, message: string, remedy: string): null => {
    const { line, column } = field ?? { line: 1, column: 1 };
    const where: Place = { file, line, column, path: '' };
    problems.push({ where, message, remedy });
    return null;
  };
  const counted = table.rows.flatMap((row): Counted[] => {
    const one = countedRow(row, table.commaIsDecimal, parts, told);
    if (one === null) return [];
    if (!seen.has(one.part)) {
      seen.add(one.part);
      return [one];
    }
    told(row.part, `${one.part} stands in a row above already`, 'join both rows');
    return [];
  });
  const changed = counted.filter((one) => !isSame(stock[one.part], one));
  const fresh = changed.filter(({ part }) => !Object.hasOwn(stock, part));
  const changes = changed.map(({ part, key, text }) => {
    const span = doc.span(pointer(['stock', part, key]));
    return { part, before: span && doc.source.slice(span.start, span.end), after: text };
  });
  const replaced = changed.flatMap(({ part, key, text }): Edit[] => {
    const span = doc.span(pointer(['stock', part, key]));
    return span ? [{ ...span, text }] : [];
  });
  return { changes, edits: [...replaced, ...insertion(doc, fresh)], problems };
}

type Told = (field: CsvField | undefined, message: string, remedy: string) => null;

function countedRow(
  row: CsvRows['rows'][number],
  commaIsDecimal: boolean,
  parts: Readonly<Record<string, Part>>,
  told: Told,
): Counted | null {
  const id = row.part?.text.trim() ?? '';
  const part = Object.hasOwn(parts, id) ? parts[id] : undefined;
  if (!part) return told(row.part, `there is no part "${id}"`, remedyFor(id, Object.keys(parts)));
  const key = isOnReel(part) ? 'reels' : 'pieces';
  const other = row[key === 'reels' ? 'pieces' : 'reels'];
  if (other && other.text.trim() !== '')
    return told(
      other,
      `"${id}" (${part.kind}) is kept ${key === 'reels' ? 'on the reel' : 'by the piece'}`,
      `write it under ${key}`,
    );
  const field = row[key];
  const written = field?.text.trim() ?? '';
  if (key === 'pieces') {
    const pieces = count.safeParse(/^\d+$/.test(written) ? Number(written) : written);
    if (!pieces.success)
      return told(
        field ?? row.part,
        `pieces of ${id} ${pieces.error.issues[0]?.message ?? ''}`,
        'count whole pieces',
      );
    return { part: id, key, text: String(pieces.data), values: [pieces.data] };
  }
  const lengths =
    written === '' ? [] : written.split(commaIsDecimal ? /[;|]/ : /[;|,]/).map((one) => one.trim());
  const texts = lengths.map((one) => (commaIsDecimal ? one.replace(/(\d),(\d)/, '$1.$2') : one));
  const read = texts.map((text) => extent.safeParse(text));
  const wrong = read.find((one) => !one.success);
  if (wrong)
    return told(
      field,
      `a reel of ${id}: ${wrong.error?.issues[0]?.message ?? ''}`,
      'write each length with its unit, such as 50 ft; 8 ft',
    );
  return {
    part: id,
    key,
    text: `[${texts.join(', ')}]`,
    values: read.flatMap(({ data }) => (data === undefined ? [] : [data])),
  };
}

function isSame(own: Shop['stock'][string] | undefined, { values }: Counted): boolean {
  if (own === undefined) return false;
  const now: readonly number[] = 'pieces' in own ? [own.pieces] : own.reels;
  return (
    now.length === values.length && now.every((value, index) => Math.abs(value - (values[index] ?? 0)) < 1e-9)
  );
}

/** New lines at the end of the stock. */
function insertion(doc: YamlDocument, fresh: readonly Counted[]): Edit[] {
  if (fresh.length === 0) return [];
  const lines = fresh.map(({ part, key, text }) => `  ${part}: { ${key}: ${text} }`);
  const span = doc.span('/stock');
  if (!span) {
    const gap = doc.source.endsWith('\n') ? '' : '\n';
    return [
      { start: doc.source.length, end: doc.source.length, text: `${gap}stock:\n${lines.join('\n')}\n` },
    ];
  }
  const written = doc.source.slice(span.start, span.end);
  if (written.startsWith('{')) {
    const inside = fresh.map(({ part, key, text }) => `${part}: { ${key}: ${text} }`).join(', ');
    const last = written.slice(0, -1).trimEnd();
    const text = last === '{' ? ` ${inside} ` : `, ${inside}`;
    return [{ start: span.start + last.length, end: span.start + last.length, text }];
  }
  // Behind the last line with its comment, in the column of the others.
  const last = span.start + written.trimEnd().length;
  const breakAt = doc.source.slice(last).search(/\r?\n/);
  const end = breakAt < 0 ? doc.source.length : last + breakAt;
  const begin =
    doc.source
      .slice(0, span.start)
      .split(/\r\n|\r|\n/)
      .at(-1) ?? '';
  const indent = /^ *$/.test(begin) ? begin : '  ';
  return [{ start: end, end, text: lines.map((line) => `\n${indent}${line.trimStart()}`).join('') }];
}
