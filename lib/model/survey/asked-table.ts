import type { z } from 'zod';
import { id } from '../fields.ts';

/** One thing that is written into a row: on paper a column, in an answer what stands between two commas. */
export interface AskedColumn {
  /** Its name in the file, where it has one of its own. */
  readonly key: string;
  /** Heads its column on paper, and names it in the question. */
  readonly title: string;
  /** What the file takes there. */
  readonly field: z.ZodType;
  readonly example: string;
  /** True for what may be left empty. */
  readonly optional?: boolean;
  /** True for a list, whose words are parted by blanks; the field is that of one. */
  readonly list?: boolean;
  /** True for the last column, where it takes whatever follows, once for each. */
  readonly rest?: boolean;
}

/** What tells it: an eye, a tape, a meter, or the leaflet of a part. */
export type Tool = 'eye' | 'tape' | 'meter' | 'leaflet';

/** What is asked in one go, as one row or as several alike. On paper a table with blanks, on screen a question. */
export interface AskedTable {
  /** Its name among the answers, and the flag that gives it. */
  readonly key: string;
  readonly asks: string;
  readonly by: Tool;
  /** How it is meant, where its columns don't tell. */
  readonly hint?: string;
  readonly columns: readonly AskedColumn[];
  /** How many blank rows paper has for it; one where there is only one. */
  readonly rows: number;
  /** What each row belongs to, where there may be several of it. */
  readonly within?: 'space';
  /** Of what seldom is there to tell: what holds where nobody tells it. It is asked where somebody names it. */
  readonly seldom?: string;
  /** True where each of these has one row: with the last one the list is whole. */
  readonly oneEach?: true;
}

/** A column. */
export function column(
  key: string,
  title: string,
  field: z.ZodType,
  example: string,
  more: Pick<AskedColumn, 'optional' | 'list' | 'rest'> = {},
): AskedColumn {
  return { key, title, field, example, ...more };
}

const inSpace = column('space', 'space', id, 'under-left-seat');

/** The columns of a table where there are several spaces: what belongs to one tells to which. */
export function columnsAmongSpaces({ within, columns }: AskedTable): readonly AskedColumn[] {
  return within === 'space' ? [inSpace, ...columns] : columns;
}

/** A column that may be left empty. */
export function optionalColumn(key: string, title: string, field: z.ZodType, example: string): AskedColumn {
  return column(key, title, field, example, { optional: true });
}
