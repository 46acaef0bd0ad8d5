import { z } from 'zod';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { fileSchema } from '../../../lib/model/short-forms/file-schema.ts';
import { schemasAt } from '../../../lib/read/schema/schema-walk.ts';
import { type Field, fieldOf } from '../../fields/leaves.ts';
import { dataOf, isJobSheet, type JobSheet, type Sheet, sheets } from '../../fields/shop.ts';

/** Markup that would be an element, would end an attribute of either quote, and is an entity. */
export const markup = `<zyx q="'&lt;">`;

/** A shop whose every text bears markup, and the fields that do. */
export interface MarkedShop {
  readonly files: readonly SourceFile[];
  readonly fields: ReadonlySet<Field>;
}

/** Puts markup into every text of a shop that its schema lets say anything; `isKept` leaves a field as it is. */
export function markedShop(jobs: readonly JobSheet[], isKept: (field: Field) => boolean): MarkedShop {
  const fields = new Set<Field>();
  const files = sheetNames
    .filter((sheet) => !isJobSheet(sheet) || jobs.includes(sheet))
    .map((sheet) => {
      const data = dataOf(sheet);
      const schema = fileSchema(sheets[sheet].schema);
      const marked = withMarks(data, [], (keys, text) => {
        if (!schemasAt(schema, keys, data).some(takesMarkup)) return text;
        const field = fieldOf(sheet, keys, data);
        if (isKept(field)) return text;
        fields.add(field);
        return `${text} ${markup}`;
      });
      return { path: sheets[sheet].path, text: JSON.stringify(marked, null, 1) };
    });
  return { files, fields };
}

const sheetNames: readonly Sheet[] = [
  'shop',
  'parts',
  'vehicle',
  'wired',
  'board',
  'banks',
  'charged',
  'short',
];

const takesMarkup = (schema: z.core.$ZodType): boolean => z.safeParse(schema, `text ${markup}`).success;

type Mark = (keys: readonly string[], text: string) => string;

/** A value with each text in it marked; the names of fields stay. */
function withMarks(value: unknown, keys: readonly string[], mark: Mark): unknown {
  if (typeof value === 'string') return mark(keys, value);
  if (Array.isArray(value)) return value.map((one, at) => withMarks(one, [...keys, String(at)], mark));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, withMarks(inner, [...keys, key], mark)]),
  );
}
