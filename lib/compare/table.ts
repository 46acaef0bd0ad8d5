import type { z } from 'zod';
import { type Audience, audiencesOf } from '../model/audience.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { LengthStyle } from '../model/quantity/length-text.ts';

/** How two plans are held against each other: who reads it, and how that shop writes lengths. */
export interface CompareLook {
  readonly audience: Audience;
  readonly style: LengthStyle;
}

/** A value of a plan as it is compared. */
export interface Cell {
  /** As sheets print it: what prints alike on both is alike. */
  readonly text: string;
  /** The value behind it: SI, or the unit that its text names. */
  readonly value: string | number | null;
  /** What tells two apart that print alike, such as the corners of an outline. Left out: the text. */
  readonly exact?: string;
}

/** What of a row is compared. */
export interface Column<T> {
  readonly id: string;
  readonly title: string;
  /** The leaves of the plan's schema that its cell is made of: it is compared for those who may see all of them. */
  readonly leaves: readonly z.ZodType[];
  readonly cell: (row: T, look: CompareLook) => Cell;
}

/** A table of the plan, as it is declared. */
export interface TableSpec<T> {
  readonly id: string;
  readonly title: string;
  readonly rows: (plan: BuildPlan) => readonly T[];
  /** What a row is known by in both plans, from the names in the job. */
  readonly key: (row: T) => string;
  /** What a reader calls it, where that is not its key. */
  readonly name?: (row: T) => string;
  /** The leaves that key and name are made of. */
  readonly keyLeaves: readonly z.ZodType[];
  readonly columns: readonly Column<T>[];
  /** What a row is called that both have and that differs. Default: changed. */
  readonly differs?: 'changed' | 'moved';
  /** False of a plan that was frozen before the table was kept: it can not be compared. Default: always true. */
  readonly isKept?: (plan: BuildPlan) => boolean;
}

/** One row of one plan, its cells by column. */
export interface ReadRow {
  readonly name: string;
  readonly cells: ReadonlyMap<string, Cell>;
}

/** A table that two plans are compared by. */
export interface PlanTable {
  readonly id: string;
  readonly title: string;
  readonly differs: 'changed' | 'moved';
  /** The columns that a reader may see; none where the rows themselves are not for them. */
  readonly columns: (audience: Audience) => readonly { readonly id: string; readonly title: string }[];
  /** The rows of a plan by key; null where it does not keep them. */
  readonly read: (plan: BuildPlan, look: CompareLook) => ReadonlyMap<string, ReadRow> | null;
}

/** Declares a table: its rows by key, each with the cells that a reader may see. */
export function planTable<T>(spec: TableSpec<T>): PlanTable {
  const { id, title, differs = 'changed' } = spec;
  const shown = (audience: Audience): readonly Column<T>[] =>
    areFor(audience, spec.keyLeaves) ? spec.columns.filter(({ leaves }) => areFor(audience, leaves)) : [];
  return {
    ...{ id, title, differs },
    columns: (audience) => shown(audience).map((column) => ({ id: column.id, title: column.title })),
    read: (plan, look) => {
      if (spec.isKept?.(plan) === false) return null;
      const columns = shown(look.audience);
      if (columns.length === 0) return new Map();
      return keyed(
        spec.rows(plan).map((row) => ({
          key: spec.key(row),
          read: {
            name: spec.name?.(row) ?? spec.key(row),
            cells: new Map(columns.map((column) => [column.id, column.cell(row, look)])),
          },
        })),
      );
    },
  };
}

/** True where a reader may see each of the leaves. */
export function areFor(audience: Audience, leaves: readonly z.ZodType[]): boolean {
  return leaves.every((leaf) => audiencesOf(leaf).includes(audience));
}

/** Rows by key; what bears a key that stands already is told apart by its turn, so that no row is lost. */
function keyed(rows: readonly { readonly key: string; readonly read: ReadRow }[]): Map<string, ReadRow> {
  const found = new Map<string, ReadRow>();
  for (const { key, read } of rows) {
    let free = key;
    for (let turn = 2; found.has(free); turn += 1) free = `${key} (${turn})`;
    found.set(free, read);
  }
  return found;
}
