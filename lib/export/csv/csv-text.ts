import { plainDigits } from '../../model/quantity/plain-digits.ts';

/** One field: a number of ours, a text, or nothing. */
export type CsvValue = string | number | null;

/** Beginnings that a spreadsheet takes for a formula. */
const formula = /^[=+\-@\t\r]/;

/**
 * Rows as CSV after RFC 4180: fields parted by commas, lines ended by CR LF, every field quoted that holds a
 * comma, a quote or a line end. A text that begins with = + - @, a tab or a CR gets an apostrophe before it, so
 * that no spreadsheet computes what a user wrote; numbers are ours and stay as they are.
 */
export function csvText(rows: readonly (readonly CsvValue[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: CsvValue): string {
  if (value === null) return '';
  if (typeof value === 'number') return numberText(value);
  const safe = formula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const tenDigits = plainDigits(10);

/** Up to ten digits, never with a power of ten; an empty field where there is no finite number. */
function numberText(value: number): string {
  return Number.isFinite(value) ? tenDigits(value) : '';
}
