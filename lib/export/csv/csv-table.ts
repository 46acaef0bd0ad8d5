import { formatLength } from '../../model/length-text.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { type CsvValue, csvText } from './csv-text.ts';

type Shop = Pick<BuildPlan['shop'], 'units' | 'fraction'>;

/** One column: a value, or a length in metres that is written as the shop reads it and in metres beside. */
export type CsvColumn<T> =
  | { readonly title: string; readonly value: (row: T) => CsvValue | undefined }
  | {
      readonly title: string;
      readonly lengthM: (row: T) => number | null | undefined;
      /** From 12 in on in feet: for wire. */
      readonly feet?: boolean;
    };

/** A table as CSV: a row of titles, then one row a thing. A length takes two columns: `length`, `length_m`. */
export function csvTable<T>(shop: Shop, rows: readonly T[], columns: readonly CsvColumn<T>[]): string {
  const titles = columns.flatMap((column) =>
    'lengthM' in column ? [column.title, `${column.title}_m`] : [column.title],
  );
  return csvText([titles, ...rows.map((row) => columns.flatMap((column) => fieldsOf(shop, row, column)))]);
}

function fieldsOf<T>(shop: Shop, row: T, column: CsvColumn<T>): CsvValue[] {
  if ('value' in column) return [column.value(row) ?? null];
  const lengthM = column.lengthM(row) ?? null;
  if (lengthM === null) return [null, null];
  const system = shop.units === 'inch' ? 'inch' : 'mm';
  const text = formatLength(lengthM, { system, fraction: shop.fraction, feet: column.feet ?? false });
  return [text.primary, lengthM];
}

/** Several names in one field. */
export function listed(names: readonly string[]): string {
  return names.join('; ');
}
