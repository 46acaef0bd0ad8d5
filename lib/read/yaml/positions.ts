import { type Place, parentPointer } from '../../model/place.ts';

/** Offsets into the source text, counted in UTF-16 units from 0; the end is exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Where a value of a file stands, and its key where it has one. */
export interface Position {
  readonly key: Span | null;
  readonly value: Span;
}

/** Line and column of an offset, both counted from 1. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

/**
 * Finds the line and column of any offset of a source. Lines end at LF, CR or both together; a byte order
 * mark at the beginning takes no column.
 */
export function lineFinder(source: string): (offset: number) => LineColumn {
  const starts = [source.startsWith('\ufeff') ? 1 : 0];
  for (const lineBreak of source.matchAll(/\r\n|\r|\n/g)) starts.push(lineBreak.index + lineBreak[0].length);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: Math.max(0, offset - (starts[low] ?? 0)) + 1 };
  };
}

/** Answers where the value of a JSON Pointer stands in one file. */
export interface Positions {
  /** The place of a value, or of its nearest ancestor that the file has. */
  placeOf(path: string): Place;
  /** The place of a value's key; of the value itself where it has none, such as an entry of a list. */
  keyPlaceOf(path: string): Place;
  /** The offsets of a value, without its key; null where the file has no such value of its own, but may have a row. */
  span(path: string): Span | null;
  /** The row that a value was opened out of, as it is written; null for one that stands by itself. */
  rowOf(path: string): string | null;
}

/** Puts a table from JSON Pointer to position into the terms of lines and columns. */
export function positions(
  file: string,
  table: ReadonlyMap<string, Position>,
  at: (offset: number) => LineColumn,
  rows: ReadonlyMap<string, string>,
): Positions {
  const place = (path: string, of: (position: Position) => Span): Place => {
    const position = table.get(path);
    if (position) return { file, ...at(of(position).start), path };
    return path === '' ? { file, line: 1, column: 1, path } : place(parentPointer(path), of);
  };
  const rowOf = (path: string): string | null =>
    rows.size === 0 || path === '' ? null : (rows.get(path) ?? rowOf(parentPointer(path)));
  return {
    placeOf: (path) => place(path, (position) => position.value),
    keyPlaceOf: (path) => place(path, (position) => position.key ?? position.value),
    span: (path) => (rowOf(path) === null ? (table.get(path)?.value ?? null) : null),
    rowOf,
  };
}
