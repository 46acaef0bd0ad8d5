import { count, extent, faultBy, id, quantityAbove } from '../../model/fields.ts';
import { isOnReel, type Part } from '../../model/kinds/index.ts';
import { faultOfPrice, type Price, price, sumFault } from '../../model/shelf/price.ts';
import { nothingThere, type StockColumn, tellingColumns } from '../../model/shelf/stock-table.ts';
import type { CsvField, CsvRows } from '../csv-rows.ts';
import { remedyFor } from '../report.ts';

/** What a row asks of the shop file: keys of the stock of a part, and its price, each as the file would have it. */
export interface StockRow {
  readonly part: string;
  readonly stock: readonly (readonly [key: string, text: string])[];
  readonly price: string | null;
}

/** Tells what of a field was not understood, and what to write. */
export type Told = (field: CsvField | undefined, message: string, remedy: string) => void;

type Row = Readonly<Partial<Record<string, CsvField>>>;

interface Reading {
  readonly row: Row;
  readonly part: string;
  readonly spec: Part;
  readonly commaIsDecimal: boolean;
  readonly told: Told;
}

/** A row as far as it was understood: a field that was not leaves what the shop file says, and so does an empty one. */
export function stockRow(
  row: Row,
  { commaIsDecimal }: Pick<CsvRows, 'commaIsDecimal'>,
  {
    parts,
    currency,
  }: { readonly parts: Readonly<Record<string, Part>>; readonly currency?: string | undefined },
  told: Told,
): StockRow | null {
  const part = cell(row, 'part');
  const spec = Object.hasOwn(parts, part) ? parts[part] : undefined;
  if (!spec) {
    told(row.part, `there is no part "${part}"`, remedyFor(part, Object.keys(parts)));
    return null;
  }
  if (tellingColumns.every((column) => cell(row, column) === '')) {
    told(
      row.part,
      `nothing is said of ${part}`,
      `write a count, lengths or a price; ${nothingThere} where no reel is left`,
    );
    return null;
  }
  const reading = { row, part, spec, commaIsDecimal, told };
  const stock = [countRead(reading), offCutsRead(reading)].flatMap((one) => (one ? [one] : []));
  return { part, stock, price: priceRead(reading, currency) };
}

function cell(row: Row, column: StockColumn): string {
  return row[column]?.text.trim() ?? '';
}

/** A number within a text, with the decimal point of the shop file. */
function pointed(text: string, commaIsDecimal: boolean): string {
  return commaIsDecimal ? text.replace(/(\d),(\d)/g, '$1.$2') : text;
}

function countRead({ row, part, spec, commaIsDecimal, told }: Reading): readonly [string, string] | null {
  const key = isOnReel(spec) ? 'reels' : 'pieces';
  const other = key === 'reels' ? 'pieces' : 'reels';
  if (cell(row, other) !== '') {
    told(
      row[other],
      `"${part}" (${spec.kind}) is kept ${key === 'reels' ? 'on the reel' : 'by the piece'}`,
      `write it under ${key}`,
    );
    return null;
  }
  const written = cell(row, key);
  if (written === '') return null;
  if (key === 'pieces') {
    const fault = faultBy(count, /^\d+$/.test(written) ? Number(written) : written);
    if (fault === null) return [key, String(Number(written))];
    told(row.pieces, `pieces of ${part} ${fault}`, 'count whole pieces');
    return null;
  }
  if (written === nothingThere) return [key, '[]'];
  const texts = written
    .split(commaIsDecimal ? /[;|]/ : /[;|,]/)
    .map((one) => pointed(one.trim(), commaIsDecimal));
  const fault = texts.map((text) => faultBy(extent, text)).find((one) => one !== null);
  if (fault === undefined) return [key, `[${texts.join(', ')}]`];
  told(row.reels, `a reel of ${part}: ${fault}`, 'write each length with its unit, such as 50 ft; 8 ft');
  return null;
}

function offCutsRead({ row, part, spec, commaIsDecimal, told }: Reading): readonly [string, string] | null {
  const written = cell(row, 'off-cuts');
  const field = row['off-cuts'];
  const isSheet = spec.kind === 'board-sheet';
  if (written === '') return null;
  const how = isSheet ? 'a1: 20 in x 14 in; a2: 300 mm x 200 mm x 2' : 'c1: 6 ft; c2: 4 ft';
  if (!isSheet && !isOnReel(spec)) {
    told(
      field,
      `"${part}" (${spec.kind}) is kept by the piece, and has no off-cuts`,
      'leave the field empty',
    );
    return null;
  }
  if (written === nothingThere) return ['off-cuts', '{}'];
  const entries = new Map<string, string>();
  for (const one of written.split(/[;|]/)) {
    const [name = '', ...rest] = one.split(':');
    const text = pointed(rest.join(':').trim(), commaIsDecimal);
    const fault = offCutFault(name.trim(), text, isSheet);
    const twice = entries.has(name.trim()) ? `${name.trim()} stands twice` : null;
    if (fault !== null || twice !== null) {
      told(field, `an off-cut of ${part}: ${twice ?? fault}`, `write them as ${how}`);
      return null;
    }
    entries.set(name.trim(), isSheet ? sheetText(text) : text);
  }
  return ['off-cuts', `{ ${[...entries].map(([name, text]) => `${name}: ${text}`).join(', ')} }`];
}

function offCutFault(name: string, text: string, isSheet: boolean): string | null {
  if (!id.safeParse(name).success)
    return `"${name}" is no name: lower case letters, digits and single hyphens`;
  if (!isSheet) return faultBy(quantityAbove('length'), text);
  const [width = '', height = '', pieces = '1', ...more] = sides(text);
  if (more.length > 0 || height === '') return `"${text}" is no width x height`;
  return (
    faultBy(quantityAbove('length'), width) ??
    faultBy(quantityAbove('length'), height) ??
    faultBy(count, /^\d+$/.test(pieces) ? Number(pieces) : pieces)
  );
}

function sides(text: string): readonly string[] {
  return text.split(/\s+[x×]\s+/).map((one) => one.trim());
}

function sheetText(text: string): string {
  const [width, height, pieces = '1'] = sides(text);
  return `{ width: ${width}, height: ${height}, pieces: ${Number(pieces)} }`;
}

function priceRead(
  { row, part, spec, commaIsDecimal, told }: Reading,
  currency: string | undefined,
): string | null {
  const [written, per, own] = [cell(row, 'price'), cell(row, 'per'), cell(row, 'currency')];
  if (written === '') {
    if (per !== '')
      told(row.per, `${part} is priced per ${per}, but has no price`, 'write the price, or empty the field');
    return null;
  }
  if (currency === undefined) {
    told(
      row.price,
      'the shop file does not say its currency',
      'write currency: under its name, such as currency: EUR',
    );
    return null;
  }
  if (own !== '' && own !== currency) {
    told(
      row.currency,
      `${part} is priced in ${own}, and the shop reckons in ${currency}`,
      `write the price in ${currency}`,
    );
    return null;
  }
  const fault = sumIn(written, commaIsDecimal);
  if (typeof fault !== 'string') {
    told(row.price, `the price of ${part}: ${fault.message}`, 'write a number such as 1.85');
    return null;
  }
  if (per === '') {
    told(
      row.price,
      `the price of ${part} does not say what it is for`,
      'write each, ft, m, 50 ft or 100 under per',
    );
    return null;
  }
  const text = `${fault} ${per === 'each' ? per : `per ${per}`}`;
  const wrong = faultOfPrice(text) ?? pricedFault(spec, price.parse(text));
  if (wrong === null) return text;
  told(row.per, `the price of ${part}: ${wrong}`, 'write each, ft, m, 50 ft or 100 under per');
  return null;
}

/** A sum with a decimal point; a comma is one only where fields are not parted by it, and what can be two things is neither. */
function sumIn(written: string, commaIsDecimal: boolean): string | { readonly message: string } {
  const isComma = commaIsDecimal && /^\d+,\d{1,4}$/.test(written);
  const isDoubtful = commaIsDecimal && /^\d{1,3}\.\d{3}$/.test(written);
  if (isDoubtful)
    return { message: `"${written}" can be read in two ways: write it without a separator of thousands` };
  const text = isComma ? written.replace(',', '.') : written;
  const message = sumFault(text);
  return message === null ? text : { message };
}

/** What is wrong with what the price of a part is for; null where it is bought as it is kept. */
export function pricedFault(spec: Part, { per }: Price): string | null {
  const isByLength = per.unit !== 'piece';
  if (isByLength === isOnReel(spec)) return null;
  return isByLength
    ? `it is kept by the piece (${spec.kind}), and priced by its length`
    : `it is kept on the reel (${spec.kind}), and priced by the piece`;
}
