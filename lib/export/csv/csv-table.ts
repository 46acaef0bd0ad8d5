import type { BuildPlan } from '../../model/plan/index.ts';
import type { FigureName } from '../../model/printed/figures.ts';
import { printedBit } from '../../model/printed/holes.ts';
import { printedValue } from '../../model/printed/index.ts';
import { type LengthName, lengths, printedLength } from '../../model/printed/lengths.ts';
import { type Direction, wholeSteps } from '../../model/quantity/safe-rounding.ts';
import type { HoleFit } from '../../model/tables/drills.ts';
import { type CsvValue, csvText } from './csv-text.ts';

type Shop = Pick<BuildPlan['shop'], 'units' | 'fraction'>;

/**
 * One column: a value; a figure, rounded as it is on paper; a length in metres that is written as the shop reads it and
 * in metres beside; or a hole, written as the bits that do for it and in metres beside.
 */
export type CsvColumn<T> =
  | { readonly title: string; readonly value: (row: T) => CsvValue | undefined }
  | {
      readonly title: string;
      readonly figure: FigureName;
      readonly of: (row: T) => number | null | undefined;
    }
  | {
      readonly title: string;
      /** What kind of length it is; by its row where a table holds several. */
      readonly length: LengthName | ((row: T) => LengthName);
      readonly lengthM: (row: T) => number | null | undefined;
      /** From 12 in on in feet: for wire. */
      readonly feet?: boolean;
    }
  | {
      readonly title: string;
      readonly fit: (row: T) => HoleFit;
      readonly diameterM: (row: T) => number | null | undefined;
    };

/** What a table is of: whose lengths it is written in, and which job and revision every row bears. */
export interface TableOf {
  readonly shop: Shop;
  readonly job: Readonly<Record<'id' | 'revision', string>>;
}

/**
 * A table as CSV: a row of titles, then one row a thing, with the job and the revision at its end, so that a row that
 * is copied elsewhere still tells what it belongs to. A length or a hole takes two columns: `length`, `length_m`.
 */
export function csvTable<T>(
  { shop, job }: TableOf,
  rows: readonly T[],
  columns: readonly CsvColumn<T>[],
): string {
  const titles = columns.flatMap((column) =>
    'lengthM' in column || 'fit' in column ? [column.title, `${column.title}_m`] : [column.title],
  );
  const own = [job.id, job.revision];
  return csvText([
    [...titles, 'job', 'revision'],
    ...rows.map((row) => [...columns.flatMap((column) => fieldsOf(shop, row, column)), ...own]),
  ]);
}

function fieldsOf<T>(shop: Shop, row: T, column: CsvColumn<T>): CsvValue[] {
  if ('value' in column) return [column.value(row) ?? null];
  if ('figure' in column) return [figureOf(column.figure, column.of(row) ?? null)];
  const system = shop.units === 'inch' ? 'inch' : 'mm';
  if ('fit' in column) {
    const diameterM = column.diameterM(row) ?? null;
    if (diameterM === null) return [null, null];
    return [printedBit(diameterM, column.fit(row), system), tenthsOfMm(diameterM, 'nearest')];
  }
  const lengthM = column.lengthM(row) ?? null;
  if (lengthM === null) return [null, null];
  const style = { system, fraction: shop.fraction, feet: column.feet ?? false } as const;
  const name = typeof column.length === 'function' ? column.length(row) : column.length;
  const { primary } = printedLength(name, lengthM, style);
  return [primary, tenthsOfMm(lengthM, lengths[name].direction)];
}

function figureOf(name: FigureName, value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : printedValue(name, value);
}

/** Metres to the tenth of a millimetre. */
function tenthsOfMm(lengthM: number, direction: Direction): number {
  return wholeSteps(lengthM * 1e4, direction) / 1e4;
}

/** Several names in one field. */
export function listed(names: readonly string[]): string {
  return names.join('; ');
}
