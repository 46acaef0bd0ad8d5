import type { z } from 'zod';
import type { Problem } from '../../model/problem.ts';
import { fileSchema } from '../../model/short-forms/file-schema.ts';
import { shape } from '../schema/shape.ts';
import type { YamlDocument } from '../yaml/yaml.ts';
import { openShortForms } from './open-short-forms.ts';

/** A file that was held against its schema. */
interface Shaped<T> {
  /** Null where it has not the shape; the problems say why. */
  readonly value: T | null;
  /** The file with its short forms opened out; as it is written where it has not the shape. */
  readonly document: YamlDocument;
  readonly problems: readonly Problem[];
}

/**
 * Checks the shape of a file as it is written, opens its short forms out, and reads the long ones. What is wrong with a row
 * is so told once, at the row, and not of each that it stands for.
 */
export function shapeOpened<S extends z.ZodType>(written: YamlDocument, schema: S): Shaped<z.output<S>> {
  const asWritten = shape(written, fileSchema(schema));
  if (asWritten.value === null) return { value: null, document: written, problems: asWritten.problems };
  const { document, problems } = openShortForms(written, schema);
  if (problems.length > 0) return { value: null, document: written, problems };
  return { document, ...shape(document, schema) };
}
