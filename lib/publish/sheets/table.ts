import type { Written } from '../written.ts';

/** One cell as it is printed. */
export interface Cell extends Written {
  /** Said in bold: the thing that the row is about. */
  readonly strong?: boolean;
}

/** How a column is set: text, a date that is never broken, a figure to the right, a box to tick, a blank to write into. */
export type ColumnKind = 'text' | 'date' | 'figure' | 'tick' | 'blank';

export interface Column {
  readonly title: string;
  readonly kind: ColumnKind;
}

export interface Row {
  /** The thing of the plan that the row is about, by its id. */
  readonly subject: string | null;
  readonly cells: readonly Cell[];
}

/** A table of a sheet. */
export interface Table {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

/** A column and how its cell comes out of what a row is about. */
export interface ColumnOf<T> {
  readonly title: string;
  readonly kind?: ColumnKind;
  /** Left out for a box or a blank. */
  readonly cell?: (row: T) => Cell | string;
}

/** Makes a table: one row a thing, one cell a column. */
export function tableOf<T>(
  caption: string,
  things: readonly T[],
  columns: readonly ColumnOf<T>[],
  subject?: (row: T) => string,
): Table {
  return {
    caption,
    columns: columns.map(({ title, kind = 'text' }) => ({ title, kind })),
    rows: things.map((thing) => ({
      subject: subject?.(thing) ?? null,
      cells: columns.map(({ cell }) => cellOf(cell?.(thing) ?? '')),
    })),
  };
}

/** A bold cell. */
export function strong(text: string, beside?: string): Cell {
  return { text, strong: true, ...(beside !== undefined && { beside }) };
}

/** A box to tick. */
export function tick<T>(title: string): ColumnOf<T> {
  return { title, kind: 'tick' };
}

/** A blank to write into. */
export function blank<T>(title: string): ColumnOf<T> {
  return { title, kind: 'blank' };
}

function cellOf(cell: Cell | string): Cell {
  return typeof cell === 'string' ? { text: cell } : cell;
}

/** A named value, for the lists of facts above tables. */
export interface Fact extends Written {
  readonly name: string;
}

/** A fact. */
export function fact(name: string, written: Written | string): Fact {
  return { name, ...cellOf(written) };
}
