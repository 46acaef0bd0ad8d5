import { z } from 'zod';
import { faultBy, faultless, wireSize } from '../../../model/fields.ts';
import { signalVoltage } from '../../../model/kinds/bounds.ts';
import { type AskedColumn, type AskedTable, column } from '../../../model/survey/asked-table.ts';
import { fieldExample, mayBeLeftOut } from '../../../model/writing/field-example.ts';
import { insideOf, withoutWrappers } from '../../../model/writing/schema-shape.ts';

/** What a leaflet is asked for, as one row or as several. */
export function leaflet(
  key: string,
  asks: string,
  columns: readonly AskedColumn[],
  more: Partial<Pick<AskedTable, 'hint' | 'rows'>> = {},
): AskedTable {
  return { key, asks, by: 'leaflet', columns, rows: 1, ...more };
}

/** Columns for fields of a schema by their names; one that the schema lets out may be left empty. */
export function columnsOf(
  shape: Readonly<Record<string, z.ZodType>>,
  names: readonly string[],
  examples: Readonly<Record<string, string>> = {},
): readonly AskedColumn[] {
  return names.map((name) => {
    const field = shape[name];
    if (!field) throw new Error(`There is no field ${name}.`);
    const list = elementOf(field);
    const example = examples[name] ?? exampleText(fieldExample(field));
    return column(name, name.replaceAll('-', ' '), list ?? field, example, {
      ...(mayBeLeftOut(field) && { optional: true }),
      ...(list && { list: true }),
    });
  });
}

/** An example of a field as it is typed: a list by its words, true as yes. */
function exampleText(example: unknown): string {
  if (typeof example === 'boolean') return example ? 'yes' : 'no';
  return Array.isArray(example) ? example.map(String).join(' ') : String(example ?? '');
}

/** What a list holds, behind optional and default; null for what is no list. */
function elementOf(field: z.ZodType): z.ZodType | null {
  const inside = insideOf(withoutWrappers(field));
  return inside.shape === 'list' ? inside.element : null;
}

/** Both ends of a range in one cell, `8 AWG to 4 AWG`. */
function rangeOf(end: z.ZodType, example: string): z.ZodType {
  const faultOf = (written: string): string | null => {
    const ends = written.split(/\s+to\s+/);
    if (ends.length !== 2) return `is no range: write both ends, such as ${example}`;
    return ends.map((one) => faultBy(end, one)).find((fault) => fault !== null) ?? null;
  };
  return z.string().check(faultless(faultOf));
}

/** A range of conductor sizes. */
export const sizesField = rangeOf(wireSize, '18 AWG to 10 AWG');
const voltages = rangeOf(signalVoltage, '0.25 V to 6 V');

/** What a terminal takes: conductors, or a signal; of an output the one voltage that it gives. */
export const takesField = z.string().check(
  faultless((written) => {
    const field = !/V$/.test(written.trim()) ? sizesField : / to /.test(written) ? voltages : signalVoltage;
    return faultBy(field, written);
  }),
);

/** A power into a load, `75 W at 4 ohm`. */
export function powerAt(text: string): readonly [load: string, power: string] | null {
  const [, power, load] = /^(.+?)\s+(?:at|into)\s+(.+)$/.exec(text.trim()) ?? [];
  return power !== undefined && load !== undefined ? [load, power] : null;
}
