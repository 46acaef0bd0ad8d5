import { CsvError, parse } from 'csv-parse/sync';
import type { Problem } from '../model/problem.ts';
import { encodingFault } from './encoding.ts';

/** One field of a table, with its place. */
export interface CsvField {
  readonly text: string;
  readonly line: number;
  /** Counted from 1, in letters of its line. */
  readonly column: number;
}

/** A table as it was read: rows by the titles of their columns, in lower case. */
export interface CsvRows {
  readonly titles: readonly string[];
  /** The first row, as it is written. */
  readonly head: readonly CsvField[];
  readonly rows: readonly Readonly<Partial<Record<string, CsvField>>>[];
  /** True where fields are not parted by commas, so that one in a number is a decimal comma. */
  readonly commaIsDecimal: boolean;
}

interface RawRecord {
  readonly record: readonly string[];
  readonly raw: string;
}

function isRawRecord(value: unknown): value is RawRecord {
  return typeof value === 'object' && value !== null && 'record' in value && 'raw' in value;
}

/**
 * Reads a table after RFC 4180, as spreadsheets of several countries write it: fields parted by a comma, a semicolon or a
 * tab, whichever the first line has most of; with or without a byte order mark. The apostrophe that keeps a spreadsheet
 * from computing a text is taken away.
 */
export function readCsv(file: string, source: string): CsvRows | Problem {
  const problemAt = (line: number, column: number, message: string, remedy: string): Problem => {
    return { where: { file, line, column, path: '' }, message, remedy };
  };
  const encoding = encodingFault(source);
  if (encoding) return problemAt(1, 1, encoding.message, 'export it as CSV in UTF-8');
  const text = source.replace(/^\uFEFF/, '');
  const [head = ''] = text.split(/\r\n|\r|\n/, 1);
  const delimiter = [';', '\t', ','].toSorted((a, b) => countOf(head, b) - countOf(head, a))[0] ?? ',';
  try {
    const read: unknown[] = parse(text, { delimiter, raw: true, relax_column_count: true, bom: false });
    const [first, ...rest] = placed(read.filter(isRawRecord), delimiter);
    const titles = (first ?? []).map((field) => field.text.trim().toLowerCase());
    const rows = rest
      .filter((fields) => fields.some((field) => field.text.trim() !== ''))
      .map((fields) => Object.fromEntries(fields.map((field, index) => [titles[index] ?? '', field])));
    return { titles, head: first ?? [], rows, commaIsDecimal: delimiter !== ',' };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = 'lines' in error && typeof error.lines === 'number' ? error.lines : 1;
    return problemAt(
      line,
      1,
      'from this line on the table can not be read',
      'look for a quote that is not closed',
    );
  }
}

function countOf(text: string, letter: string): number {
  return text.split(letter).length - 1;
}

/** Every field with its place: the parser keeps the text of each record, in which fields are found one after another. */
function placed(records: readonly RawRecord[], delimiter: string): CsvField[][] {
  let line = 1;
  return records.map(({ record, raw }) => {
    const body = raw.replace(/^(?:\r\n|\r|\n)+/, (blank) => {
      line += breaksIn(blank);
      return '';
    });
    let from = 0;
    const fields = record.map((text) => {
      const before = body.slice(0, from);
      const column = from - Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r'));
      const field = { text: text.replace(/^'(?=[=+\-@\t\r])/, ''), line: line + breaksIn(before), column };
      from = endOfField(body, from, delimiter) + 1;
      return field;
    });
    line += breaksIn(body);
    return fields;
  });
}

function breaksIn(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}

function endOfField(text: string, from: number, delimiter: string): number {
  let quoted = false;
  for (let at = from; at < text.length; at += 1) {
    if (text[at] === '"') quoted = !quoted;
    else if (text[at] === delimiter && !quoted) return at;
  }
  return text.length;
}
