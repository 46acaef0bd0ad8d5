import type { Written } from '../words/written.ts';

/** One cell as it is printed. */
export interface Cell extends Written {
  /** Said in bold: the thing that the row is about. */
  readonly strong?: boolean;
  /** True where it takes the next column as well: the cell of that is not printed. */
  readonly wide?: boolean;
  /** Boxes to tick, each with its words: many things in one cell. */
  readonly ticks?: readonly Tick[];
}

/** A box to tick with what it stands for. */
export interface Tick extends Written {
  readonly strong?: boolean;
  /** The thing of the plan that it is about, by its id. */
  readonly subject: string | null;
}

/** How a column is set: text, words that may take several lines even in a dense table, a date that is never broken, a figure to the right, a box to tick, a blank for a figure, room for words. */
export type ColumnKind = 'text' | 'words' | 'date' | 'figure' | 'tick' | 'blank' | 'room';

export interface Column {
  readonly title: string;
  readonly kind: ColumnKind;
  /** True for what is looked for first: on a narrow screen, where each row is a card, it heads the card. */
  readonly leads: boolean;
}

export interface Row {
  /** The thing of the plan that the row is about, by its id. */
  readonly subject: string | null;
  readonly cells: readonly Cell[];
  /** Stands above this row and holds for those that follow. */
  readonly heading: string | null;
}

/** A table of a sheet. */
export interface Table {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** True where small type stands beside the text and not below it, so that a row takes one line. */
  readonly dense: boolean;
}

/** A column and how its cell comes out of what a row is about. */
export interface ColumnOf<T> {
  readonly title: string;
  readonly kind?: ColumnKind;
  readonly leads?: boolean;
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
  return groupedTable(caption, [{ title: null, things }], columns, subject);
}

/** Things that stand below one heading of a table. */
export interface Group<T> {
  readonly title: string | null;
  readonly things: readonly T[];
}

/** Makes a table of several groups of alike things, each below a heading of its own. */
export function groupedTable<T>(
  caption: string,
  groups: readonly Group<T>[],
  columns: readonly ColumnOf<T>[],
  subject?: (row: T) => string,
): Table {
  return {
    caption,
    columns: columns.map(({ title, kind = 'text', leads = false }) => ({ title, kind, leads })),
    rows: groups.flatMap(({ title, things }) =>
      things.map((thing, index) => ({
        subject: subject?.(thing) ?? null,
        cells: columns.map(({ cell }) => cellOf(cell?.(thing) ?? '')),
        heading: index === 0 ? title : null,
      })),
    ),
    dense: false,
  };
}

/** The table with one line a row: small type beside the text. */
export function dense(table: Table): Table {
  return { ...table, dense: true };
}

/** Things by what they have in common, in the order in which they come. */
export function groupsBy<T>(things: readonly T[], nameOf: (thing: T) => string): Group<T>[] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const name = nameOf(thing);
    const held = groups.get(name);
    if (held) held.push(thing);
    else groups.set(name, [thing]);
  }
  return [...groups].map(([title, own]) => ({ title, things: own }));
}

/** A cell of boxes to tick. */
export function ticks(list: readonly Tick[]): Cell {
  return { text: '', ticks: list };
}

/** A bold cell. */
export function strong(text: string, beside?: string): Cell {
  return { text, strong: true, ...(beside !== undefined && { beside }) };
}

/** A box to tick; a text in its place where there is nothing to tick. */
export function tick<T>(title: string, cell?: ColumnOf<T>['cell']): ColumnOf<T> {
  return { title, kind: 'tick', ...(cell && { cell }) };
}

/** Room to write words into. */
export function room<T>(title: string): ColumnOf<T> {
  return { title, kind: 'room' };
}

/** A blank to write a figure into. */
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
